import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { audit } from "../../src/audit/audit";
import { fillCheck, type FillToCheck } from "../../src/audit/fillCheck";
import { COUNTRIES, countryRules } from "../../src/cylinders/countryRules";
import { readOxygenService } from "../../src/cylinders/readOxygenService";
import { possibleStamps, readTestStamp } from "../../src/cylinders/readTestStamp";
import { stampOf, type TestStamp } from "../../src/cylinders/testStamp";
import { mixture, type Mixture } from "../../src/gas/mixture";
import { readMix } from "../../src/gas/readMix";
import type { FillMethod, Log } from "../../src/log/log";
import { ambiguous, BLANK, unreadable, value, type Reading } from "../../src/log/reading";
import { readingsWith } from "../../src/log/rows/records";
import { logOf, onDay } from "./sheets";

const day = (date: string): Reading<Temporal.PlainDate> => value(Temporal.PlainDate.from(date));
const stamp = (text: string): Reading<TestStamp> => value(readTestStamp(text, "month first"));

const GOOD: FillToCheck = {
  date: day("2026-11-12"),
  hydro: stamp("2024/10"),
  visual: stamp("2026/05"),
  oxygenService: value(readOxygenService("O2 clean")),
  mix: value(readMix("EAN32")),
  method: value<FillMethod>("partial pressure"),
};
const check = (change: Partial<FillToCheck> = {}, country = "US"): string =>
  fillCheck({ ...GOOD, ...change }, countryRules(country)).text;

describe("a fill check", () => {
  it("says OK, and what was looked at", () => {
    expect(check()).toBe("OK: hydro, visual, rating, method");
    expect(check({ visual: BLANK, hydro: stamp("2025/10") }, "IT")).toBe("OK: hydro, rating, method");
  });

  it("stops with every reason", () => {
    expect(check({ hydro: stamp("2019/10") })).toBe(
      "STOP: Hydro 2019-10 was due by 31 October 2024; filled 12 November 2026.",
    );
    const all = {
      hydro: stamp("2019/10"),
      visual: stamp("2024/05"),
      oxygenService: value(readOxygenService("AIR")),
      mix: value(readMix(32)),
    };
    expect(check(all)).toBe(
      "STOP: Hydro 2019-10 was due by 31 October 2024; filled 12 November 2026. " +
        "Visual 2024-05 was due by 31 May 2025; filled 12 November 2026. " +
        'EAN32 is above the 23.5 % that "air only" allows. ' +
        "Partial pressure puts pure oxygen into a cylinder that is not oxygen clean (rated air only).",
    );
  });

  it("says what it does not know beside what it does", () => {
    const { verdict, text } = fillCheck(
      { ...GOOD, hydro: stamp("2019/10"), visual: BLANK },
      countryRules("US"),
    );
    expect(verdict).toBe("STOP");
    expect(text).toBe(
      "STOP: Hydro 2019-10 was due by 31 October 2024; filled 12 November 2026. UNKNOWN: visual is blank",
    );
  });

  it.each([
    ["date", "UNKNOWN: fill date is blank"],
    ["hydro", "UNKNOWN: hydro is blank"],
    ["visual", "UNKNOWN: visual is blank"],
    ["oxygenService", "UNKNOWN: oxygen rating is blank"],
    ["mix", "UNKNOWN: mix is blank"],
    ["method", "UNKNOWN: method is blank"],
  ] as const)("%s blank: %s", (argument, text) => {
    expect(check({ [argument]: BLANK })).toBe(text);
  });

  it("names every blank", () => {
    const blank = {
      date: BLANK,
      hydro: BLANK,
      visual: BLANK,
      oxygenService: BLANK,
      mix: BLANK,
      method: BLANK,
    };
    const { verdict, text } = fillCheck(blank, countryRules("US"));
    expect(verdict).toBe("UNKNOWN");
    for (const name of ["fill date", "hydro", "visual", "oxygen rating", "mix", "method"])
      expect(text).toContain(name);
  });

  describe("a pair of numbers without an order", () => {
    const either = ambiguous(possibleStamps("06/09"), '"06/09" can be 2006-09 or 2009-06.', "stamp order");
    const filled = (date: string): string =>
      check({ hydro: either, visual: stamp("2013/10"), date: day(date) }, "GB");

    it("is unknown where one of the two is in date, and says what it can be", () => {
      expect(filled("2014-06-30")).toBe('UNKNOWN: hydro: "06/09" can be 2006-09 or 2009-06.');
    });

    it("stops where both are past due", () => {
      expect(filled("2014-07-01")).toBe(
        "STOP: Hydro 2006-09 was due by 30 September 2011; filled 1 July 2014. It is so by either reading of the hydro, 2006-09 or 2009-06.",
      );
    });

    it("stops where the day of the fill is the doubt, and it is past due on both", () => {
      const days = ["2026-07-01", "2026-01-07"].map((each) => Temporal.PlainDate.from(each));
      const date = ambiguous(days, "01/07/2026: day or month first?", "date order");
      expect(check({ date, hydro: stamp("2020/12") })).toBe(
        "STOP: Hydro 2020-12 was due by 31 December 2025; filled 1 July 2026. It is so by either reading of the fill date, 1 July 2026 or 7 January 2026. UNKNOWN: fill date: 01/07/2026: day or month first?",
      );
      expect(check({ date, hydro: stamp("2021/01") })).toBe(
        "UNKNOWN: fill date: 01/07/2026: day or month first?",
      );
    });
  });

  describe("a hydro from a date cell in the fill's own year, day above 12", () => {
    const onCell = (date: string, filled = "2026-11-12"): string =>
      check({
        hydro: value(stampOf(Temporal.PlainDate.from(date))),
        hydroIsDateCell: true,
        date: day(filled),
      });

    it.each(["2026-10-19", "2026-05-13", "2026-03-25"])("%s may be a stamp: unknown", (date) => {
      expect(onCell(date)).toContain("UNKNOWN: hydro");
      expect(onCell(date)).toContain(`20${date.slice(8)}-${date.slice(5, 7)}`);
    });
    // below 13; no earlier year; another year than the fill's; the first of a month
    it.each(["2026-10-12", "2026-05-26", "2026-05-31", "2025-10-19", "2026-10-01"])(
      "%s is a date",
      (date) => {
        expect(onCell(date)).toBe("OK: hydro, visual, rating, method");
      },
    );

    it("as text it is taken at its word", () => {
      expect(check({ hydro: stamp("2026-10-19") })).toBe("OK: hydro, visual, rating, method");
    });
  });

  it("a mix within half a point above the rating passes, and says so", () => {
    const close = {
      oxygenService: value(readOxygenService("40")),
      mix: value(readMix(40.3)),
      method: value<FillMethod>("premix"),
    };
    expect(check(close)).toBe(
      "OK: hydro, visual, rating, method. EAN40.3 is above the rating of 40 %, within the 0.5 points an analyser may be off.",
    );
  });
});

