import { describe, expect, test, vi } from "vitest";
import { ExcelWorkbook } from "../../../src/workbook/excel/excelWorkbook";
import { joined, rowsOfAddress } from "../../../src/workbook/excel/spans";
import type { WorkbookChange } from "../../../src/workbook/workbook";
import { usualBook } from "../contractBooks";
import { excelDouble } from "./excelDouble";
import { FakeExcel } from "./fakeExcel";

async function watching(excelApi?: string) {
  const fake = new FakeExcel(usualBook);
  const double = excelDouble(fake, excelApi);
  const workbook = new ExcelWorkbook(double);
  const heard: WorkbookChange[][] = [];
  const stop = workbook.watch((changes) => heard.push([...changes]));
  await settled();
  const sheet = (name: string) => fake.book.sheets.find((each) => each.name === name)!;
  return { fake, pane: double.pane, workbook, heard, stop, sheet };
}

const settled = (ms = 0) => new Promise((resolve) => setTimeout(resolve, ms));
const GATHERED_MS = 200;

describe("changes of the workbook in Excel", () => {
  test("name the sheet and its rows, and these rows can be read alone", async () => {
    const { fake, workbook, heard, sheet } = await watching();
    fake.edit(sheet("Fill log"), 5, ["0042", "C-003", 46_297, 2990]);
    await vi.waitFor(() => expect(heard.length).toBe(1));
    expect(heard[0]).toEqual([{ kind: "rows", sheet: "Fill log", firstRow: 5, lastRow: 5 }]);
    const rows = await workbook.readRows("Fill log", 4, 6);
    expect(rows.map(({ values }) => values[3] ?? null)).toEqual([3000, 2990, null]);
    expect(rows).toEqual((await workbook.readSheet("Fill log")).rows.slice(4, 7));
  });

  test("rows beyond the end are blank", async () => {
    const { workbook } = await watching();
    const { rows } = await workbook.readSheet("Fill log");
    const read = await workbook.readRows("Fill log", rows.length - 1, rows.length + 1);
    expect(read).toEqual([rows.at(-1), { values: [] }, { values: [] }]);
  });

  test("a burst of 20,000 edits comes as few lists with few rows", async () => {
    const { fake, heard, sheet } = await watching();
    const { id } = sheet("Long");
    for (let row = 1; row <= 20_000; row += 1)
      fake.tell("DataChanged", { worksheetId: id, address: `C${row}`, changeType: "RangeEdited" });
    await settled(GATHERED_MS);
    expect(heard).toEqual([[{ kind: "rows", sheet: "Long", firstRow: 0, lastRow: 19_999 }]]);
  });

  test("rows put in, taken out or sorted mean the whole sheet", async () => {
    const { fake, heard, sheet } = await watching();
    const worksheetId = sheet("Fill log").id;
    const whole = [{ kind: "sheet", sheet: "Fill log" }];
    for (const changeType of ["RowInserted", "RowDeleted", "ColumnInserted", "CellDeleted", "Unknown"])
      fake.tell("DataChanged", { worksheetId, address: "5:5", changeType });
    await vi.waitFor(() => expect(heard).toEqual([whole]));
    fake.tell("RowSorted", { worksheetId, address: "A5:G9" });
    await vi.waitFor(() => expect(heard).toEqual([whole, whole]));
  });

  test("tell what we wrote apart from what others wrote", async () => {
    const { fake, heard, sheet } = await watching();
    const edit = { worksheetId: sheet("Fill log").id, changeType: "RangeEdited" };
    fake.tell("DataChanged", { ...edit, address: "A9", triggerSource: "ThisLocalAddin" });
    fake.tell("DataChanged", { ...edit, address: "A5", triggerSource: "Unknown" });
    await vi.waitFor(() => expect(heard.length).toBe(1));
    expect(heard[0]).toEqual([
      { kind: "rows", sheet: "Fill log", firstRow: 8, lastRow: 8, own: true },
      { kind: "rows", sheet: "Fill log", firstRow: 4, lastRow: 4 },
    ]);
  });

  test("a format or a calculation changes rows too", async () => {
    const { fake, heard, sheet } = await watching();
    const worksheetId = sheet("Fill log").id;
    fake.tell("FormatChanged", { worksheetId, address: "C5:C7" });
    fake.tell("Calculated", { worksheetId, address: "Sheet!D9" });
    await vi.waitFor(() => expect(heard.length).toBe(1));
    expect(heard[0]).toEqual([
      { kind: "rows", sheet: "Fill log", firstRow: 4, lastRow: 6 },
      { kind: "rows", sheet: "Fill log", firstRow: 8, lastRow: 8 },
    ]);
  });

  test.each(["1.12", "1.20"])("with ExcelApi %s a renamed sheet is heard of", async (excelApi) => {
    const { fake, heard, sheet } = await watching(excelApi);
    sheet("Wide").name = "Broad";
    fake.tell("NameChanged", { worksheetId: sheet("Broad").id });
    // Older Excels tell of it with the next edit.
    fake.edit(sheet("Fill log"), 8, ["GP-119"]);
    await vi.waitFor(() => expect(heard.length).toBe(1));
    expect(heard[0]).toContainEqual({ kind: "sheets" });
  });

  test("a sheet that takes the name of a deleted one is another sheet", async () => {
    const { fake, heard, sheet } = await watching();
    const gone = sheet("Fill log");
    fake.book.sheets.splice(fake.book.sheets.indexOf(gone), 1);
    sheet("Wide").name = "Fill log";
    fake.tell("Deleted", { worksheetId: gone.id });
    await vi.waitFor(() => expect(heard.length).toBe(1));
    expect(heard[0]).toEqual([{ kind: "sheets" }, { kind: "sheet", sheet: "Fill log" }]);
  });

  test("wait while the pane is closed, and come when it is opened again", async () => {
    const { fake, pane, heard, sheet } = await watching();
    pane.show("Hidden");
    fake.edit(sheet("Fill log"), 8, ["GP-119"]);
    const asked = fake.requests.length;
    await settled(GATHERED_MS);
    expect(heard).toEqual([]);
    expect(fake.requests.length).toBe(asked);
    pane.show("Taskpane");
    await vi.waitFor(() => expect(heard.length).toBe(1));
  });

  test("wait while a cell is being edited, and are not lost", async () => {
    const { fake, heard, sheet } = await watching();
    fake.startEditing();
    fake.edit(sheet("Fill log"), 8, ["GP-119"]);
    await settled(GATHERED_MS);
    expect(heard).toEqual([]);
    fake.finishEditing();
    await vi.waitFor(() => expect(heard.length).toBe(1));
  });

  test("are no longer told once one stops listening", async () => {
    const { fake, heard, stop, sheet } = await watching();
    stop();
    await settled();
    fake.edit(sheet("Fill log"), 8, ["GP-119"]);
    await settled(GATHERED_MS);
    expect(heard).toEqual([]);
    expect([...fake.listeners.values()].every(({ size }) => size === 0)).toBe(true);
  });
});

