import { escapeXml } from "../xml";
import { PACKAGE, relationsXml, SHEET_TYPES, type Part } from "./parts";

const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006";

/** A part besides the sheets: where it stands, what it is, and how the workbook refers to it. */
interface CompanionPart {
  readonly name: string;
  readonly contentType: string | undefined;
  readonly relation: string;
}

const STYLES: CompanionPart = {
  name: "xl/styles.xml",
  contentType: `${SHEET_TYPES}.styles+xml`,
  relation: `${OFFICE}/relationships/styles`,
};
const TEXTS: CompanionPart = {
  name: "xl/sharedStrings.xml",
  contentType: `${SHEET_TYPES}.sharedStrings+xml`,
  relation: `${OFFICE}/relationships/sharedStrings`,
};
const METADATA: CompanionPart = {
  name: "xl/metadata.xml",
  contentType: `${SHEET_TYPES}.sheetMetadata+xml`,
  relation: `${OFFICE}/relationships/sheetMetadata`,
};
const SETTINGS: CompanionPart = {
  name: "customXml/item1.xml",
  contentType: undefined,
  relation: `${OFFICE}/relationships/customXml`,
};

export const COMPANIONS = { STYLES, TEXTS, METADATA, SETTINGS };

export function companions(withSettings: boolean): readonly CompanionPart[] {
  return withSettings ? [STYLES, TEXTS, METADATA, SETTINGS] : [STYLES, TEXTS, METADATA];
}

export function sheetPart(index: number): string {
  return `xl/worksheets/sheet${index + 1}.xml`;
}

export function contentTypesXml(sheets: number, withSettings: boolean, reportParts: readonly Part[]): string {
  const override = (name: string, type: string) => `<Override PartName="/${name}" ContentType="${type}"/>`;
  const parts = [
    override("xl/workbook.xml", `${SHEET_TYPES}.sheet.main+xml`),
    ...counted(sheets).map((index) => override(sheetPart(index), `${SHEET_TYPES}.worksheet+xml`)),
    ...companions(withSettings).flatMap((part) =>
      part.contentType ? [override(part.name, part.contentType)] : [],
    ),
    ...reportParts.flatMap(({ name, contentType }) => (contentType ? [override(name, contentType)] : [])),
    ...(withSettings
      ? [
          override(
            SETTINGS_PROPERTIES,
            "application/vnd.openxmlformats-officedocument.customXmlProperties+xml",
          ),
        ]
      : []),
  ];
  return (
    `<Types xmlns="${PACKAGE}/content-types">` +
    `<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
    `<Default Extension="xml" ContentType="application/xml"/>${parts.join("")}</Types>`
  );
}

export const ROOT_RELATIONS_XML = relationsXml([
  { type: `${OFFICE}/relationships/officeDocument`, target: "xl/workbook.xml" },
]);

export function workbookRelationsXml(sheets: number, withSettings: boolean): string {
  return relationsXml([
    ...counted(sheets).map((index) => ({
      type: `${OFFICE}/relationships/worksheet`,
      target: `/${sheetPart(index)}`,
    })),
    ...companions(withSettings).map((part) => ({ type: part.relation, target: `/${part.name}` })),
  ]);
}

export interface Tab {
  readonly name: string;
  readonly hidden: boolean;
  /** The rows that every printed page repeats. */
  readonly printTitles?: string | undefined;
}

export function workbookXml(
  tabs: readonly Tab[],
  shownTab: number,
  dateSystem: 1900 | 1904,
  calculate: boolean,
): string {
  const sheets = tabs.map(
    ({ name, hidden }, index) =>
      `<sheet name="${escapeXml(name)}" sheetId="${index + 1}"${hidden ? ` state="hidden"` : ""} r:id="rId${index + 1}"/>`,
  );
  return (
    `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="${OFFICE}/relationships">` +
    `<workbookPr${dateSystem === 1904 ? ` date1904="1"` : ""}/>` +
    `<bookViews><workbookView activeTab="${shownTab}"${shownTab > 0 ? ` firstSheet="${shownTab}"` : ""}/></bookViews>` +
    `<sheets>${sheets.join("")}</sheets>${printTitlesXml(tabs)}${calculate ? `<calcPr fullCalcOnLoad="1"/>` : ""}</workbook>`
  );
}

function printTitlesXml(tabs: readonly Tab[]): string {
  const names = tabs.map(({ printTitles }, index) =>
    printTitles === undefined
      ? ""
      : `<definedName name="_xlnm.Print_Titles" localSheetId="${index}">${escapeXml(printTitles)}</definedName>`,
  );
  const written = names.join("");
  return written && `<definedNames>${written}</definedNames>`;
}

/** What `cm="1"` on a cell means: its formula is a dynamic array, not one typed with Ctrl+Shift+Enter. */
export const METADATA_XML =
  `<metadata xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" ` +
  `xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray">` +
  `<metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" ` +
  `pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" ` +
  `coerce="1" cellMeta="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst>` +
  `<ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext>` +
  `</extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;

export const SETTINGS_PROPERTIES = "customXml/itemProps1.xml";
export const SETTINGS_RELATIONS_XML = relationsXml([
  { type: `${OFFICE}/relationships/customXmlProps`, target: "itemProps1.xml" },
]);

export function settingsPropertiesXml(namespace: string): string {
  return (
    `<ds:datastoreItem ds:itemID="{8C1D3A52-6B0E-4F27-9E41-5D7A20B3C964}" xmlns:ds="${OFFICE}/customXml">` +
    `<ds:schemaRefs><ds:schemaRef ds:uri="${namespace}"/></ds:schemaRefs></ds:datastoreItem>`
  );
}

function counted(length: number): number[] {
  return Array.from({ length }, (_blank, index) => index);
}
