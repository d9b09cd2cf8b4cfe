import { readSettingsPart, SETTINGS_NAMESPACE } from "../../settingsPart";
import type { SheetContent, WorkbookContent } from "../content";
import { FileFault, within } from "../fault";
import { LIMITS } from "../limits";
import type { Pace } from "../pace";
import { attribute, flag } from "../xml";
import { readXmlPart, readTextPart } from "../xmlPart";
import type { ZipArchive } from "../zip";
import { SheetReader, type BookTables } from "./readSheet";
import { readRelationships, type Relationship } from "./relationships";
import { readSharedStrings } from "./sharedStrings";
import { readStyles, readTheme } from "./readStyles";

interface TabEntry {
  readonly name: string;
  readonly hidden: boolean;
  readonly relationship: string;
}

interface BookPart {
  readonly dateSystem: 1900 | 1904;
  readonly tabs: readonly TabEntry[];
  readonly definesNames: boolean;
}

/** Reads an .xlsx workbook (ECMA-376), sheet by sheet as it streams out of its packing. */
export async function openXlsx(archive: ZipArchive, pace: Pace): Promise<WorkbookContent> {
  const root = (await readRelationships(archive, "", pace)).find(({ type }) => type === "officeDocument");
  const bookPart = root?.target ?? "xl/workbook.xml";
  const related = await readRelationships(archive, bookPart, pace);
  pace.total = related.reduce((sum, { target }) => sum + archive.packedBytes(target), 1);
  const book = await readBook(archive, bookPart, pace);
  const tables = await readTables(archive, book.dateSystem, related, pace);
  const leftOut = new Set<string>(leftOutOf(book, related));
  const budget = { cells: LIMITS.cells, formulaCharacters: LIMITS.formulaCharacters };
  const sheets: SheetContent[] = [];
  for (const tab of book.tabs) {
    const part = related.find(({ id }) => id === tab.relationship);
    if (part && part.type !== "worksheet") continue;
    if (!part) throw new FileFault(`its sheet "${tab.name}" is missing`);
    const reader = new SheetReader(tables, budget);
    await within(`sheet "${tab.name}"`, () => readXmlPart(archive, part.target, reader, pace));
    sheets.push(reader.content(tab.name, tab.hidden));
    for (const words of reader.leftOut) leftOut.add(words);
  }
  if (sheets.length === 0) throw new FileFault("it has no sheets");
  return { sheets, settings: await readSettings(archive, related, pace), leftOut: [...leftOut].sort() };
}

async function readBook(archive: ZipArchive, part: string, pace: Pace): Promise<BookPart> {
  const tabs: TabEntry[] = [];
  let dateSystem: 1900 | 1904 = 1900;
  let definesNames = false;
  const open = (name: string, tag: string) => {
    if (name === "workbookPr" && flag(tag, "date1904")) dateSystem = 1904;
    else if (name === "sheet") {
      tabs.push({
        name: attribute(tag, "name") ?? "",
        hidden: (attribute(tag, "state") ?? "visible") !== "visible",
        relationship: attribute(tag, "id") ?? "",
      });
    } else if (name === "definedName" && !(attribute(tag, "name") ?? "").startsWith("_xlnm.")) {
      definesNames = true;
    }
  };
  await readXmlPart(archive, part, { open }, pace);
  return { dateSystem, tabs, definesNames };
}

async function readTables(
  archive: ZipArchive,
  dateSystem: 1900 | 1904,
  related: readonly Relationship[],
  pace: Pace,
): Promise<BookTables> {
  const partOf = (type: string) =>
    related.find((each) => each.type === type && archive.has(each.target))?.target;
  const themePart = partOf("theme");
  const stylesPart = partOf("styles");
  const textsPart = partOf("sharedStrings");
  const theme = themePart ? await readTheme(archive, themePart, pace) : [];
  return {
    dateSystem,
    looks: stylesPart ? await readStyles(archive, stylesPart, theme, pace) : [],
    texts: textsPart ? await readSharedStrings(archive, textsPart, pace) : [],
  };
}

/** Our settings part, among whatever other programs keep in the file. */
async function readSettings(
  archive: ZipArchive,
  related: readonly Relationship[],
  pace: Pace,
): Promise<ReadonlyMap<string, unknown>> {
  for (const { type, target } of related) {
    if (type !== "customXml" || !archive.has(target)) continue;
    const xml = await readTextPart(archive, target, pace);
    if (xml.slice(0, 1000).includes(SETTINGS_NAMESPACE)) return readSettingsPart(xml);
  }
  return new Map();
}

function leftOutOf(book: BookPart, related: readonly Relationship[]): string[] {
  const kinds: readonly (readonly [string, string])[] = [
    ["chartsheet", "chart sheets"],
    ["externalLink", "links to other workbooks"],
    ["pivotCacheDefinition", "pivot tables"],
    ["vbaProject", "macros"],
  ];
  const found = kinds
    .filter(([type]) => related.some((each) => each.type === type))
    .map(([, words]) => words);
  return book.definesNames ? [...found, "names for ranges"] : found;
}
