import ExcelJS from "exceljs";
import { expect, test } from "vitest";
import type { SheetContent } from "../../../src/workbook/file/content";
import { openFile } from "../../../src/workbook/file/openFile";
import { writeXlsx } from "../../../src/workbook/file/writeXlsx";
import { handWritten } from "./byHand";

const at = (row: number, column: number) => ({
  firstRow: row,
  lastRow: row,
  firstColumn: column,
  lastColumn: column,
});
const log: SheetContent = {
  name: "O'Dive's log",
  hidden: false,
  dateSystem: 1900,
  merges: [at(0, 0)],
  columns: [],
  frozenRows: 0,
  frozenColumns: 0,
  rows: [{ values: ["Serial", "End psi"] }, { values: ["GP-118", 3000] }],
  marks: [at(1, 0), at(1, 3)],
  links: [{ row: 1, column: 1, link: { cell: { sheet: "O'Dive's log", row: 41, column: 27 } } }],
};

const book = (sheet: SheetContent) => ({ sheets: [sheet], settings: new Map(), leftOut: [] });
const opened = async (sheet: string) =>
  (await openFile(handWritten({ sheets: { Log: `<sheetData/>${sheet}` } }), "log.xlsx")).content;
const format = (cells: string, ...formulas: string[]) =>
  `<conditionalFormatting sqref="${cells}">${formulas.map((formula) => `<cfRule type="expression"><formula>${formula}</formula></cfRule>`).join("")}</conditionalFormatting>`;

test("marks and links of a saved sheet are there when it is opened again", async () => {
  const { sheets, leftOut } = (await openFile(await writeXlsx(book(log)), "log.xlsx")).content;
  expect(sheets[0]).toMatchObject({ marks: log.marks, links: log.links });
  expect(leftOut).toEqual([]);
});

test("other programs see a mark as a conditional format that is always true, and the cell's own look as it was", async () => {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load((await writeXlsx(book(log))).slice().buffer);
  const sheet = workbook.worksheets[0]! as ExcelJS.Worksheet & { conditionalFormattings: unknown };
  expect(sheet.conditionalFormattings).toMatchObject([
    { ref: "A2 D2", rules: [{ type: "expression", formulae: ['LEN("Brimbook")=8'] }] },
  ]);
  expect(sheet.getCell("A2").font?.bold).toBeUndefined();
  expect(sheet.getCell("A2").value).toBe("GP-118");
});

test("many marks stand in formats of a few cells each", async () => {
  const marks = Array.from({ length: 120 }, (_, row) => at(row, 2));
  const { sheets } = (await openFile(await writeXlsx(book({ ...log, marks })), "log.xlsx")).content;
  expect(sheets[0]!.marks).toEqual(marks);
});

test("a conditional format of somebody's own is no mark, and is named as left out", async () => {
  for (const theirs of [
    format("A1:A9", "A1&gt;3"),
    format("A1:A9", 'LEN("Brimbook")=8', "A1&gt;3"),
    format("A1:XFD1048576", 'LEN("Brimbook")=8'),
    format("A1:A9"),
  ]) {
    const { sheets, leftOut } = await opened(theirs);
    expect(sheets[0]!.marks).toBeUndefined();
    expect(leftOut).toEqual(["conditional formats"]);
  }
});

test("marks that another program has put together are read as the area they became", async () => {
  const { sheets, leftOut } = await opened(format("B2:B4 D2", 'LEN("Brimbook")=8'));
  expect(sheets[0]!.marks).toEqual([
    { firstRow: 1, lastRow: 3, firstColumn: 1, lastColumn: 1 },
    { firstRow: 1, lastRow: 1, firstColumn: 3, lastColumn: 3 },
  ]);
  expect(leftOut).toEqual([]);
});

test.each([
  [`<hyperlink ref="A2" location="Cylinders!$B$7" display="x"/>`, "Cylinders", 6, 1],
  [`<hyperlink ref="A2" location="'Fill log 2'!A1:C3"/>`, "Fill log 2", 0, 0],
])("a link within the workbook is kept: %s", async (link, sheet, row, column) => {
  const { sheets, leftOut } = await opened(`<hyperlinks>${link}</hyperlinks>`);
  expect(sheets[0]!.links).toEqual([{ row: 1, column: 0, link: { cell: { sheet, row, column } } }]);
  expect(leftOut).toEqual([]);
});

test.each([
  `<hyperlink ref="A2" r:id="rId1"/>`,
  `<hyperlink ref="A2" r:id="rId1" location="Log!A1"/>`,
  `<hyperlink ref="A2:B9" location="Log!A1"/>`,
  `<hyperlink ref="A2" location="a_name"/>`,
  `<hyperlink ref="A2"/>`,
  `<hyperlink location="Log!A1"/>`,
])("every other link is named as left out: %s", async (link) => {
  const { sheets, leftOut } = await opened(`<hyperlinks>${link}</hyperlinks>`);
  expect(sheets[0]!.links).toBeUndefined();
  expect(leftOut).toEqual(["links"]);
});
