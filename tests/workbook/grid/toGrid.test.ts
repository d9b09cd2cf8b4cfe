import { describe, expect, test } from "vitest";
import type { CellValue } from "../../../src/sheet/sheet";
import type { CellStyle } from "../../../src/sheet/cellStyle";
import type { SheetContent, WorkbookContent } from "../../../src/workbook/file/content";
import { cellValue, engineCell } from "../../../src/workbook/grid/cells";
import { columnCharacters, columnPixels, rowPixels, rowPoints } from "../../../src/workbook/grid/sizes";
import { allAtOnce } from "../../../src/sheet/steps";
import { cellStyle, StyleTable } from "../../../src/workbook/grid/styles";
import { gridData } from "../../../src/workbook/grid/toGrid";

function book(sheet: Partial<SheetContent>): WorkbookContent {
  return {
    sheets: [
      {
        name: "Log",
        hidden: false,
        dateSystem: 1900,
        rows: [],
        merges: [],
        columns: [],
        frozenRows: 0,
        frozenColumns: 0,
        ...sheet,
      },
    ],
    settings: new Map(),
    leftOut: [],
  };
}

const loaded = (sheet: Partial<SheetContent>) => allAtOnce(gridData(book(sheet), "test")).sheets.sheet0!;

describe("cells of the grid", () => {
  test.each<CellValue>([
    "007",
    "2026-01-02",
    "TRUE",
    "=A1",
    "#N/A",
    " spaced ",
    3000,
    0,
    -0.5,
    true,
    false,
    { error: "#N/A" },
    { error: "#DIV/0!" },
    null,
  ])("hold %j and give it back", (value) => {
    expect(cellValue(engineCell(value))).toEqual(value);
  });

  test("say nothing where there is no cell", () => {
    expect(cellValue(undefined)).toBeNull();
    expect(cellValue({ v: "" })).toBeNull();
  });

  test("that were typed in several lines are text with line breaks", () => {
    expect(cellValue({ p: { id: "", documentStyle: {}, body: { dataStream: "two\rlines\r\n" } } })).toBe(
      "two\nlines",
    );
  });
});

describe("looks of the grid", () => {
  test.each<CellStyle>([
    { bold: true },
    { italic: true, underline: true },
    { fontColour: "#1a2b3c", fill: "#d9eaee" },
    { horizontal: "center", vertical: "top", wrap: true },
    { horizontal: "right", vertical: "bottom" },
    { horizontal: "left", vertical: "center" },
  ])("keep %j", (style) => {
    const table = new StyleTable();
    expect(cellStyle(table.styles[table.idOf(style, undefined)!])).toEqual(style);
  });

  test("are kept once for all cells that share them", () => {
    const table = new StyleTable();
    expect(table.idOf({ bold: true }, "0%")).toBe(table.idOf({ bold: true }, "0%"));
    expect(table.idOf({ bold: true }, "0%")).not.toBe(table.idOf({ bold: true }, "0.0"));
    expect(Object.keys(table.styles)).toHaveLength(2);
    expect(table.idOf(undefined, undefined)).toBeUndefined();
  });
});

describe("sizes", () => {
  test("a column of 9.140625 characters is 64 pixels wide, and back", () => {
    expect(columnPixels(9.140625)).toBe(64);
    expect(columnCharacters(64)).toBe(9.140625);
  });

  test("a row of 15 points is 20 pixels high, and back", () => {
    expect(rowPixels(15)).toBe(20);
    expect(rowPoints(20)).toBe(15);
  });
});

describe("a workbook for the grid", () => {
  test("has formulas to calculate, and leaves the way free for what they spill", () => {
    const { cellData } = loaded({
      rows: [
        { values: ["Step", "Gas"], origins: [{ formula: "BRIM.FILLSTEPS(A9)" }, "spill"] },
        { values: ["oxygen", "oxygen"], origins: ["spill", "spill"] },
      ],
    });
    expect(cellData![0]![0]).toMatchObject({ f: "=BRIM.FILLSTEPS(A9)", v: "Step" });
    expect(cellData![0]![1]).toBeUndefined();
    expect(cellData![1]).toBeUndefined();
  });

  test("counts the days of a 1904 workbook from 1900, and leaves its other numbers alone", () => {
    const { cellData } = loaded({
      dateSystem: 1904,
      rows: [{ values: [44_834, 230, 0.5], formats: ["yyyy-mm-dd", "0", "h:mm"] }],
    });
    expect([0, 1, 2].map((column) => cellData![0]![column]!.v)).toEqual([46_296, 230, 0.5]);
  });

  test("has room below and beside what is in use, and for what its formulas look at", () => {
    expect(loaded({ rows: [{ values: ["Serial"] }] })).toMatchObject({ rowCount: 2000, columnCount: 52 });
    const formula = { values: [0], origins: [{ formula: "COUNTA(BZ2:BZ9000)" }] };
    expect(loaded({ rows: [formula] })).toMatchObject({ rowCount: 9000, columnCount: 78 });
  });

  test("keeps frozen, hidden and sized rows and columns, and merged cells", () => {
    const sheet = loaded({
      rows: [
        { values: ["Log"], heightPt: 24 },
        { values: ["GP-118"], hidden: true },
      ],
      columns: [{ widthCharacters: 12 }, { hidden: true }],
      merges: [{ firstRow: 0, firstColumn: 0, lastRow: 0, lastColumn: 3 }],
      frozenRows: 1,
    });
    expect(sheet.rowData).toEqual({ 0: { h: 32, ia: 0 }, 1: { hd: 1 } });
    expect(sheet.columnData).toEqual({ 0: { w: 84 }, 1: { hd: 1 } });
    expect(sheet.mergeData).toEqual([{ startRow: 0, startColumn: 0, endRow: 0, endColumn: 3 }]);
    expect(sheet.freeze).toEqual({ xSplit: 0, ySplit: 1, startColumn: -1, startRow: 1 });
  });
});
