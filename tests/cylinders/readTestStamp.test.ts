import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Refusal } from "../../src/gas/refusal";
import { possibleStamps, readTestStamp, type StampOrder } from "../../src/cylinders/readTestStamp";
import { stampText } from "../../src/cylinders/testStamp";

/*
 * US marks: 49 CFR 180.213(d), month, requalifier's number in a square, year; symbols 180.213(f). UK: month then year
 * until September 2002, year then month since (UK club notice on the 2002 change). Germany: a dive school's page on its
 * stamps. Belgium: R and RR (fill station's page). Japan: test station's page. The rest is common practice, no source.
 */
const READ: readonly (readonly [text: string, date: string, marks?: string])[] = [
  // the US square, as people type it
  ["9 A1 32 06", "2006-09"],
  ["9A12306", "2006-09"],
  ["9-A123-06", "2006-09"],
  ["09/A123/06+", "2006-09", "+"],
  ["9 A1 06", "2006-09"],
  ["10 A119 19", "2019-10"],
  ["10A119", "2019-10"],
  ["8 c6 94", "1994-08"],
  ["5 H 95", "1995-05"],
  ["9 A123 2006", "2006-09"],
  // two numbers of which only one can be the month, or only one the year
  ["9/06", "2006-09"],
  ["5/95", "1995-05"],
  ["5 95", "1995-05"],
  ["4/02", "2002-04"],
  ["10/19", "2019-10"],
  ["19/10", "2019-10"],
  ["03/21", "2021-03"],
  ["13/7", "2013-07"],
  ["07/5", "2007-05"],
  ["11/2", "2011-02"],
  ["7/13", "2013-07"],
  ["06/06", "2006-06"],
  ["03 23+", "2023-03", "+"],
  // a four-digit year
  ["2019/10", "2019-10"],
  ["2019-10", "2019-10"],
  ["2019 10", "2019-10"],
  ["2004 05", "2004-05"],
  ["10/2019", "2019-10"],
  ["05-1995", "1995-05"],
  ["2019 HX 10", "2019-10"],
  ["2019HX10", "2019-10"],
  ["2019 - 10", "2019-10"],
  ["10 - 2019", "2019-10"],
  // named months
  ["Sep-06", "2006-09"],
  ["Oct-19", "2019-10"],
  ["Apr-24", "2024-04"],
  ["Sept 2006", "2006-09"],
  ["octobre 2019", "2019-10"],
  ["juil. 2020", "2020-07"],
  ["juin 2020", "2020-06"],
  ["juillet 2020", "2020-07"],
  ["Dez 21", "2021-12"],
  // full dates
  ["2019-10-15", "2019-10-15"],
  ["31/12/2023", "2023-12-31"],
  ["12/31/2023", "2023-12-31"],
  ["15 Oct 2019", "2019-10-15"],
  ["Oct 15, 2019", "2019-10-15"],
  ["29.02.2020", "2020-02-29"],
  ["31/12/23", "2023-12-31"],
  ["1-31-2020", "2020-01-31"],
  ["05/05/2021", "2021-05-05"],
  ["Oct 15 2019", "2019-10-15"],
  ["15Oct2019", "2019-10-15"],
  ["15 - Oct 2019", "2019-10-15"],
  // letters before and behind
  ["R 10/19", "2019-10", "R"],
  ["RR 4/22", "2022-04", "RR"],
  ["V4 02", "2002-04", "V"],
  ["V 03/21", "2021-03", "V"],
  ["2021/03 V", "2021-03", "V"],
  ["VIP 4/24", "2024-04", "V"],
  ["+ 10/19", "2019-10", "cross"],
  ["SA 5-25S", "2025-05", "S SA"],
  ["5-25L", "2025-05", "L"],
  ["10/19 E", "2019-10", "E"],
  ["10/19UE", "2019-10", "UE"],
  ["10/19 VE", "2019-10", "VE"],
  ["10/19 ★", "2019-10", "star"],
  ["10/19*+", "2019-10", "+ star"],
  ["9 A1 32 06 + *", "2006-09", "+ star"],
  ["Hydro 10/19", "2019-10"],
  ["exp 10/24", "2024-10", "due"],
  ["next: 2026/03", "2026-03", "due"],
  ["10\u00a0/\u00a019", "2019-10"],
];

