import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { CellAddress, Sheet } from "../../src/sheet/sheet";
import { openFile } from "../../src/workbook/file/openFile";
import { openPage, useBrowser, type BrimbookPage } from "./browser";
import { contentOf } from "./books";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";

const browser = useBrowser();

const LOG: Sheet = {
  name: "Fill log",
  hidden: false,
  dateSystem: 1900,
  merges: [],
  rows: [
    { values: ["Date", "Serial", "End psi", "Signature"] },
    { values: [46_296, "GP10001", 3000, null] },
    { values: [46_297, "GP10002", 3100, "x"] },
  ],
};
const OTHER: Sheet = { ...LOG, name: "Cylinders", rows: [{ values: ["Serial"] }, { values: ["GP10001"] }] };

const serial = { cell: { sheet: "Fill log", row: 1, column: 1 }, held: "GP10001" };
const blank = { cell: { sheet: "Fill log", row: 1, column: 3 }, held: null };
const elsewhere = { cell: { sheet: "Cylinders", row: 1, column: 0 }, held: "GP10001" };
const changed = { cell: { sheet: "Fill log", row: 2, column: 2 }, held: 2900 };
const gone = { cell: { sheet: "No more", row: 2, column: 2 }, held: 2900 };

describe("marks in the local workbook", () => {
  let brimbook: BrimbookPage;
  beforeAll(async () => {
    brimbook = await openPage(browser());
    await open("log.xlsx", await writeXlsx(contentOf([LOG, OTHER])));
  });
  afterAll(() => brimbook.close());

  const open = async (name: string, bytes: Uint8Array) => {
    await brimbook.openFile(name, bytes);
    await brimbook.untilOpen(name);
  };
  const mark = (cells: readonly (typeof serial | typeof blank | typeof changed)[]) =>
    brimbook.page.evaluate((wanted) => window.brimbook!.workbook.marks!.mark(wanted), cells);
  const clear = () => brimbook.page.evaluate(() => window.brimbook!.workbook.marks!.clear());
  const marksIn = async (bytes: Uint8Array) =>
    (await openFile(bytes, "copy.xlsx")).content.sheets.map(({ marks = [] }) =>
      marks.map(({ firstRow, firstColumn }) => [firstRow, firstColumn]),
    );

  test("lie over the cells that hold what was judged, blank ones too, and change nothing in them", async () => {
    const before = await brimbook.readSheet("Fill log");
    expect(await mark([serial, blank, elsewhere, changed, gone])).toEqual([changed.cell, gone.cell]);
    expect(await drawn(brimbook, serial.cell)).toMatchObject({ bg: { rgb: "#F6D9A8" }, bl: 1 });
    expect(await drawn(brimbook, blank.cell)).toMatchObject({ bg: { rgb: "#F6D9A8" } });
    expect(await drawn(brimbook, changed.cell)).toBeUndefined();
    expect(await brimbook.readSheet("Fill log")).toEqual(before);
  });

  test("stand in a saved copy as conditional formats, with the cells as they were", async () => {
    const bytes = await brimbook.savedCopy();
    expect(await marksIn(bytes)).toEqual([
      [
        [1, 1],
        [1, 3],
      ],
      [[1, 0]],
    ]);
    const { sheets, leftOut } = (await openFile(bytes, "copy.xlsx")).content;
    expect(leftOut).toEqual([]);
    expect(sheets[0]!.rows[1]!.styles ?? []).toEqual([]);
    expect(sheets.map(({ rows }) => rows.map(({ values }) => values))).toEqual(
      [LOG, OTHER].map(({ rows }) => rows.map(({ values }) => trimmed(values))),
    );
  });

  test("are there when that copy is opened, and go on request, from every sheet", async () => {
    await open("again.xlsx", await brimbook.savedCopy());
    expect(await drawn(brimbook, blank.cell)).toMatchObject({ bg: { rgb: "#F6D9A8" } });
    expect(await clear()).toBe(3);
    expect(await clear()).toBe(0);
    expect(await drawn(brimbook, serial.cell)).toBeUndefined();
    expect(await marksIn(await brimbook.savedCopy())).toEqual([[], []]);
  });

  test("go along with their rows, and new ones stand instead of the old", async () => {
    await mark([serial, elsewhere]);
    await brimbook.page.evaluate(insertRowAbove, serial.cell);
    expect(await drawn(brimbook, serial.cell)).toBeUndefined();
    expect(await drawn(brimbook, { ...serial.cell, row: 2 })).toMatchObject({ bl: 1 });
    await mark([elsewhere]);
    expect(await marksIn(await brimbook.savedCopy())).toEqual([[], [[1, 0]]]);
    expect(brimbook.faults).toEqual([]);
  });
});

const trimmed = (values: Sheet["rows"][number]["values"]) =>
  values.slice(0, values.findLastIndex((value) => value !== null) + 1);

/** What the engine behind the page lays over the look of a cell when it draws it. */
function drawn(brimbook: BrimbookPage, cell: CellAddress): Promise<unknown> {
  return brimbook.page.evaluate(({ sheet, row, column }) => {
    const { engine } = window.brimbook!.workbook as unknown as EngineOfPage;
    const worksheet = engine.api.getActiveWorkbook().getSheetByName(sheet).getSheet();
    return worksheet.getCell(row, column)?.interceptorStyle ?? undefined;
  }, cell);
}

/** Runs in the page. */
function insertRowAbove({ sheet, row }: CellAddress): void {
  const { engine } = window.brimbook!.workbook as unknown as EngineOfPage;
  engine.api.getActiveWorkbook().getSheetByName(sheet).insertRowBefore(row);
}

interface EngineOfPage {
  readonly engine: {
    readonly api: {
      getActiveWorkbook(): {
        getSheetByName(name: string): {
          insertRowBefore(row: number): void;
          getSheet(): { getCell(row: number, column: number): { interceptorStyle?: unknown } | undefined };
        };
      };
    };
  };
}
