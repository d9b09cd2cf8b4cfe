import type { Sheet } from "../../../src/sheet/sheet";
import { ExcelWorkbook } from "../../../src/workbook/excel/excelWorkbook";
import { describeWorkbookContract } from "../contract";
import { excelDouble } from "./excelDouble";
import { FakeExcel } from "./fakeExcel";

async function makeHost(sheets: readonly Sheet[]) {
  const fake = new FakeExcel(sheets);
  return {
    workbook: new ExcelWorkbook(excelDouble(fake)),
    selected: async () => fake.selected,
    reopened: async () => new ExcelWorkbook(excelDouble(fake)),
  };
}

describeWorkbookContract("Excel", makeHost);
