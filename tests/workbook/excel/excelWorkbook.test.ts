import { describe, expect, test, vi } from "vitest";
import { BLANK_ROW, type Sheet } from "../../../src/sheet/sheet";
import { ExcelWorkbook } from "../../../src/workbook/excel/excelWorkbook";
import { SETTINGS_NAMESPACE } from "../../../src/workbook/settingsPart";
import { comparable, describeWorkbookContract, expectProblem } from "../contract";
import { book1904, usualBook } from "../contractBooks";
import { excelDouble } from "./excelDouble";
import { FakeExcel } from "./fakeExcel";
import type { WireRequest } from "./wire";

describeWorkbookContract("Excel", async (sheets) => {
  const { fake, workbook } = open(sheets);
  return {
    workbook,
    selected: async () => fake.selected,
    reopened: async () => new ExcelWorkbook(excelDouble(fake)),
  };
});

function open(sheets: readonly Sheet[] = usualBook, excelApi?: string) {
  const fake = new FakeExcel(sheets);
  return { fake, workbook: new ExcelWorkbook(excelDouble(fake, excelApi)) };
}

const sheetOf = (name: string) => usualBook.find((sheet) => sheet.name === name)!;
const asks = (request: WireRequest, name: string) =>
  JSON.stringify(request).toLowerCase().includes(`"${name.toLowerCase()}"`);

describe("reading a large sheet", () => {
  test("asks once for what fits into one answer", async () => {
    const { fake, workbook } = open();
    await workbook.readSheet("Long");
    expect(fake.requests.filter((request) => asks(request, "values")).length).toBe(1);
  });

  test("asks in blocks of rows for what does not fit", async () => {
    const rows = Array.from({ length: 12_001 }, (_, row) => ({
      values: [row, ...Array<number>(19).fill(1)],
    }));
    const { fake, workbook } = open([{ ...sheetOf("Nothing"), name: "Huge", rows }]);
    const shares: number[] = [];
    const sheet = await workbook.readSheet("Huge", (share) => shares.push(share));
    expect(sheet.rows.map((row) => row.values[0])).toEqual(rows.map((row) => row.values[0]));
    expect(fake.requests.filter((request) => asks(request, "values")).length).toBe(3);
    expect(shares.length).toBeGreaterThanOrEqual(3);
  });

  test("halves a block that Excel refuses as too large, and misses no row", async () => {
    const { fake, workbook } = open();
    fake.answerLimit = 40_000;
    expect(comparable(await workbook.readSheet("Long"))).toEqual(comparable(sheetOf("Long")));
    expect(fake.requests.length).toBeGreaterThan(10);
  });

  test("halves a block for which Excel gives no values instead of an error", async () => {
    const { fake, workbook } = open();
    fake.book.cellLimit = 1000;
    expect(comparable(await workbook.readSheet("Long"))).toEqual(comparable(sheetOf("Long")));
  });

  test("says so where not even one row fits", async () => {
    const { fake, workbook } = open();
    fake.answerLimit = 4000;
    await expectProblem(workbook.readSheet("Odd cells"), "Odd cells");
    const { fake: mute, workbook: other } = open();
    mute.book.cellLimit = 60;
    await expectProblem(other.readSheet("Wide"), "Row 1");
  });

  test("asks nothing more once it is called off", async () => {
    const rows = Array.from({ length: 30_000 }, (_, row) => ({ values: [row, 1, 2, 3, 4, 5, 6, 7, 8, 9] }));
    const { fake, workbook } = open([{ ...sheetOf("Nothing"), name: "Huge", rows }]);
    const caller = new AbortController();
    const read = workbook.readSheet("Huge", () => caller.abort(), caller.signal);
    await expect(read).rejects.toMatchObject({ name: "AbortError" });
    await new Promise((resolve) => setTimeout(resolve));
    expect(fake.requests.filter((request) => asks(request, "values")).length).toBe(1);
  });
});

