import { describe, expect, test } from "vitest";
import { plainCall } from "../../src/functions/hosts/plainCall";

describe("a formula that is one of our functions with plain arguments", () => {
  test("has values as arguments", () => {
    expect(plainCall('BRIM.MOD("EAN32","ft",1.6)')).toEqual({ name: "MOD", given: ["EAN32", "ft", 1.6] });
    expect(plainCall("brim.end( 60 , -5%, FALSE )")).toEqual({ name: "END", given: [60, -0.05, false] });
  });

  test("may leave arguments out", () => {
    expect(plainCall('BRIM.MOD("air","m",,"fresh")')).toEqual({
      name: "MOD",
      given: ["air", "m", null, "fresh"],
    });
    expect(plainCall("BRIM.MOD()")).toEqual({ name: "MOD", given: [] });
  });

  test("may hold commas, brackets and doubled marks inside text", () => {
    expect(plainCall('BRIM.MIX("31,8 %","a ""(b)""")')).toEqual({
      name: "MIX",
      given: ["31,8 %", 'a "(b)"'],
    });
  });

  test("names cells and ranges, also of other sheets", () => {
    expect(plainCall("BRIM.MOD($B$4,'O''Dive, log (2)'!C9:A2,Log!D1)")).toEqual({
      name: "MOD",
      given: [
        { firstRow: 3, lastRow: 3, firstColumn: 1, lastColumn: 1 },
        { sheet: "O'Dive, log (2)", firstRow: 1, lastRow: 8, firstColumn: 0, lastColumn: 2 },
        { sheet: "Log", firstRow: 0, lastRow: 0, firstColumn: 3, lastColumn: 3 },
      ],
    });
  });

  test.each([
    'ROUND(BRIM.MOD("air","m"),0)',
    'BRIM.MOD("air","m")+1',
    'BRIM.MOD(BRIM.MIX(32),"m")',
    "BRIM.MOD(A1+1)",
    "BRIM.MOD({1,2})",
    "BRIM.MOD(x)",
    "SUM(A1)",
    "",
  ])("is not %s", (formula) => {
    expect(plainCall(formula)).toBeUndefined();
  });

  test("is decided at once, however long the text is", () => {
    expect(plainCall(`BRIM.MOD(${"'".repeat(5000)}`)).toBeUndefined();
    expect(plainCall(`BRIM.MOD(${" ".repeat(5000)}x)`)).toBeUndefined();
  });
});
