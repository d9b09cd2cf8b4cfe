import * as fc from "fast-check";
import ExcelJS from "exceljs";
import { read, utils } from "@e965/xlsx";
import { strFromU8, unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import type { CellValue } from "../../../src/sheet/sheet";
import type { SheetContent, WorkbookContent } from "../../../src/workbook/file/content";
import { openFile } from "../../../src/workbook/file/openFile";
import { writeXlsx } from "../../../src/workbook/file/writeXlsx";

const log: SheetContent = {
  name: "Fill log",
  hidden: false,
  dateSystem: 1900,
  frozenRows: 2,
  frozenColumns: 1,
  columns: [{ widthCharacters: 14.5 }, undefined, { widthCharacters: 9.140625, hidden: true }],
  merges: [{ firstRow: 0, firstColumn: 0, lastRow: 0, lastColumn: 3 }],
  rows: [
    { values: ["Gannet Point Dive Works"], styles: [{ bold: true, fill: "#DCE9EC" }], heightPt: 24 },
    { values: ["Serial", "Filled", "psi", "MOD"] },
    {
      values: ["007", 46_296, 3000, 111.375],
      formats: [undefined, "m/d/yyyy", "#,##0", "0.0"],
      styles: [undefined, undefined, undefined, { fontColour: "#B3261E", horizontal: "right", wrap: true }],
      origins: [undefined, undefined, undefined, { formula: 'BRIM.MOD(0.32,"ft")' }],
    },
    { values: [] },
    {
      values: ["=1+1", 1, 2, { error: "#N/A" }],
      origins: [
        undefined,
        { formula: "SEQUENCE(1,2)", fills: { firstRow: 4, firstColumn: 1, lastRow: 4, lastColumn: 2 } },
        "spill",
        { formula: "NA()" },
      ],
      hidden: true,
    },
    { values: [true, "  spaces & <marks> \"'\n", "_x000D_\u0007", "🌊\ud800"] },
  ],
};
const register: SheetContent = {
  name: "Register",
  hidden: true,
  dateSystem: 1900,
  frozenRows: 0,
  frozenColumns: 0,
  columns: [],
  merges: [],
  rows: [],
};
const content: WorkbookContent = {
  sheets: [log, register],
  settings: new Map<string, unknown>([["brimbook", { version: 1, country: "US" }]]),
  leftOut: [],
};

describe("a workbook written and opened again", () => {
  test("has the same values, formulas, formats, styles and settings", async () => {
    const { content: again } = await openFile(await writeXlsx(content), "log.xlsx");
    expect(again).toEqual(content);
  });

  test("counts from 1904 where it did", async () => {
    const old = {
      ...content,
      sheets: content.sheets.map((sheet) => ({ ...sheet, dateSystem: 1904 as const })),
    };
    expect((await openFile(await writeXlsx(old), "log.xlsx")).content).toEqual(old);
  });

  test("is the same, byte by byte, whenever and wherever it is written", async () => {
    const zone = process.env["TZ"];
    const bytes = await writeXlsx(content);
    process.env["TZ"] = "Pacific/Auckland";
    const elsewhere = await writeXlsx(content);
    process.env["TZ"] = zone;
    expect(elsewhere).toEqual(bytes);
  });

  test("holds any values that a cell can hold", async () => {
    const cell = fc.oneof<fc.Arbitrary<CellValue>[]>(
      fc.constant(null),
      fc.boolean(),
      fc.double({ noNaN: true, noDefaultInfinity: true }).map((number) => number + 0),
      fc.string({ unit: "binary", minLength: 1 }),
      fc.constantFrom("#N/A", "#VALUE!", "#DIV/0!").map((error) => ({ error })),
    );
    const rows = fc.array(fc.array(cell, { maxLength: 8 }), { maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(rows, async (cells) => {
        const sheet = { ...register, hidden: false, rows: cells.map((values) => ({ values })) };
        const { content: again } = await openFile(
          await writeXlsx({ sheets: [sheet], settings: new Map(), leftOut: [] }),
          "any.xlsx",
        );
        expect(again.sheets[0]!.rows.map((row) => [...row.values])).toEqual(trimmed(cells));
      }),
      { numRuns: 100 },
    );
  });
});

function trimmed(rows: readonly (readonly CellValue[])[]): CellValue[][] {
  const shorten = (row: readonly CellValue[]) =>
    row.slice(0, row.findLastIndex((value) => value !== null) + 1);
  const short = rows.map(shorten);
  return short.slice(0, short.findLastIndex((row) => row.length > 0) + 1);
}

describe("a written workbook", () => {
  test("is read alike by two other programs", async () => {
    const bytes = await writeXlsx(content);
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(bytes.buffer as ArrayBuffer);
    const sheet = book.getWorksheet("Fill log")!;
    expect(sheet.getCell("A3").value).toBe("007");
    expect((sheet.getCell("B3").value as Date).toISOString()).toBe("2026-10-01T00:00:00.000Z");
    expect(sheet.getCell("D3").value).toMatchObject({ result: 111.375 });
    expect(sheet.getCell("A1").font.bold).toBe(true);
    expect(sheet.getColumn(1).width).toBe(14.5);
    expect(sheet.getColumn(3).hidden).toBe(true);
    expect(sheet.views[0]).toMatchObject({ state: "frozen", xSplit: 1, ySplit: 2 });
    expect(sheet.getCell("B1").isMerged).toBe(true);
    expect(book.getWorksheet("Register")!.state).toBe("hidden");
    const other = read(bytes, { type: "array" });
    expect(utils.sheet_to_json(other.Sheets["Fill log"]!, { header: 1, raw: true })).toContainEqual([
      "007",
      46_296,
      3000,
      111.375,
    ]);
  });

  test("keeps text as text, so that nothing in it is run", async () => {
    const sheet = sheetPart(await writeXlsx(content));
    expect(sheet).not.toContain("<f>1+1</f>");
    expect(sheet).toContain(`<c r="A5" t="s">`);
  });

  test("stores our functions and spilling formulas as Excel does", async () => {
    const sheet = sheetPart(await writeXlsx(content));
    expect(sheet).toContain(
      `cm="1"><f t="array" ref="D3">_xldudf_BRIM_MOD(0.32,&quot;ft&quot;)</f><v>111.375</v>`,
    );
    expect(sheet).toContain(`cm="1"><f t="array" ref="B5:C5">_xlfn.SEQUENCE(1,2)</f><v>1</v>`);
    expect(sheet).toContain(`<c r="C5"><v>2</v></c>`);
  });

  test("asks to be calculated only where an answer is missing", async () => {
    const uncalculated = {
      ...register,
      hidden: false,
      rows: [{ values: [null], origins: [{ formula: "1+1" }] }],
    };
    const part = (bytes: Uint8Array) => strFromU8(unzipSync(bytes)["xl/workbook.xml"]!);
    expect(part(await writeXlsx(content))).not.toContain("fullCalcOnLoad");
    expect(part(await writeXlsx({ ...content, sheets: [uncalculated] }))).toContain(`fullCalcOnLoad="1"`);
  });

  test("has tab names that spreadsheets allow, and none twice", async () => {
    const names = ["2026/10 fills?", "a name that is far too long for a tab of a sheet", "Log", "log", ""];
    const sheets = names.map((name) => ({ ...register, name, hidden: false }));
    const { content: again } = await openFile(await writeXlsx({ ...content, sheets }), "log.xlsx");
    expect(again.sheets.map(({ name }) => name)).toEqual([
      "2026 10 fills ",
      "a name that is far too long for",
      "Log",
      "log (2)",
      "Sheet",
    ]);
  });

  test("shows a sheet even where all were hidden", async () => {
    const { content: again } = await openFile(
      await writeXlsx({ ...content, sheets: [register] }),
      "log.xlsx",
    );
    expect(again.sheets[0]!.hidden).toBe(false);
  });

  test("is refused where a cell or the workbook cannot be one", async () => {
    const long = { ...register, rows: [{ values: [null, "x".repeat(32_768)] }] };
    await expect(writeXlsx({ ...content, sheets: [long] })).rejects.toThrow(
      "Cell B1 of “Register” holds 32,768 characters, and an .xlsx cell holds 32,767: shorten it, then save again.",
    );
    await expect(writeXlsx({ ...content, sheets: [] })).rejects.toThrow("There is no sheet to save");
  });
});

function sheetPart(bytes: Uint8Array): string {
  return strFromU8(unzipSync(bytes)["xl/worksheets/sheet1.xml"]!);
}