describe("what Excel tells only on demand", () => {
  test("hidden rows are asked for only where there are some", async () => {
    const { fake, workbook } = open();
    await workbook.readSheet("Long");
    expect(fake.requests.some((request) => asks(request, "getRowProperties"))).toBe(false);
    await workbook.readSheet("Fill log");
    expect(fake.requests.some((request) => asks(request, "getRowProperties"))).toBe(true);
  });

  test("a sheet of which every row is filtered away is read all the same", async () => {
    const { fake, workbook } = open();
    const log = fake.book.sheets.find((sheet) => sheet.name === "Fill log")!;
    log.rows.forEach((row, index) => (log.rows[index] = { ...row, hidden: true }));
    const sheet = await workbook.readSheet("Fill log");
    expect(sheet.rows.map((row) => row.values)).toEqual(
      (await open().workbook.readSheet("Fill log")).rows.map((row) => row.values),
    );
    expect(sheet.rows.every((row) => row.hidden)).toBe(true);
  });

  test("a sheet that only code can unhide is hidden too", async () => {
    const { fake, workbook } = open();
    fake.book.sheets[3]!.visibility = "VeryHidden";
    expect((await workbook.listSheets())[3]).toEqual({ name: "Old register", hidden: true });
    expect((await workbook.readSheet("Old register")).hidden).toBe(true);
  });

  test("an older Excel that cannot tell merged cells reads everything else", async () => {
    const { workbook } = open(usualBook, "1.12");
    const sheet = await workbook.readSheet("Fill log");
    expect(comparable(sheet)).toEqual(comparable({ ...sheetOf("Fill log"), merges: [] }));
  });

  test("of more merged areas than Excel tells, those of the headings are read", async () => {
    const rows = Array.from({ length: 2000 }, (_, row) => ({ values: [`row ${row}`, "x"] }));
    const merges = rows.map((_, row) => ({ firstRow: row, firstColumn: 0, lastRow: row, lastColumn: 1 }));
    const { workbook } = open([{ ...sheetOf("Nothing"), name: "Merged", rows, merges }]);
    const sheet = await workbook.readSheet("Merged");
    expect(sheet.rows.length).toBe(2000);
    expect(sheet.merges).toEqual(merges.slice(0, 30));
  });
});

describe("the day from which dates are counted", () => {
  test("is 1904 where the dates of the sheet show so", async () => {
    const { fake, workbook } = open(book1904);
    fake.book.dateFunction = () => 1462;
    expect((await workbook.readSheet("Log")).dateSystem).toBe(1904);
  });

  test.each([
    [book1904, 1904],
    [usualBook.filter((sheet) => sheet.name === "Fill log"), 1900],
  ] as const)("is what DATE says where dates show another calendar's years (%#)", async (sheets, system) => {
    const { fake, workbook } = open(sheets);
    fake.book.showDate = (serial) => String(2569 + Math.floor((serial - 46_000) / 365));
    expect((await workbook.readSheet(sheets[0]!.name)).dateSystem).toBe(system);
  });

  test("is 1900 where neither tells, or where the sheet has no dates", async () => {
    const { fake, workbook } = open(book1904);
    fake.book.showDate = () => "######";
    fake.refuse = (request) => (asks(request, "functions") ? "GeneralException" : undefined);
    expect((await workbook.readSheet("Log")).dateSystem).toBe(1900);
    expect((await open().workbook.readSheet("Wide")).dateSystem).toBe(1900);
  });

  test("is not taken for 1904 because a day of the month looks like a year", async () => {
    const serials = [46_325, 46_690, 47_055];
    const rows = serials.map((serial) => ({ values: [serial], formats: ["d-mmm-yy"] }));
    const { workbook } = open([{ ...sheetOf("Nothing"), name: "Days", rows }]);
    expect((await workbook.readSheet("Days")).dateSystem).toBe(1900);
  });
});

describe("while a cell is being edited", () => {
  test("a read waits until it is done", async () => {
    const { fake, workbook } = open();
    fake.startEditing();
    const read = workbook.readSheet("Fill log");
    fake.finishEditing();
    expect(comparable(await read)).toEqual(comparable(sheetOf("Fill log")));
  });

  test("a read that waits can be called off", async () => {
    const { fake, workbook } = open();
    fake.startEditing();
    const caller = new AbortController();
    const read = workbook.readSheet("Fill log", undefined, caller.signal);
    caller.abort();
    await expect(read).rejects.toMatchObject({ name: "AbortError" });
    fake.finishEditing();
  });

  test("selecting and keeping settings are refused at once, with what to do", async () => {
    const { fake, workbook } = open();
    fake.startEditing();
    await expectProblem(workbook.selectCell({ sheet: "Wide", row: 0, column: 0 }), "Enter");
    await expectProblem(workbook.writeSetting("brimbook", {}), "Enter");
    fake.finishEditing();
    await workbook.writeSetting("brimbook", { country: "US" });
    expect(await workbook.readSetting("brimbook")).toEqual({ country: "US" });
  });
});

