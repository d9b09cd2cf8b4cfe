import { describe, expect, test } from "vitest";
import {
  isDynamic,
  movedFormula,
  storedFormula,
  typedFormula,
} from "../../../src/workbook/file/xlsx/formulas";

describe("a formula moved two rows down and one column right", () => {
  test.each([
    ["A1", "B3"],
    ["$A1", "$A3"],
    ["A$1", "B$1"],
    ["$A$1:C9", "$A$1:D11"],
    ["SUM(Log!A1:B2)", "SUM(Log!B3:C4)"],
    ["'Log A1'!A1", "'Log A1'!B3"],
    ["A:C", "B:D"],
    ["$A:C", "$A:D"],
    ["3:4", "5:6"],
    ['"A1"&A1', '"A1"&B3'],
    ["LOG10(A1)", "LOG10(B3)"],
    ["TAX2024!A1", "TAX2024!B3"],
    ["Table1[A1]", "Table1[A1]"],
    ["my.A1+x_A1", "my.A1+x_A1"],
    ["XFD1", "#REF!"],
    ["A1048575", "#REF!"],
    ["1.5*A1", "1.5*B3"],
    ["a1", "B3"],
  ])("%s is %s", (formula, moved) => {
    expect(movedFormula(formula, 2, 1).toUpperCase()).toBe(moved.toUpperCase());
  });
});

describe("the form that Excel stores", () => {
  test.each([
    ['BRIM.MOD(A1,"BRIM.MOD(x)")', '_xldudf_BRIM_MOD(A1,"BRIM.MOD(x)")'],
    ["XLOOKUP(A1,B:B,C:C)", "_xlfn.XLOOKUP(A1,B:B,C:C)"],
    ["SORT(FILTER(A1:A9,B1:B9=1))", "_xlfn._xlws.SORT(_xlfn._xlws.FILTER(A1:A9,B1:B9=1))"],
    ["LET(psi,A1,bar,psi/14.5,bar+1)", "_xlfn.LET(_xlpm.psi,A1,_xlpm.bar,_xlpm.psi/14.5,_xlpm.bar+1)"],
    ["MAP(A1:A3,LAMBDA(x,x*2))", "_xlfn.MAP(A1:A3,_xlfn.LAMBDA(_xlpm.x,_xlpm.x*2))"],
    ["SUM(A1:A3)", "SUM(A1:A3)"],
    ["IFERROR(STDEV.S(A1:A3),0)", "IFERROR(_xlfn.STDEV.S(A1:A3),0)"],
  ])("%s is stored and read back", (typed, stored) => {
    expect(storedFormula(typed)).toBe(stored);
    expect(typedFormula(stored)).toBe(typed);
  });

  test("is an array where it is ours or may spill", () => {
    expect(["BRIM.MOD(A1)", "FILTER(A1:A9,B1:B9)", "1+brim.mix(A1)"].map(isDynamic)).toEqual([
      true,
      true,
      true,
    ]);
    expect(["SUM(A1)", '"FILTER("', "MYFILTER(A1)"].map(isDynamic)).toEqual([false, false, false]);
  });
});
