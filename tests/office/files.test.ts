import { beforeAll, describe, expect, test } from "vitest";
import type { SheetContent, WorkbookContent } from "../../src/workbook/file/content";
import { openFile } from "../../src/workbook/file/openFile";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { convert } from "./libreOffice";

const plain = {
  hidden: false,
  dateSystem: 1900,
  columns: [],
  merges: [],
  frozenRows: 0,
  frozenColumns: 0,
} as const;
const fills: SheetContent = {
  ...plain,
  name: "Fills",
  columns: [{ widthCharacters: 14.7 }],
  merges: [{ firstRow: 0, firstColumn: 0, lastRow: 0, lastColumn: 1 }],
  rows: [
    { values: ["Gannet Point", null, "psi"], styles: [{ bold: true, fill: "#DCE9EC" }] },
    { values: ["007", 46_296, 3000], formats: [undefined, "m/d/yyyy"] },
    { values: ["=1+1", 46_296.75, 2950.5], formats: [undefined, "m/d/yyyy h:mm"], hidden: true },
    { values: ["air", { error: "#N/A" }, "Größe <12 L> & 🌊"] },
    {
      values: [5950.5, null, null],
      origins: [
        { formula: "SUM(C2:C3)" },
        { formula: "SUM(C2:C3)*2" },
        { formula: 'IF(C2>1,"over","under")' },
      ],
    },
  ],
};
const register: SheetContent = {
  ...plain,
  name: "Register & co",
  hidden: true,
  rows: [{ values: ["GP-118"] }],
};
const content: WorkbookContent = {
  sheets: [fills, register],
  settings: new Map<string, unknown>([["brimbook", { version: 1 }]]),
  leftOut: [],
};
/** What LibreOffice must show: the same values, and the answers of the formulas that had none. */
const values = [
  ["Gannet Point", null, "psi"],
  ["007", 46_296, 3000],
  ["=1+1", 46_296.75, 2950.5],
  ["air", { error: "#N/A" }, "Größe <12 L> & 🌊"],
  [5950.5, 11_901, "over"],
];

describe.each(["xlsx", "ods"])(
  "a file of ours that LibreOffice opens, calculates and saves as .%s",
  (extension) => {
    let sheets: WorkbookContent["sheets"];
    beforeAll(async () => {
      const saved = await convert(await writeXlsx(content), "xlsx", extension);
      sheets = (await openFile(saved, `book.${extension}`)).content.sheets;
    });

    test("has the same values, and its formulas are calculated", () => {
      expect(sheets[0]!.rows.map((row) => [...row.values])).toEqual(values);
      expect(sheets[1]!.rows.map((row) => [...row.values])).toEqual([["GP-118"]]);
    });

    test("has the same dates, merged and hidden cells, and looks the same", () => {
      expect(sheets.map(({ name, hidden }) => ({ name, hidden }))).toEqual([
        { name: "Fills", hidden: false },
        { name: "Register & co", hidden: true },
      ]);
      expect(sheets[0]!.merges).toEqual(fills.merges);
      expect(sheets[0]!.rows.map((row) => row.hidden ?? false)).toEqual([false, false, true, false, false]);
      expect(sheets[0]!.rows[1]!.formats?.[1]).toMatch(/[my]/);
      expect(sheets[0]!.rows[1]!.formats?.[2]).toBeUndefined();
      if (extension === "ods") return;
      expect(sheets[0]!.rows[0]!.styles?.[0]).toMatchObject({ bold: true, fill: "#DCE9EC" });
      expect(sheets[0]!.columns[0]!.widthCharacters).toBeCloseTo(14.7, 0);
    });
  },
);

test("LibreOffice shows a workbook of ours that counts from 1904 on the same days", async () => {
  const old = {
    ...content,
    sheets: [{ ...fills, dateSystem: 1904 as const, rows: [{ values: [42_277], formats: ["yyyy-mm-dd"] }] }],
  };
  const csv = await convert(await writeXlsx(old), "xlsx", "csv");
  expect(new TextDecoder().decode(csv).trim()).toBe("2019-10-01");
});

test("an old workbook that LibreOffice writes as .xls is refused with what to do", async () => {
  const xls = await convert(await writeXlsx(content), "xlsx", "xls");
  await expect(openFile(xls, "book.xls")).rejects.toThrow("Save it as .xlsx, and open that.");
});
