import type { CellAddress } from "../../src/sheet/sheet";
import { ExcelWorkbook } from "../../src/workbook/excel/excelWorkbook";
import type { Workbook, WorkbookChange } from "../../src/workbook/workbook";
import type { InExcel } from "./bridgePage";

/*
 * Runs in the frame in place of the pane, behind Microsoft's office.js: the Excel host of Brimbook alone, for what the
 * pane has no button for.
 */
interface ExcelPage {
  readonly excel: InExcel;
  brimbook: { workbook: Workbook; readonly selected: () => CellAddress };
  meetAnew: () => void;
  /** What was heard of changes since the page opened. */
  heard: WorkbookChange[];
}

const page = window as unknown as ExcelPage;

void Office.onReady(() => {
  const workbook = new ExcelWorkbook();
  page.heard = [];
  workbook.watch((changes) => page.heard.push(...changes));
  page.meetAnew = () => (page.brimbook.workbook = new ExcelWorkbook());
  page.brimbook = { workbook, selected: () => page.excel.selected() };
});
