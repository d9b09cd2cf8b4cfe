import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { SheetContent } from "../../src/workbook/file/content";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { openPage, useBrowser, type BrimbookPage } from "./browser";

const browser = useBrowser();

const LOG: SheetContent = {
  name: "Fills",
  hidden: false,
  dateSystem: 1900,
  merges: [],
  columns: [],
  frozenRows: 0,
  frozenColumns: 0,
  rows: [
    { values: ["Date", "Serial", "End psi"] },
    { values: [46_296, "GP1001", 3000] },
    { values: [46_297, "GP1002", 3100] },
    { values: ["Week", null, 6100], origins: [undefined, undefined, { formula: "SUM(C2:C3)" }] },
    { values: ["Twice", null, 12_200], origins: [undefined, undefined, { formula: "2*C4" }] },
  ],
};

describe("a row added to a sheet of the local workbook", () => {
  let brimbook: BrimbookPage;
  beforeAll(async () => {
    brimbook = await openPage(browser());
    const settings = new Map<string, unknown>();
    await brimbook.openFile("log.xlsx", await writeXlsx({ sheets: [LOG], settings, leftOut: [] }));
    await brimbook.untilOpen("log.xlsx");
  });
  afterAll(() => brimbook.close());

  const append = (serial: string, end: number) =>
    brimbook.page.evaluate(
      ([serial, end]) =>
        window.brimbook!.workbook.appendRow!(
          "Fills",
          [
            { column: 0, value: 46_298, format: "yyyy-mm-dd" },
            { column: 1, value: serial },
            { column: 2, value: end },
          ],
          ({ values }) => values[0] === "Twice",
        ),
      [serial, end] as const,
    );
  const rows = async () => (await brimbook.readSheet("Fills")).rows.map(({ values }) => [...values]);

  test("stands above totals, and their sums take it in", async () => {
    expect(await append("0025830", 2900)).toEqual({ sheet: "Fills", row: 3, column: 0 });
    await expect.poll(rows).toEqual([
      ["Date", "Serial", "End psi"],
      [46_296, "GP1001", 3000],
      [46_297, "GP1002", 3100],
      [46_298, "0025830", 2900],
      ["Week", null, 9000],
      ["Twice", null, 18_000],
    ]);
  });

  test("the next one stands below it", async () => {
    expect(await append("GP1004", 3000)).toEqual({ sheet: "Fills", row: 4, column: 0 });
    await expect
      .poll(async () => (await rows()).slice(3))
      .toEqual([
        [46_298, "0025830", 2900],
        [46_298, "GP1004", 3000],
        ["Week", null, 12_000],
        ["Twice", null, 24_000],
      ]);
    expect(brimbook.faults).toEqual([]);
  });
});
