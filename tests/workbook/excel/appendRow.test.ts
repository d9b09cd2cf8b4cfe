import { describe, expect, test } from "vitest";
import { ExcelWorkbook } from "../../../src/workbook/excel/excelWorkbook";
import { usualBook } from "../contractBooks";
import { excelDouble } from "./excelDouble";
import { FakeExcel } from "./fakeExcel";

describe("a row added to a sheet in Excel", () => {
  test("stands below the last row, text as text, and nothing else changes", async () => {
    const workbook = new ExcelWorkbook(excelDouble(new FakeExcel(usualBook)));
    const { name } = (await workbook.listSheets()).find(({ hidden }) => !hidden)!;
    const before = await workbook.readSheet(name);
    const at = await workbook.appendRow(name, [
      { column: 0, value: 46326, format: "yyyy-mm-dd" },
      { column: 1, value: "0025830" },
      { column: 2, value: "TX 10/50" },
      { column: 4, value: 3000 },
    ]);
    const after = await workbook.readSheet(name);
    expect(at).toEqual({ sheet: name, row: before.rows.length, column: 0 });
    expect(after.rows.slice(0, -1).map(({ values }) => values)).toEqual(
      before.rows.map(({ values }) => values),
    );
    expect(after.rows.at(-1)!.values.slice(0, 5)).toEqual([46326, "0025830", "TX 10/50", null, 3000]);
    expect(after.rows.at(-1)!.formats![0]).toBe("yyyy-mm-dd");
  });

  test("stands above totals, which move down and take it in, wherever else they look", async () => {
    const rows = [
      ["Date", "Serial", "End psi"],
      [46_296, "GP1001", 3000],
      [46_297, "GP1002", 3100],
      ["Total", null, 6100],
      ["Twice", null, 12_200],
    ].map((values) => ({ values }));
    const fake = new FakeExcel([{ name: "Fills", hidden: false, dateSystem: 1900, merges: [], rows }]);
    fake.book.formulas.set("Fills!3,2", { formula: "=SUM(C2:C3)", rows: 1 });
    const workbook = new ExcelWorkbook(excelDouble(fake));
    const row = [
      { column: 0, value: 46_298 },
      { column: 2, value: 2900 },
    ];
    const isTotals = ({ values }: { readonly values: readonly unknown[] }) => values[0] === "Twice";
    expect(await workbook.appendRow("Fills", row, isTotals)).toEqual({ sheet: "Fills", row: 3, column: 0 });
    const after = await workbook.readSheet("Fills");
    expect(after.rows.map(({ values }) => values[0])).toEqual([
      "Date",
      46_296,
      46_297,
      46_298,
      "Total",
      "Twice",
    ]);
    expect(after.rows[3]!.values).toEqual([46_298, null, 2900]);
    expect(fake.book.formulas.get("Fills!4,2")).toMatchObject({ formula: "=SUM(C2:C4)" });
    expect(fake.book.formulas.has("Fills!3,2")).toBe(false);
  });
});
