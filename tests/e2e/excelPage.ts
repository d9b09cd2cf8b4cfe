import type { CellAddress, Sheet } from "../../src/sheet/sheet";
import { ExcelWorkbook } from "../../src/workbook/excel/excelWorkbook";
import type { Workbook } from "../../src/workbook/workbook";
import { FakeExcel } from "../workbook/excel/fakeExcel";
import type { WireRequest } from "../workbook/excel/wire";

/*
 * Runs in the browser, behind Microsoft's office.js: the Excel host of Brimbook on Microsoft's own proxies, which are
 * made to talk to the fake Excel. How they are made to is not documented: it is what office.js 1.1.110 looks for.
 */
interface ExcelPage {
  brimbook: { workbook: Workbook; readonly selected: () => CellAddress };
  openExcel: (sheets: readonly Sheet[]) => void;
  meetAnew: () => void;
  requests: () => readonly WireRequest[];
  /** Makes office.js play an Excel of this requirement set: what came later is refused by Microsoft's own tables. */
  playExcelApi: (version: string) => void;
  refuse: (code: string) => void;
  /** A cell of the first column shows #NAME? for this formula. */
  breakFormula: (sheet: string, row: number, formula: string) => void;
}

const page = window as unknown as ExcelPage;

page.openExcel = (sheets) => {
  const fake = new FakeExcel(sheets);
  const executeAsync = async (_data: unknown, flags: number, message: { Body: WireRequest }) => ({
    HttpStatusCode: 200,
    ErrorCode: "",
    Headers: {},
    Body: await fake.answer(JSON.parse(JSON.stringify(message.Body)) as WireRequest, flags),
  });
  Object.assign(Excel.RequestContext.prototype, { _requestExecutor: { executeAsync } });
  page.refuse = (code) => (fake.refuse = () => code);
  page.breakFormula = (name, row, formula) => {
    fake.book.sheets.find((sheet) => sheet.name === name)!.rows[row] = { values: [{ error: "#NAME?" }] };
    fake.book.formulas.set(`${name}!${row},0`, { formula, rows: 1 });
  };
  page.meetAnew = () => (page.brimbook.workbook = workbook());
  page.requests = () => fake.requests;
  page.brimbook = { workbook: workbook(), selected: () => fake.selected };
};

page.playExcelApi = (version) => {
  const minor = (text: string) => Number(text.split(".")[1]);
  isSetSupported = (name, needed) => name === "ExcelApi" && minor(needed) <= minor(version);
  Object.assign(Reflect.get(OfficeExtension, "CommonUtility") as object, {
    _doApiNotSupportedCheck: true,
    isSetSupported,
  });
};

let isSetSupported: (name: string, version: string) => boolean = () => true;

const workbook = () =>
  new ExcelWorkbook({
    Excel,
    Office: {
      context: { requirements: { isSetSupported: (name, version) => isSetSupported(name, version) } },
    },
  });
