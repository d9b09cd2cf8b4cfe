import { describe, expect, it } from "vitest";
import {
  dateFormatOf,
  paddedDigits,
  showsDate,
  showsTimeOnly,
  numberWithLetters,
} from "../../src/sheet/numberFormat";

describe("what a number format shows of a date", () => {
  it.each([
    "m/d/yyyy",
    "dd/mm/yyyy",
    "mmm-yy",
    "d-mmm",
    "yyyy-mm-dd hh:mm",
    "[$-409]d-mmm-yy;@",
    "[$-F800]dddd, mmmm dd, yyyy",
    'yyyy"年"m"月"d"日"',
    "dd.mm.yyyy",
  ])("%s shows a date", (format) => {
    expect(showsDate(format)).toBe(true);
    expect(showsTimeOnly(format)).toBe(false);
  });

  it.each(["h:mm", "h:mm AM/PM", "[h]:mm:ss", "mm:ss.0", "hh:mm:ss"])("%s shows a time only", (format) => {
    expect(showsTimeOnly(format)).toBe(true);
    expect(showsDate(format)).toBe(false);
  });

  it.each([
    undefined,
    "General",
    "Standard",
    "@",
    "0",
    "0.00",
    "#,##0",
    "0%",
    "0.00E+00",
    '#,##0 "days"',
    '0 "psi"',
    "[Red]#,##0;[Blue]-#,##0",
    "_-* #,##0.00 €_-",
    "00000",
    "# ?/?",
    '"Serial "0',
    // A number as it comes, however it is dressed (ECMA-376 part 1, 18.8.31).
    'General" psi"',
    "General;[Red]-General",
    "[Red]General",
    "General_)",
    '[>=3000]General;[<3000]General" low"',
    "[$-409]General",
    'Standard" bar"',
  ])("%s shows none", (format) => {
    expect(showsDate(format)).toBe(false);
    expect(showsTimeOnly(format)).toBe(false);
  });

  it("tells which parts it shows, not in which order", () => {
    expect(dateFormatOf("d-mmm")).toEqual({ year: false, month: true, day: true, time: false });
    expect(dateFormatOf("mmm-yy")).toEqual({ year: true, month: true, day: false, time: false });
    expect(dateFormatOf("m/d/yyyy")).toEqual(dateFormatOf("dd/mm/yyyy"));
    expect(dateFormatOf("yyyy-mm-dd hh:mm")).toEqual({ year: true, month: true, day: true, time: true });
  });

  it("knows a format that fills up with zeros", () => {
    expect(paddedDigits("00000")).toBe(5);
    expect(paddedDigits("00-0000")).toBe(6);
    expect(paddedDigits("0")).toBe(0);
    expect(paddedDigits("0.00")).toBe(0);
  });

  it.each([
    ['0" bar"', 200, "200 bar"],
    ['General" psi"', 2950.5, "2950.5 psi"],
    ['"HK"0000', 7, "HK0007"],
    ["\\H\\K-0000", 1001, "HK-1001"],
    ['#,##0.00 "L"', 11.1, "11.1 L"],
    ['0.0%" O2"', 0.32, "32% O2"],
    ["#,##0 [$kr-414]", 150, "150 kr"],
    ['[<=450]0" bar";0" psi"', 232, "232 bar"],
    ['[<=450]0" bar";0" psi"', 3000, "3000 psi"],
    ['0" bar";-0" low"', -3, "-3 low"],
  ])("%s writes %d as %s", (format, number, text) => {
    expect(numberWithLetters(number, format)).toBe(text);
  });

  it.each([
    "0.00",
    '0.0,"k"',
    'yyyy"y"',
    "mmm-yy",
    '0.00E+00" bar"',
    '# ?/?" turns"',
    "[Red]General",
    undefined,
  ])("%s writes no letters beside a number that would be all of it", (format) => {
    expect(numberWithLetters(3000, format)).toBeUndefined();
  });
});
