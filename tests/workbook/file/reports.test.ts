import ExcelJS from "exceljs";
import { strFromU8, unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import type { SheetDraft } from "../../../src/sheet/draft/draft";
import { LOOKS } from "../../../src/sheet/draft/looks";
import { sheetOf } from "../../../src/sheet/draft/sheetOf";
import { FileWorkbook } from "../../../src/workbook/file/fileWorkbook";
import { openFile } from "../../../src/workbook/file/openFile";
import { writeXlsx } from "../../../src/workbook/file/writeXlsx";

const log = {
  name: "Fill log",
  hidden: false,
  dateSystem: 1900,
  merges: [],
  columns: [],
  frozenRows: 0,
  frozenColumns: 0,
  rows: [{ values: ["Serial", "Date"] }, { values: ["GP-118", 46_298] }],
} as const;

export const findings: SheetDraft = sheetOf(
  "Findings",
  [
    { kind: "title", lines: ["Findings & doubts of October 2026"] },
    {
      kind: "table",
      name: "Findings",
      columns: [
        { heading: "Cell" },
        { heading: "What is wrong" },
        { heading: "Filled", format: "yyyy-mm-dd" },
        { heading: "Fills", format: "0" },
      ],
      rows: [
        [
          { value: "Fill log!B2", link: { cell: { sheet: "O'Dive's log", row: 1, column: 1 } } },
          '=HYPERLINK("x") is only text',
          46_298,
          3,
        ],
        [
          {
            value: "other file",
            link: { file: "logs/fill log.xlsx", cell: { sheet: "Fill log", row: 1, column: 1 } },
          },
          "Hydro past due",
          { value: null, formula: "C16+1" },
          1,
        ],
      ],
      empty: "Nothing found.",
      chart: {
        kind: "columns",
        title: "Fills by finding",
        axes: ["Finding", "Fills"],
        says: "Three fills, then one.",
        rowsHigh: 12,
        series: [{ name: "Fills", categories: 1, values: 3, colour: "#0D5A71" }],
      },
    },
  ],
  { paper: "Letter", landscape: true, footer: "Gannet Point R&D" },
);

async function written(drafts: readonly SheetDraft[]): Promise<Uint8Array> {
  const workbook = new FileWorkbook({ sheets: [log], settings: new Map(), leftOut: [] });
  await workbook.addSheets(drafts);
  return writeXlsx(workbook.content);
}

const partsOf = (bytes: Uint8Array) =>
  Object.fromEntries(Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)]));

