import { expect, test } from "vitest";
import { isTotalsRow } from "../../src/log/rows/totalsRow";
import type { CellValue } from "../../src/sheet/sheet";

const COLUMNS = [
  { column: 0, field: "date" },
  { column: 1, field: "serial" },
  { column: 2, field: "endPressure" },
  { column: 3, field: "owner" },
] as const;

test.each<[readonly CellValue[], boolean]>([
  [["Total", null, 84_000], true],
  [[null, "Total", 84_000], true],
  [[46_326, null, "Sum of the week"], true],
  [[46_326, "GP1001", 3000, "Total Diving"], false],
  [[46_326, "GP1001", 3000], false],
  [[null, null, 84_000], false],
  [[], false],
])("%j is a total: %j", (values, isTotal) => {
  expect(isTotalsRow({ values }, COLUMNS)).toBe(isTotal);
});
