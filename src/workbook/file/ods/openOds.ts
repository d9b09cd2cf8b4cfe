import type { SheetContent, WorkbookContent } from "../content";
import { FileFault } from "../fault";
import { LIMITS } from "../limits";
import type { Pace } from "../pace";
import { readTextPart, readXmlPart } from "../xmlPart";
import { PASSWORD_TODO, type ZipArchive } from "../zip";
import { OdsReader } from "./odsReader";

/** What an .ods file holds besides and is not taken over. */
const LEFT_OUT = [
  "charts and pictures",
  "comments",
  "fonts, colours and column widths",
  "formulas (their last answers are there)",
];

/** Reads an OpenDocument spreadsheet (ISO/IEC 26300): values, dates as serials, merged and hidden cells. */
export async function openOds(archive: ZipArchive, pace: Pace): Promise<WorkbookContent> {
  if (archive.has("mimetype")) {
    const kind = await readTextPart(archive, "mimetype", pace);
    if (!kind.includes("opendocument.spreadsheet")) {
      throw new FileFault("it is a document, but no spreadsheet", "Choose an .xlsx, .ods or .csv file.");
    }
  }
  if (archive.has("META-INF/manifest.xml")) {
    const manifest = await readTextPart(archive, "META-INF/manifest.xml", pace);
    if (manifest.includes("encryption-data"))
      throw new FileFault("it is protected by a password", PASSWORD_TODO);
  }
  pace.total = archive.packedBytes("content.xml");
  const reader = new OdsReader({ cells: LIMITS.cells });
  await readXmlPart(archive, "content.xml", reader, pace);
  const sheets: readonly SheetContent[] = reader.sheets;
  if (sheets.length === 0) throw new FileFault("it has no sheets");
  return { sheets, settings: new Map(), leftOut: LEFT_OUT };
}