describe("a test stamp", () => {
  const read = READ.map(([text, date, marks = ""]) => [text, date, marks] as const);
  it.each(read)("%s is %s %s", (text, date, marks) => {
    const stamp = readTestStamp(text);
    expect(stampText(stamp)).toBe(date);
    expect(["test", "due"]).toContain(stamp.means);
    const said = [stamp.means === "due" && "due", stamp.plus && "+", ...stamp.marks]
      .filter(Boolean)
      .join(" ");
    expect(said).toBe(marks);
  });

  const OPEN: readonly (readonly [string, readonly string[]])[] = [
    ["06/09", ["2006-09", "2009-06"]],
    ["09-06+", ["2009-06", "2006-09"]],
    ["03 02", ["2003-02", "2002-03"]],
    ["12/03/2021", ["2021-03-12", "2021-12-03"]],
  ];
  it.each(OPEN)("%s can be two dates, and both are named", (text, dates) => {
    expect(possibleStamps(text).map(stampText)).toEqual(dates);
    for (const date of dates) expect(() => readTestStamp(text)).toThrow(date);
    expect(kindOf(text)).toBe("unknown");
  });

  it("what to write instead is the first of the two", () => {
    expect(() => readTestStamp(" 06/09 ")).toThrow(
      /^"06\/09" can be 2006-09 or 2009-06: write the year with four digits, such as 2006\/09\.$/,
    );
  });

  const ORDERED: readonly (readonly [string, StampOrder, string])[] = [
    ["06/09", "month first", "2009-06"],
    ["06/09", "year first", "2006-09"],
    ["09/11", "year first", "2009-11"],
    ["03 02", "month first", "2002-03"],
    ["12/03/2021", "month first", "2021-12-03"],
    ["31/12/2023", "month first", "2023-12-31"],
    // one reading only: the order does not make a month of 19
    ["19/10", "month first", "2019-10"],
    ["10/19", "year first", "2019-10"],
  ];
  it.each(ORDERED)("%s, %s, is %s", (text, order, date) => {
    expect(stampText(readTestStamp(text, order))).toBe(date);
  });

  // Two-digit years: 1950 to 2049.
  it.each([
    ["8/94", "1994-08"],
    ["8/50", "1950-08"],
    ["exp 05/31", "2031-05"],
    ["5/49", "2049-05"],
  ])("%s falls into %s", (text, date) => {
    expect(stampText(readTestStamp(text))).toBe(date);
  });

  it.each([
    "", "-", "OUT", "N/A", "see sticker", "??", "6", "43739", "19-Oct", "00/19", "13/13", "02/29/2023", "2019/13",
    "0/A1/19", "A12 34", "Foo 2020", "2019-10-00", "00/31/2020", "A 2019-10-15", "2019-10-151", "112/31/2023",
    "12/31/20235", "12/31/2", "12019/10", "110/2019", "10/20199", "? 15 Oct 2019", "Oct 20199", "119 A1 06",
    "9 A1 32 200677", "★", "+", "2019-10-32", "x".repeat(5000), "-".repeat(50_000), "1".repeat(50_000),
  ])("%j is no test date, and the sentence says what to write", (text) => {
    expect(() => readTestStamp(text)).toThrow("write month and year");
    expect(kindOf(text)).toBe("unusable");
  }); // prettier-ignore

  it("a year alone is not enough", () => {
    expect(() => readTestStamp("2019")).toThrow("without its month");
    expect(kindOf("2019")).toBe("unknown");
  });

  it("never answers anything but a stamp or a refusal", () => {
    const stampLike = fc.string({ unit: fc.constantFrom(..."0123456789/-. +*ASEVRUaoct★é") });
    fc.assert(
      fc.property(
        fc.oneof(stampLike, fc.string()),
        fc.constantFrom(undefined, "month first", "year first"),
        (text, order) => {
          try {
            const { month } = readTestStamp(text, order as StampOrder | undefined);
            expect(month.month).toBeGreaterThanOrEqual(1);
          } catch (thrown) {
            expect(thrown).toBeInstanceOf(Refusal);
          }
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("reads back every month however it is typed", () => {
    const month = fc.integer({ min: 1, max: 12 });
    const year = fc.integer({ min: 1950, max: 2049 });
    fc.assert(
      fc.property(month, year, (m, y) => {
        const date = `${y}-${String(m).padStart(2, "0")}`;
        const yy = String(y % 100).padStart(2, "0");
        for (const typed of [`${y}/${m}`, `${m}-${y}`, `${m} A1 23 ${yy}`, `${m}A123${yy}`]) {
          expect(stampText(readTestStamp(typed))).toBe(date);
        }
        expect(stampText(readTestStamp(`${String(m).padStart(2, "0")}/${yy}`, "month first"))).toBe(date);
        expect(stampText(readTestStamp(`${yy}/${String(m).padStart(2, "0")}`, "year first"))).toBe(date);
      }),
    );
  });
});

function kindOf(text: string): string {
  try {
    readTestStamp(text);
    return "read";
  } catch (thrown) {
    return thrown instanceof Refusal ? thrown.kind : "crashed";
  }
}
