import { describe, expect, test } from "vitest";
import { reachOf } from "../../../src/workbook/grid/reach";

describe("how far formulas look", () => {
  test("is the furthest row and column they name", () => {
    expect(reachOf(["SUM(B2:B5000)", "$AA$7+C3"])).toEqual({ rows: 5000, columns: 27 });
  });

  test("does not take mixes in quotation marks for cells", () => {
    expect(reachOf(['BRIM.MOD("EAN32","ft")'])).toEqual({ rows: 0, columns: 0 });
  });

  test("does not take names of sheets or functions for cells", () => {
    expect(reachOf(["'LOG 2024 A99'!B3", "LOG10(C4)"])).toEqual({ rows: 4, columns: 3 });
  });

  test("is nothing where there are no formulas", () => {
    expect(reachOf([])).toEqual({ rows: 0, columns: 0 });
  });
});