describe("errors", () => {
  const codes = [
    "InvalidOperationInCellEditMode",
    "AccessDenied",
    "ItemNotFound",
    "InvalidArgument",
    "RequestPayloadSizeLimitExceeded",
    "ResponsePayloadSizeLimitExceeded",
    "RangeExceedsLimit",
    "InactiveWorkbook",
    "UnsupportedSheet",
    "MergedRangeConflict",
    "FilteredRangeConflict",
    "RequestAborted",
    "UndoNotSupported",
    "ActivityLimitReached",
    "ServiceNotAvailable",
    "ApiNotFound",
    "GeneralException",
    "SomethingNewInExcel",
  ];
  const attempts: Record<string, (workbook: ExcelWorkbook) => Promise<unknown>> = {
    listSheets: (workbook) => workbook.listSheets(),
    readSheet: (workbook) => workbook.readSheet("Fill log"),
    readCell: (workbook) => workbook.readCell({ sheet: "Fill log", row: 0, column: 0 }),
    selectCell: (workbook) => workbook.selectCell({ sheet: "Fill log", row: 0, column: 0 }),
    readSelection: (workbook) => workbook.readSelection(),
    readSetting: (workbook) => workbook.readSetting("brimbook"),
    writeSetting: (workbook) => workbook.writeSetting("brimbook", 1),
  };

  test.each(codes.flatMap((code) => Object.keys(attempts).map((attempt) => [code, attempt] as const)))(
    "%s in %s comes as a sentence of ours, Excel's own words only in the details",
    async (code, attempt) => {
      const { fake, workbook } = open();
      fake.refuse = () => code;
      const outcome = attempts[attempt]!(workbook);
      await expectProblem(outcome);
      const problem = await outcome.catch((error: unknown) => error);
      expect(problem).toMatchObject({ details: expect.stringContaining(code) });
      expect((problem as Error).message).not.toContain(code);
    },
  );

  test("a sheet that is renamed while it is read is named in the sentence", async () => {
    const { fake, workbook } = open();
    fake.refuse = (request) => {
      if (asks(request, "values")) fake.book.sheets[1]!.name = "Renamed";
      return undefined;
    };
    await expectProblem(workbook.readSheet("Fill log"), "Fill log");
  });

  test("after a refused write the next one is made", async () => {
    const { fake, workbook } = open();
    fake.refuse = () => "AccessDenied";
    await expectProblem(workbook.writeSetting("brimbook", 1));
    fake.refuse = () => undefined;
    await workbook.writeSetting("brimbook", 2);
    expect(await workbook.readSetting("brimbook")).toBe(2);
  });

  test("a slip of our own is not dressed up as Excel's", async () => {
    const { fake, workbook } = open();
    fake.refuse = () => {
      throw new TypeError("a slip");
    };
    await expect(workbook.listSheets()).rejects.toThrow(TypeError);
  });
});

describe("one cell", () => {
  test("is read as it stands now", async () => {
    const { fake, workbook } = open();
    const place = { sheet: "Fill log", row: 4, column: 3 };
    expect(await workbook.readCell(place)).toBe(3000);
    fake.book.sheets[1]!.rows[4] = { values: ["007", "C-014", 46_296, 3100] };
    expect(await workbook.readCell(place)).toBe(3100);
    expect(await workbook.readCell({ ...place, row: 5000 })).toBeNull();
  });

  test("of a sheet that is gone is undefined", async () => {
    expect(await open().workbook.readCell({ sheet: "Gone", row: 0, column: 0 })).toBeUndefined();
  });
});

describe("edits", () => {
  const settled = () => new Promise((resolve) => setTimeout(resolve));

  test("are not missed loudly where Excel cannot tell of them", async () => {
    const { fake, workbook } = open();
    fake.refuse = () => "ApiNotFound";
    const stop = workbook.watchChanges(() => undefined);
    await settled();
    expect(() => stop()).not.toThrow();
    await settled();
    expect(await open().workbook.listSheets()).toHaveLength(10);
  });
});

