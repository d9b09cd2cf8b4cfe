import ExcelJS from "exceljs";
import type { Sheet, SheetRow } from "../../../src/sheet/sheet";
import type { FileWorkbook } from "../../../src/workbook/file/fileWorkbook";
import { openFile } from "../../../src/workbook/file/openFile";
import { writeXlsx } from "../../../src/workbook/file/writeXlsx";
import { describeWorkbookContract, type HostUnderTest } from "../contract";

describeWorkbookContract("a file of ours", async (sheets) => {
  const content = sheets.map((sheet) => ({ ...sheet, columns: [], frozenRows: 0, frozenColumns: 0 }));
  return hostOn(await writeXlsx({ sheets: content, settings: new Map(), leftOut: [] }));
});

describeWorkbookContract("a file of another program", async (sheets) => {
  const book = new ExcelJS.Workbook();
  book.properties.date1904 = sheets.some((sheet) => sheet.dateSystem === 1904);
  for (const sheet of sheets) writeSheet(book, sheet);
  return hostOn(new Uint8Array(await book.xlsx.writeBuffer()));
});

async function hostOn(bytes: Uint8Array): Promise<HostUnderTest> {
  const workbook: FileWorkbook = await openFile(bytes, "contract.xlsx");
  return {
    workbook,
    selected: () => Promise.reject(new Error("a file has no cursor")),
    reopened: async () => openFile(await writeXlsx(workbook.content), "copy.xlsx"),
  };
}

function writeSheet(book: ExcelJS.Workbook, sheet: Sheet): void {
  const written = book.addWorksheet(sheet.name, { state: sheet.hidden ? "hidden" : "visible" });
  sheet.rows.forEach((row, index) => writeRow(written.getRow(index + 1), row));
  for (const { firstRow, firstColumn, lastRow, lastColumn } of sheet.merges) {
    written.mergeCells(firstRow + 1, firstColumn + 1, lastRow + 1, lastColumn + 1);
  }
}

function writeRow(written: ExcelJS.Row, row: SheetRow): void {
  written.hidden = row.hidden ?? false;
  const width = Math.max(row.values.length, row.formats?.length ?? 0);
  for (let column = 0; column < width; column++) {
    const value = row.values[column] ?? null;
    const format = row.formats?.[column];
    if (value === null && format === undefined) continue;
    const cell = written.getCell(column + 1);
    cell.value = value as ExcelJS.CellValue;
    if (format !== undefined) cell.numFmt = format;
  }
}
