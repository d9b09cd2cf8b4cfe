import type { Sheet } from "../../src/sheet/sheet";
import type { SheetContent, WorkbookContent } from "../../src/workbook/file/content";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";

/** Plain sheets as a workbook's content. */
export function contentOf(sheets: readonly Sheet[]): WorkbookContent {
  return { sheets: sheets.map(sheetContent), settings: new Map(), leftOut: [] };
}

function sheetContent(sheet: Sheet): SheetContent {
  return { ...sheet, columns: [], frozenRows: 0, frozenColumns: 0 };
}

/** The bytes of an .xlsx file with one empty sheet. */
export async function blankBook(): Promise<Uint8Array> {
  return writeXlsx(contentOf([{ name: "Sheet", hidden: false, dateSystem: 1900, rows: [], merges: [] }]));
}