describe("the audit says the same of every fill", () => {
  const months = fc
    .record({ year: fc.integer({ min: 2015, max: 2027 }), month: fc.integer({ min: 1, max: 12 }) })
    .map(({ year, month }) => readTestStamp(`${year}/${month}`));
  const dated = fc
    .integer({ min: 0, max: 4000 })
    .map((days) => stampOf(Temporal.PlainDate.from("2016-01-01").add({ days })));
  const reading = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<Reading<T>> =>
    fc.oneof(
      { weight: 8, arbitrary: arbitrary.map((each) => value(each)) },
      { weight: 1, arbitrary: fc.constant<Reading<T>>(BLANK) },
      { weight: 1, arbitrary: fc.constant(unreadable<T>("no")) },
      { weight: 1, arbitrary: fc.tuple(arbitrary, arbitrary).map((choices) => ambiguous(choices, "either")) },
    );
  const fills: fc.Arbitrary<FillToCheck> = fc.record({
    date: reading(
      fc.integer({ min: 0, max: 1200 }).map((days) => Temporal.PlainDate.from("2024-01-01").add({ days })),
    ),
    hydro: reading(fc.oneof(months, dated)),
    visual: reading(fc.oneof(months, dated)),
    oxygenService: reading(fc.constantFrom("AIR", "40", "23.5", "O2 clean").map(readOxygenService)),
    mix: reading(fc.integer({ min: 180, max: 700 }).map((tenths): Mixture => mixture(tenths / 1000))),
    method: reading(
      fc.constantFrom<FillMethod>("air", "premix", "continuous", "partial pressure", "membrane"),
    ),
  });
  const base = logOf([
    {
      Date: onDay("2026-11-12"), Serial: "AB1234", Method: "air", "Analysed O2 %": 21, "End psi": 3000,
      Hydro: "2024/10", Visual: "2026/05", "O2 rating": "40",
    },
  ]); // prettier-ignore

  /** The same fill as a log of one row. */
  function logWith({ date, hydro, visual, oxygenService, mix, method }: FillToCheck): Log {
    const [fill] = base.fills;
    if (fill?.cylinderInRow === undefined) throw new Error("The log of one row was not read as a flat one.");
    const cylinderInRow = {
      ...fill.cylinderInRow,
      fields: readingsWith(fill.cylinderInRow.fields, { hydro, visual, oxygenService }),
    };
    return {
      ...base,
      fills: [
        {
          ...fill,
          fields: readingsWith(fill.fields, { date, method, orderedMix: mix, analysedMix: BLANK }),
          cylinderInRow,
        },
      ],
    };
  }

  it("STOP is a stop or a breach of V01, V06, O01, O02 or O07; UNKNOWN is not checked; else OK", () => {
    const same = ["V01", "V06", "O01", "O02", "O07"];
    fc.assert(
      fc.property(fills, fc.constantFrom(...COUNTRIES), (fill, { code }) => {
        const rules = countryRules(code);
        const { findings, notChecked } = audit(logWith(fill), rules);
        const stops = findings.filter(
          ({ rule, severity }) => same.includes(rule) && (severity === "stop" || severity === "breach"),
        );
        const lacks = notChecked.filter(({ rule }) => same.includes(rule));
        const expected = stops.length > 0 ? "STOP" : lacks.length > 0 ? "UNKNOWN" : "OK";
        const { verdict, text } = fillCheck(fill, rules);
        expect(verdict).toBe(expected);
        for (const { message } of stops) expect(text).toContain(message);
      }),
      { numRuns: 1500 },
    );
  });
});
