import { beforeAll, expect, test } from "vitest";
import { strFromU8, unzipSync } from "fflate";
import { FileWorkbook } from "../../src/workbook/file/fileWorkbook";
import { openFile } from "../../src/workbook/file/openFile";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { draftValue, type SheetDraft } from "../../src/sheet/draft/draft";
import { ownSheetOf } from "../../src/sheet/ownSheet";
import type { CellValue } from "../../src/sheet/sheet";
import { readSample, reportOf } from "../reports/sample";
import { convert } from "./libreOffice";

let drafts: readonly SheetDraft[];
let bytes: Uint8Array;

beforeAll(async () => {
  drafts = (await reportOf(await readSample(), { shopName: "Gannet Point Dive Works" })).drafts;
  const workbook = new FileWorkbook({ sheets: [], settings: new Map(), leftOut: [] });
  await workbook.addSheets(drafts);
  bytes = await writeXlsx(workbook.content);
});

test("LibreOffice opens, calculates and saves a month report: every cell as written, none an error", async () => {
  const saved = await openFile(await convert(bytes, "xlsx", "xlsx"), "book.xlsx");
  const { sheets } = saved.content;
  expect(sheets.map(({ name }) => name)).toEqual(drafts.map(({ name }) => name));
  sheets.forEach((sheet, index) => {
    expect(sheet.rows.map(({ values }) => trimmed(values)).filter((row) => row.length > 0)).toEqual(
      drafts[index]!.rows.map(({ cells }) => trimmed(cells.map(draftValue))).filter((row) => row.length > 0),
    );
  });
});

test("a month report that LibreOffice saved, as a workbook or as text, is still known as ours", async () => {
  for (const format of ["xlsx", "ods", "csv"]) {
    const saved = await openFile(await convert(bytes, "xlsx", format), `book.${format}`);
    expect(saved.content.sheets.map(ownSheetOf)).toEqual(saved.content.sheets.map(() => "month report"));
  }
});

test("LibreOffice takes over its charts, tables' filters, frozen rows and print titles", async () => {
  const parts = unzipSync(await convert(bytes, "xlsx", "xlsx"));
  const charts = Object.keys(parts).filter((name) => /^xl\/charts\/chart\d+\.xml$/.test(name));
  expect(charts).toHaveLength(drafts.reduce((sum, draft) => sum + draft.charts.length, 0));
  const drawn = charts.map((name) => strFromU8(parts[name]!));
  expect(drawn.filter((xml) => xml.includes("<c:barChart>"))).toHaveLength(2);
  expect(drawn.filter((xml) => xml.includes("<c:scatterChart>"))).toHaveLength(1);
  const titles = drafts.filter(({ page }) => page.titleRows).length;
  const book = strFromU8(parts["xl/workbook.xml"]!);
  expect(book.match(/_xlnm\.Print_Titles/g)).toHaveLength(titles);
});

test("LibreOffice prints it: every sheet on paper, no more pages wide than one", async () => {
  const pdf = new TextDecoder("latin1").decode(await convert(bytes, "xlsx", "pdf"));
  const pages = pdf.match(/\/Type\s*\/Page[^s]/g)?.length ?? 0;
  expect(pages).toBeGreaterThanOrEqual(drafts.length);
  expect(pages).toBeLessThan(60);
});

function trimmed(values: readonly CellValue[]): readonly CellValue[] {
  const cells = values.map((value) => (value === "" ? null : value));
  return cells.slice(0, cells.findLastIndex((value) => value !== null) + 1);
}