describe("a closed pane", () => {
  test("looks at no cell until it is opened again, and then once", async () => {
    const fake = new FakeExcel(usualBook);
    const double = excelDouble(fake);
    const workbook = new ExcelWorkbook(double);
    let looks = 0;
    workbook.watchCellInHand(() => (looks += 1));
    await settled();
    double.pane.show("Hidden");
    for (let times = 0; times < 50; times += 1) fake.tell("SelectionChanged");
    await settled(GATHERED_MS);
    expect(looks).toBe(0);
    double.pane.show("Taskpane");
    await vi.waitFor(() => expect(looks).toBe(1));
  });
});

describe("addresses of events", () => {
  test.each([
    ["B7", [[6, 6]]],
    ["$A$1:$C$9", [[0, 8]]],
    ["C9:A2", [[1, 8]]],
    ["'Fill log'!5:8", [[4, 7]]],
    [
      "A1:C2,E4",
      [
        [0, 1],
        [3, 3],
      ],
    ],
  ])("%s", (address, spans) => {
    expect(rowsOfAddress(address)).toEqual(spans.map(([firstRow, lastRow]) => ({ firstRow, lastRow })));
  });

  test.each(["A:C", "", "#REF!", "Table1[Mix]"])("%s says no rows", (address) => {
    expect(rowsOfAddress(address)).toBeUndefined();
  });

  test("neighbours are joined, and too many apart are the whole sheet", () => {
    const span = (firstRow: number, lastRow: number) => ({ firstRow, lastRow });
    expect(joined([span(4, 4), span(0, 1), span(2, 3), span(9, 12)])).toEqual([span(0, 4), span(9, 12)]);
    expect(joined(Array.from({ length: 100 }, (_, at) => span(at * 2, at * 2)))).toBeUndefined();
  });
});