describe("the rows selected", () => {
  const column = (firstRow: number, lastRow: number) => ({
    firstRow,
    lastRow,
    firstColumn: 2,
    lastColumn: 2,
  });

  test("of several areas come each once and from top to bottom; a hidden one is counted, not taken", async () => {
    const { fake, workbook } = open();
    await workbook.selectCell({ sheet: "Fill log", row: 8, column: 1 });
    fake.book.further = [column(4, 5), column(5, 7)];
    expect(await workbook.readSelection()).toEqual({ sheet: "Fill log", rows: [4, 5, 6, 8], outOfSight: 1 });
  });

  test("of a whole column end where the sheet does", async () => {
    const { fake, workbook } = open();
    await workbook.selectCell({ sheet: "Island", row: 0, column: 0 });
    fake.book.further = [column(0, 1_048_575)];
    const rows = Array.from({ length: 9 }, (_, row) => row);
    expect(await workbook.readSelection()).toEqual({ sheet: "Island", rows, outOfSight: 0 });
  });

  test("on a sheet that holds nothing are none", async () => {
    const { workbook } = open();
    await workbook.selectCell({ sheet: "Nothing", row: 0, column: 0 });
    expect(await workbook.readSelection()).toEqual({ sheet: "Nothing", rows: [], outOfSight: 0 });
  });

  test("are refused in a sentence where they are more than Excel can be asked about", async () => {
    const { fake, workbook } = open([{ ...sheetOf("Nothing"), name: "Huge", rows: hugeRows() }]);
    fake.book.further = [column(0, 1_048_575)];
    await expectProblem(workbook.readSelection(), "120000 rows");
  });

  test("are refused in a sentence where a picture is selected", async () => {
    const { fake, workbook } = open();
    fake.refuse = () => "InvalidSelection";
    await expectProblem(workbook.readSelection(), "Select");
  });
});

function hugeRows() {
  const rows = Array.from({ length: 120_000 }, () => BLANK_ROW);
  rows[119_999] = { values: ["x"] };
  return rows;
}

describe("the cell in hand", () => {
  const settled = () => new Promise((resolve) => setTimeout(resolve));

  test("is looked at once for a burst of moves and edits, until one stops listening", async () => {
    const { fake, workbook } = open();
    let looks = 0;
    const stop = workbook.watchCellInHand(() => (looks += 1));
    await settled();
    fake.tell("SelectionChanged");
    fake.tell("SelectionChanged");
    fake.tell("DataChanged");
    await vi.waitFor(() => expect(looks).toBe(1));
    stop();
    await settled();
    expect([...fake.listeners.values()].every(({ size }) => size === 0)).toBe(true);
  });

  test("has no formula where a value was typed", async () => {
    const { workbook } = open();
    await workbook.selectCell({ sheet: "Fill log", row: 4, column: 0 });
    expect(await workbook.readCellInHand()).not.toHaveProperty("formula");
  });

  test("an area beyond what a formula of ours takes is refused in a sentence", async () => {
    const { workbook } = open();
    const column = { firstRow: 0, lastRow: 10_000, firstColumn: 0, lastColumn: 0 };
    await expect(workbook.readArea("Fill log", column)).rejects.toThrow("name a smaller one");
  });
});

describe("settings", () => {
  test("stand in one custom XML part of ours, and taking out the last takes out the part", async () => {
    const { fake, workbook } = open();
    await workbook.writeSetting("brimbook", { country: "US" });
    await workbook.writeSetting("brimbook", { country: "UK" });
    expect(fake.book.parts.size).toBe(1);
    expect([...fake.book.parts.values()][0]).toContain(SETTINGS_NAMESPACE);
    await workbook.writeSetting("brimbook", null);
    expect(fake.book.parts.size).toBe(0);
  });

  test("other programs' parts are left alone", async () => {
    const { fake, workbook } = open();
    fake.book.parts.set("{theirs}", '<a xmlns="urn:theirs"/>');
    await workbook.writeSetting("brimbook", 1);
    await workbook.writeSetting("brimbook", null);
    expect([...fake.book.parts]).toEqual([["{theirs}", '<a xmlns="urn:theirs"/>']]);
  });

  test("reading them asks Excel to change nothing", async () => {
    const { fake, workbook } = open();
    await workbook.readSetting("brimbook");
    expect(fake.requests.some((request) => request.Actions.some((action) => action.Name !== ""))).toBe(false);
  });
});
