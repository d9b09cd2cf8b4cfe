import { expect, test } from "vitest";
import { copyName, summaryOf } from "../../src/page/opened";
import type { WorkbookContent } from "../../src/workbook/file/content";

const book = (rows: number, leftOut: readonly string[] = []): WorkbookContent => ({
  sheets: [
    {
      name: "Log",
      hidden: false,
      dateSystem: 1900,
      rows: Array.from({ length: rows }, () => ({ values: ["GP-118"] })),
      merges: [],
      columns: [],
      frozenRows: 0,
      frozenColumns: 0,
    },
  ],
  settings: new Map(),
  leftOut,
});

test("the summary says how much was opened", () => {
  expect(summaryOf("log.xlsx", book(1612))).toBe("log.xlsx: 1,612 rows in 1 sheet.");
  expect(summaryOf("log.xlsx", book(1))).toBe("log.xlsx: 1 row in 1 sheet.");
});

test("the summary says what a saved copy will not have", () => {
  expect(summaryOf("log.xlsx", book(2, ["charts", "comments"]))).toBe(
    "log.xlsx: 2 rows in 1 sheet. A saved copy leaves out: charts, comments.",
  );
});

test.each([
  ["log.xlsx", "log copy.xlsx"],
  ["log.csv", "log copy.xlsx"],
  ["Fills 3.5.ods", "Fills 3.5 copy.xlsx"],
  ["log", "log copy.xlsx"],
])("%s is saved as %s", (fileName, copy) => {
  expect(copyName(fileName)).toBe(copy);
});
