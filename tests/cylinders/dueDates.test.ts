import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { dateOf, dayNumber, firstDayOf, lastDayOf, monthNumber } from "../../src/cylinders/calendar";
import { countryRules } from "../../src/cylinders/countryRules";
import { hydroDue, lastDayAllowed, visualDue } from "../../src/cylinders/dueDates";
import { readTestStamp } from "../../src/cylinders/readTestStamp";

const due = (stamp: string, country: string, cylinderClass?: string): string =>
  hydroDue(readTestStamp(stamp), countryRules(country), cylinderClass).toString();
const dueVisual = (stamp: string, country: string, cylinderClass?: string): string =>
  visualDue(readTestStamp(stamp), countryRules(country), cylinderClass).toString();

describe("hydro due", () => {
  it.each([
    // 49 CFR 180.205(c), 180.213: during or before the month and year; a test in June 2021 is good through June 2026.
    ["2021/06", "US", undefined, "2026-06-30"],
    ["2020-02-29", "US", undefined, "2025-02-28"],
    ["2019/02", "US", undefined, "2024-02-29"],
    ["2021-06-01", "US", undefined, "2026-06-30"],
    ["2019/12", "US", "DOT-3AA", "2024-12-31"],
    // 49 CFR 180.207 Table 1: ten years; 180.205 and the permits: three for glass fibre, three for aircraft cylinders.
    ["2019/12", "US", "UN-ISO7866", "2029-12-31"],
    ["2019/12", "US", "FRP-1", "2022-12-31"],
    ["2019/12", "US", "3HT", "2022-12-31"],
    // BSAC training material: the hydro falls due five years on, whatever a later visual says.
    ["2020-01", "GB", undefined, "2025-01-31"],
    ["2019/10", "ES", undefined, "2022-10-31"],
    ["2019/10", "ZA", undefined, "2023-10-31"],
    ["2019/10", "AU", undefined, "2020-10-31"],
    ["2019/10", "FI", undefined, "2029-10-31"],
    // France counts from the dated event; with a month only, to its end.
    ["2019-10-15", "FR", undefined, "2021-10-15"],
    ["2020-02-29", "FR", undefined, "2022-02-28"],
    ["2019/10", "FR", undefined, "2021-10-31"],
    ["2019-10-15", "FR", "TIV", "2025-10-15"],
    ["2020-02-29", "HK", undefined, "2025-02-28"],
    // German stamps: the dive school's examples, taken as next dates.
    ["exp 07/5", "DE", undefined, "2007-05-31"],
    ["exp 13/7", "DE", undefined, "2013-07-31"],
    ["exp 2024/02", "US", undefined, "2024-02-29"],
  ])("%s in %s (%s) holds to %s", (stamp, country, cylinderClass, last) => {
    expect(due(stamp, country, cylinderClass)).toBe(last);
  });

  it("says when no hydro is asked for, when the class is unknown, and when the cylinder may not be filled", () => {
    expect(() => due("2019/10", "US", "SMALL-2IN")).toThrow("ask for no hydro");
    expect(() => due("2019/10", "US", "XYZ")).toThrow('no class "XYZ"');
    expect(() => due("2019/10", "NZ", "E6498")).toThrow("may not be filled");
  });
});

describe("visual due", () => {
  it.each([
    ["2025/03", "US", undefined, "2026-03-31"],
    ["2022/08", "GB", undefined, "2025-02-28"],
    ["2021/08", "GB", undefined, "2024-02-29"],
    ["2024/05", "NO", undefined, "2026-05-31"],
    // Japan, aluminium: a year and a month, counted from the end of the month before the test.
    ["2024/05", "JP", "ALUMINIUM", "2025-05-31"],
    ["2024/05", "JP", undefined, "2025-05-31"],
  ])("%s in %s (%s) holds to %s", (stamp, country, cylinderClass, last) => {
    expect(dueVisual(stamp, country, cylinderClass)).toBe(last);
  });

  it("says when no visual is asked for", () => {
    expect(() => dueVisual("2024/05", "IT")).toThrow("ask for no visual");
  });

  // Taught by one US inspector-training body; a shop's own setting.
  it("may end on the first of the month, which is then no longer a day to fill on", () => {
    const firstOfMonth = { months: 12, due: "first of month", basis: "house", source: "house rule" } as const;
    expect(dateOf(lastDayAllowed(readTestStamp("2025/03"), firstOfMonth)).toString()).toBe("2026-02-28");
  });
});

describe("days as numbers", () => {
  it("agree with the calendar", () => {
    fc.assert(
      fc.property(fc.integer({ min: -40_000, max: 60_000 }), (day) => {
        const date = Temporal.PlainDate.from("1970-01-01").add({ days: day });
        expect(dayNumber(date)).toBe(day);
        expect(dateOf(day).equals(date)).toBe(true);
        expect(firstDayOf(monthNumber(date))).toBe(dayNumber(date.with({ day: 1 })));
        expect(lastDayOf(monthNumber(date))).toBe(dayNumber(date.with({ day: date.daysInMonth })));
      }),
    );
  });

  it("an interval ends on the last day of its month, as the calendar adds months", () => {
    const date = fc
      .integer({ min: 0, max: 40_000 })
      .map((day) => Temporal.PlainDate.from("1950-01-01").add({ days: day }));
    fc.assert(
      fc.property(date, fc.integer({ min: 1, max: 144 }), (test, months) => {
        const interval = { months, due: "end of month", basis: "law", source: "" } as const;
        const stamp = {
          month: test.toPlainYearMonth(),
          day: test,
          means: "test",
          plus: false,
          marks: [],
        } as const;
        const month = test.toPlainYearMonth().add({ months });
        expect(dateOf(lastDayAllowed(stamp, interval)).toString()).toBe(
          month.toPlainDate({ day: month.daysInMonth }).toString(),
        );
        const exact = dateOf(lastDayAllowed(stamp, { ...interval, due: "exact date" }));
        expect(exact.toString()).toBe(test.add({ months }).toString());
      }),
    );
  });
});
