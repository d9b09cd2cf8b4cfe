import { describe, expect, it } from "vitest";
import { dateFormatOf, paddedDigits, showsDate, showsTimeOnly } from "../../src/sheet/numberFormat";

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
    expect(paddedDigits("0")).toBe(0);
    expect(paddedDigits("0.00")).toBe(0);
  });
});
