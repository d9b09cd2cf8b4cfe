import { strFromU8, strToU8, unzipSync, zipSync, type Zippable } from "fflate";

/*
 * What the spreadsheet library leaves out: the mark by which Excel knows that an array formula may spill, and bytes
 * that come out the same every time.
 */

const METADATA = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<metadata xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;
const PART = `<Override PartName="/xl/metadata.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml"/>`;
const RELATION = `<Relationship Id="rIdMetadata" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/sheetMetadata" Target="metadata.xml"/>`;

const RELATIONS = "xl/_rels/workbook.xml.rels";
const SETTINGS_RELATION = `<Relationship Id="rIdSettings" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/customXml" Target="../customXml/item1.xml"/>`;

/** Zip entries carry a time; this one is as good as any. */
const ALWAYS = new Date(1980, 0, 1);

/** The finished file; with settings of Brimbook's in it, where there are any. */
export function finished(workbook: Uint8Array, settings?: object): Uint8Array {
  const parts: Zippable = {};
  for (const [name, bytes] of Object.entries(unzipSync(workbook))) {
    if (!name.endsWith("/")) parts[name] = [changed(name, bytes), { mtime: ALWAYS }];
  }
  parts["xl/metadata.xml"] = [strToU8(METADATA), { mtime: ALWAYS }];
  if (settings) {
    const text = JSON.stringify(settings).replace(/&/g, "&amp;").replace(/</g, "&lt;");
    const part = `<settings xmlns="urn:brimbook:settings"><setting key="brimbook">${text}</setting></settings>`;
    parts["customXml/item1.xml"] = [strToU8(part), { mtime: ALWAYS }];
    const relations = changed(RELATIONS, unzipSync(workbook)[RELATIONS]!);
    parts[RELATIONS] = [
      edited(relations, "</Relationships>", `${SETTINGS_RELATION}</Relationships>`),
      { mtime: ALWAYS },
    ];
  }
  return zipSync(parts, { level: 9 });
}

function changed(name: string, bytes: Uint8Array): Uint8Array {
  if (name === "[Content_Types].xml") return edited(bytes, "</Types>", `${PART}</Types>`);
  if (name === RELATIONS) return edited(bytes, "</Relationships>", `${RELATION}</Relationships>`);
  if (!name.startsWith("xl/worksheets/sheet")) return bytes;
  return strToU8(strFromU8(bytes).replace(/<c ([^>]*)>(?=<f t="array")/g, '<c $1 cm="1">'));
}

function edited(bytes: Uint8Array, from: string, to: string): Uint8Array {
  return strToU8(strFromU8(bytes).replace(from, to));
}
