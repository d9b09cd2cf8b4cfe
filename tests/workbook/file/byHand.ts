import { strToU8, zipSync, type Zippable } from "fflate";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships";

/** An .xlsx written by hand, part by part (ECMA-376); only what a test is about needs to be given. */
export interface HandWritten {
  /** What stands between the worksheet's tags, by sheet name; or a whole part that starts with `<?xml`. */
  readonly sheets: Readonly<Record<string, string>>;
  readonly hidden?: readonly string[];
  readonly styles?: string;
  readonly theme?: string;
  readonly texts?: string;
  readonly workbookProperties?: string;
  /** Further elements of the workbook part. */
  readonly workbookRest?: string;
  readonly more?: Readonly<Record<string, string | Uint8Array>>;
  /** Further relations of the workbook, by type. */
  readonly related?: readonly { readonly type: string; readonly target: string }[];
}

export function handWritten(book: HandWritten): Uint8Array {
  return zipSync(handWrittenParts(book), { level: 6, mtime: new Date(2000, 0, 1) });
}

export function handWrittenParts(book: HandWritten): Zippable {
  const names = Object.keys(book.sheets);
  const related = [
    ...names.map((_name, index) => ({ type: "worksheet", target: `worksheets/sheet${index + 1}.xml` })),
    ...(book.styles === undefined ? [] : [{ type: "styles", target: "styles.xml" }]),
    ...(book.theme === undefined ? [] : [{ type: "theme", target: "theme/theme1.xml" }]),
    ...(book.texts === undefined ? [] : [{ type: "sharedStrings", target: "sharedStrings.xml" }]),
    ...(book.related ?? []),
  ];
  const parts: Record<string, string | Uint8Array> = {
    "[Content_Types].xml": `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>`,
    "_rels/.rels": relations([{ type: "officeDocument", target: "xl/workbook.xml" }]),
    "xl/workbook.xml":
      `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}">${book.workbookProperties ?? ""}<sheets>` +
      names
        .map(
          (name, index) =>
            `<sheet name="${name}" sheetId="${index + 1}"${book.hidden?.includes(name) ? ' state="hidden"' : ""} r:id="rId${index + 1}"/>`,
        )
        .join("") +
      `</sheets>${book.workbookRest ?? ""}</workbook>`,
    "xl/_rels/workbook.xml.rels": relations(related),
    ...Object.fromEntries(
      names.map((name, index) => {
        const given = book.sheets[name]!;
        const part = given.startsWith("<?xml") ? given : `<worksheet xmlns="${MAIN}">${given}</worksheet>`;
        return [`xl/worksheets/sheet${index + 1}.xml`, part];
      }),
    ),
    ...(book.styles !== undefined && {
      "xl/styles.xml": `<styleSheet xmlns="${MAIN}">${book.styles}</styleSheet>`,
    }),
    ...(book.theme !== undefined && { "xl/theme/theme1.xml": book.theme }),
    ...(book.texts !== undefined && { "xl/sharedStrings.xml": `<sst xmlns="${MAIN}">${book.texts}</sst>` }),
    ...book.more,
  };
  return Object.fromEntries(
    Object.entries(parts).map(([name, part]) => [name, typeof part === "string" ? strToU8(part) : part]),
  );
}

function relations(entries: readonly { readonly type: string; readonly target: string }[]): string {
  const written = entries.map(
    ({ type, target }, index) =>
      `<Relationship Id="rId${index + 1}" Type="${OFFICE}/${type}" Target="${target}"/>`,
  );
  return `<Relationships xmlns="${PACKAGE}">${written.join("")}</Relationships>`;
}
