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
});
