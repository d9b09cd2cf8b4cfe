import { counted } from "../words/counts";
import type { WorkbookContent } from "../workbook/file/content";
import type { GridWorkbook } from "../workbook/grid/gridWorkbook";

/** A workbook on the desk, and where it came from. */
export interface Opened {
  readonly workbook: GridWorkbook;
  readonly fileName: string;
  /** Invented, to try things on. */
  readonly sample: boolean;
  /** What there is to say of it, in the status line. */
  readonly summary: string;
}

/** "gannet-point.xlsx: 612 rows in 2 sheets. A saved copy leaves out: charts." */
export function summaryOf(fileName: string, { sheets, leftOut }: WorkbookContent): string {
  const rows = sheets.reduce((sum, sheet) => sum + sheet.rows.length, 0);
  const size = `${counted(rows, "row")} in ${counted(sheets.length, "sheet")}`;
  const lost = leftOut.length > 0 ? ` A saved copy leaves out: ${leftOut.join(", ")}.` : "";
  return `${fileName}: ${size}.${lost}`;
}

/** "log.csv" is saved as "log copy.xlsx": the file that was opened stays as it is. */
export function copyName(fileName: string): string {
  return `${fileName.replace(/\.[a-z]{2,5}$/i, "")} copy.xlsx`;
}