describe("sheets that Brimbook writes into a file", () => {
  test("stand behind the others, and the others are as they were", async () => {
    const { content } = await openFile(await written([findings]), "log.xlsx");
    expect(content.sheets.map(({ name }) => name)).toEqual(["Fill log", "Findings"]);
    expect(content.sheets[0]!.rows.map(({ values }) => [...values])).toEqual(
      log.rows.map(({ values }) => [...values]),
    );
  });

  test("get a number where their name is in use", async () => {
    const workbook = new FileWorkbook({
      sheets: [{ ...log, name: "findings" }],
      settings: new Map(),
      leftOut: [],
    });
    expect(await workbook.addSheets([findings, findings])).toEqual(["Findings (2)", "Findings (3)"]);
    const parts = partsOf(await writeXlsx(workbook.content));
    expect(parts["xl/tables/table2.xml"]).toContain(`displayName="Findings__2"`);
    expect(parts["xl/charts/chart2.xml"]).toContain("<c:f>'Findings (3)'!$D$16:$D$17</c:f>");
  });

  test("hold text as text whatever it begins with, and formulas only where they were meant", async () => {
    const { content } = await openFile(await written([findings]), "log.xlsx");
    const rows = content.sheets[1]!.rows;
    expect(rows[15]!.values[1]).toBe('=HYPERLINK("x") is only text');
    expect(rows[15]!.origins).toBeUndefined();
    expect(rows[16]!.origins?.[2]).toEqual({ formula: "C16+1" });
  });

  test("have real tables, links, frozen headings, titles on every page and page numbers", async () => {
    const parts = partsOf(await written([findings]));
    const sheet = parts["xl/worksheets/sheet2.xml"]!;
    expect(parts["xl/tables/table1.xml"]).toContain(`ref="A15:D17"`);
    expect(parts["xl/tables/table1.xml"]).toContain(`<tableColumn id="2" name="What is wrong"/>`);
    expect(sheet).toContain(`<hyperlink ref="A16" location="'O''Dive''s log'!B2"/>`);
    expect(sheet).toContain(`location="'Fill log'!B2"/>`);
    expect(parts["xl/worksheets/_rels/sheet2.xml.rels"]).toContain(
      `Target="logs/fill%20log.xlsx" TargetMode="External"`,
    );
    expect(sheet).toContain(`paperSize="1" orientation="landscape" fitToWidth="1" fitToHeight="0"`);
    expect(sheet).toContain("&amp;L&amp;8Gannet Point R&amp;&amp;D&amp;R&amp;8&amp;P / &amp;N");
  });

  test("are read by another program: names, links, tables, freeze, print titles", async () => {
    const withoutChart = {
      ...findings,
      charts: [],
      frozenRows: 15,
      page: { ...findings.page, titleRows: { first: 14, last: 14 } },
    };
    const book = new ExcelJS.Workbook();
    await book.xlsx.load((await written([withoutChart])).buffer as ArrayBuffer);
    const sheet = book.getWorksheet("Findings")!;
    expect(sheet.getTables().map((table) => (table as unknown as { name: string }).name)).toEqual([
      "Findings_",
    ]);
    expect(sheet.views[0]).toMatchObject({ state: "frozen", ySplit: 15, showGridLines: false });
    expect(sheet.pageSetup).toMatchObject({ printTitlesRow: "15:15", paperSize: 1, fitToWidth: 1 });
    expect(sheet.getCell("A1").font).toMatchObject({ bold: true, size: LOOKS.title.sizePt });
    expect(sheet.getCell("A16").border.bottom).toMatchObject({ style: "thin" });
  });

  test("keep their looks when the saved file is opened again", async () => {
    const { content } = await openFile(await written([findings]), "log.xlsx");
    expect(content.sheets[1]!.rows[0]!.styles?.[0]).toEqual(LOOKS.title);
    expect(content.sheets[1]!.rows[14]!.styles?.[0]).toEqual(LOOKS.heading);
  });

  test("lose a table, not the file, where somebody has written over its headings", async () => {
    const workbook = new FileWorkbook({ sheets: [log], settings: new Map(), leftOut: [] });
    await workbook.addSheets([findings]);
    const { sheets } = workbook.content;
    const rows = sheets[1]!.rows.map((row, index) =>
      index === 14 ? { ...row, values: ["Cell", "cell", 3, 4] } : row,
    );
    const parts = partsOf(
      await writeXlsx({ ...workbook.content, sheets: [sheets[0]!, { ...sheets[1]!, rows }] }),
    );
    expect(Object.keys(parts).filter((name) => name.startsWith("xl/tables"))).toEqual([]);
    expect(parts["xl/worksheets/sheet2.xml"]).not.toContain("tablePart");
  });

  test("are the same, byte by byte, every time", async () => {
    expect(await written([findings])).toEqual(await written([findings]));
  });

  test("show the same days in a workbook that counts from 1904", async () => {
    const workbook = new FileWorkbook({
      sheets: [{ ...log, dateSystem: 1904 }],
      settings: new Map(),
      leftOut: [],
    });
    await workbook.addSheets([findings]);
    expect(workbook.content.sheets[1]!.rows[15]!.values).toContain(46_298 - 1462);
    expect(workbook.content.sheets[1]!.rows[15]!.values[3]).toBe(3);
  });
});
