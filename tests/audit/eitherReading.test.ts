import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { audit } from "../../src/audit/audit";
import { dueLists } from "../../src/audit/lists/dueLists";
import type { AuditResult } from "../../src/audit/judge/finding";
import { countryRules } from "../../src/cylinders/countryRules";
import { everyReading, TestHistory, type Test } from "../../src/audit/record/testHistory";
import { readTestStamp } from "../../src/cylinders/readTestStamp";
import type { LogContext } from "../../src/log/context";
import { FULL, logOf, onDay, SHOP, type TestRow } from "./sheets";

/*
 * A date that can be read in two ways, and the fill past due by both, by one, by neither. 06/09 is September 2006 or
 * June 2009; 01/07/2026 is 1 July or 7 January. Nothing in these sheets says which comes first.
 */

const OPEN: LogContext = { units: "us" };

/** A second fill, as it should be, shows what the columns hold. */
const SOUND: TestRow = { ...FULL, Serial: "ZZ9999" };

function check(change: TestRow, country = "US", register: readonly TestRow[] = []): AuditResult {
  return audit(logOf([{ ...FULL, ...change }, SOUND], register, OPEN), countryRules(country), SHOP);
}

/** What the audit says of one rule for the first fill. */
function verdict(rule: string, change: TestRow, country = "US"): string {
  const { findings, notChecked } = check(change, country);
  const found = findings.filter((each) => each.rule === rule && each.cell.row === 1);
  const lacks = notChecked.filter((each) => each.rule === rule && each.cells.some(({ row }) => row === 1));
  return [...found.map(({ severity }) => severity), ...lacks.map(({ why }) => why)].join(", ") || "nothing";
}

const message = (rule: string, change: TestRow, country = "US"): string | undefined =>
  check(change, country).findings.find((each) => each.rule === rule && each.cell.row === 1)?.message;

describe("a test date that can be read in two ways", () => {
  const HYDRO = "hydro can be read in more than one way";
  // Five years in Britain: to 30 September 2011, or to 30 June 2014.
  it.each([
    // before both, between both: by one reading the only hydro is later, by the other it is in date
    ["2006-08-31", HYDRO],
    ["2009-05-31", HYDRO],
    // in date by both: the doubt stands, as somebody has to look at the stamp
    ["2010-01-10", HYDRO],
    ["2011-09-30", HYDRO],
    // past due by the one, in date by the other
    ["2011-10-01", HYDRO],
    ["2014-06-30", HYDRO],
    // past due by both
    ["2014-07-01", "stop"],
    ["2026-11-12", "stop"],
  ])("hydro 06/09, filled %s: %s", (date, expected) => {
    const change = { Hydro: "06/09", Made: "1999/03", Visual: date.slice(0, 7), Date: onDay(date) };
    expect(verdict("V01", change, "GB")).toBe(expected);
  });

  it("is not taken for both where one reading is later than the fill, and nothing earlier is on record", () => {
    // 2012-11 or 2011-12; by the first the only hydro came after the fill.
    const filled = { Hydro: "11/12", Made: "1999/03", Date: onDay("2012-10-31") };
    expect(verdict("V01", filled, "AU")).toBe(HYDRO);
    // A year in Australia; an earlier hydro is past due whichever it is.
    expect(verdict("V01", { ...filled, "Previous hydro": "2009/01" }, "AU")).toBe(HYDRO);
    expect(verdict("V01", { ...filled, "Previous hydro": "2009/01", Date: onDay("2013-12-01") }, "AU")).toBe(
      "stop",
    );
  });

  const VISUAL = "visual can be read in more than one way";
  // A year in the US: to 31 May 2010, or to 30 September 2006 (custom, so a breach).
  it.each([
    ["2010-05-31", VISUAL],
    ["2010-06-01", "breach"],
  ])("visual 05/09, filled %s: %s", (date, expected) => {
    const change = { Visual: "05/09", Hydro: "2006/06", Made: "1999/03", Date: onDay(date) };
    expect(verdict("V06", change)).toBe(expected);
  });

  it("a visual that may be later than the fill stays open, as one before may have been overwritten", () => {
    const change = { Visual: "11/12", Hydro: "2006/06", Made: "1999/03", Date: onDay("2012-06-10") };
    expect(verdict("V06", change, "FR")).toBe(VISUAL);
  });

  it.each([
    // Twelve months: to 31 May 2010, or to 30 September 2006.
    ["O04", { "O2 cleaned": "05/09" }, "2010-05-31", "oxygen cleaning can be read in more than one way"],
    ["O04", { "O2 cleaned": "05/09" }, "2010-06-01", "stop"],
    // Fifteen years of service: to 31 May 2024, or to 30 September 2020.
    [
      "V04",
      { Made: "05/09", Class: "CFFC" },
      "2024-05-31",
      "manufacture date can be read in more than one way",
    ],
    ["V04", { Made: "05/09", Class: "CFFC" }, "2024-06-01", "stop"],
    // Sixty months: to 31 May 2014, or to 30 September 2010.
    [
      "V05",
      { Alloy: "6351", "Eddy current": "05/09" },
      "2014-05-31",
      "eddy current can be read in more than one way",
    ],
    ["V05", { Alloy: "6351", "Eddy current": "05/09" }, "2014-06-01", "stop"],
  ] as const)("%s, %j, filled %s: %s", (rule, change, date, expected) => {
    expect(verdict(rule, { Made: "1999/03", ...change, Date: onDay(date) })).toBe(expected);
  });

  it("says by which readings, and what is wrong by the likelier", () => {
    expect(message("V01", { Hydro: "06/09", Made: "1999/03" }, "GB")).toBe(
      "Hydro 2006-09 was due by 30 September 2011; filled 12 November 2026. It is so by either reading of the hydro, 2006-09 or 2009-06.",
    );
    expect(message("V01", { Hydro: "06/09", "Previous hydro": "02/04", Made: "1999/03" }, "GB")).toContain(
      "It is so by either reading of the hydro, 2006-09 or 2009-06, and by either reading of the hydro, 2002-04 or 2004-02.",
    );
  });

  it("of which one reading only is known stays open: it may be another", () => {
    // shown as a day and a month: perhaps October 2019, perhaps 19 October of any year
    const change = { Hydro: "19-Oct", Made: "1999/03" };
    expect(verdict("V01", change, "GB")).toBe(HYDRO);
  });

  it("is not gone through in more than 64 ways", () => {
    const choice = (year: number): Test => ({
      kind: "hydro",
      stamp: readTestStamp(`${year}/06`),
      from: 0,
      until: 1,
      at: { field: "hydro" },
    });
    const reading = { kind: "ambiguous", choices: [], why: "either" } as const;
    const doubts = (count: number) =>
      Array.from({ length: count }, () => ({
        reading,
        choices: [choice(2006), choice(2009)],
        at: { field: "hydro" } as const,
      }));
    const ways = (count: number) => everyReading(new TestHistory([choice(2001)], doubts(count)));
    expect([ways(1), ways(6), ways(7)].map(({ length }) => length)).toEqual([2, 64, 0]);
    expect(ways(6).every(({ tests, doubts }) => tests.length === 7 && doubts.length === 0)).toBe(true);
  });

  it("that cannot be read at all clears nothing and condemns nothing", () => {
    const change = { Hydro: "06/09", "Previous hydro": "see sticker", Made: "1999/03" };
    expect(verdict("V01", change, "GB")).toContain("hydro can");
  });
});

describe("a fill date that can be read in two ways", () => {
  const DATE = "fill date can be read in more than one way";
  it.each([
    // 1 July or 7 January 2026; a US hydro of 60 months
    ["V01", { Hydro: "2020/12" }, "01/07/2026", "stop"],
    ["V01", { Hydro: "2021/01" }, "01/07/2026", DATE],
    ["V01", { Hydro: "2021/06" }, "01/07/2026", DATE],
    ["V01", { Hydro: "2021/07" }, "01/07/2026", DATE],
    ["V06", { Visual: "2024/12", Hydro: "2022/01" }, "01/07/2026", "breach"],
    ["V06", { Visual: "2025/01", Hydro: "2022/01" }, "01/07/2026", DATE],
    ["V06", { Visual: "2025/06", Hydro: "2022/01" }, "01/07/2026", DATE],
    ["O04", { "O2 cleaned": "2024/12" }, "01/07/2026", "stop"],
    ["O04", { "O2 cleaned": "2025/01" }, "01/07/2026", DATE],
    ["V04", { Class: "CFFC", Made: "2010/12" }, "01/07/2026", "stop"],
    ["V04", { Class: "CFFC", Made: "2011/01" }, "01/07/2026", DATE],
    ["V05", { Alloy: "6351", "Eddy current": "2020/12" }, "01/07/2026", "stop"],
    ["V05", { Alloy: "6351", "Eddy current": "2021/01" }, "01/07/2026", DATE],
    ["V02", { Status: "condemned 2026-01-07" }, "01/07/2026", "stop"],
    ["V02", { Status: "condemned 2026-01-08" }, "01/07/2026", DATE],
    ["V08", { Status: "dropped 2026-01-07", Hydro: "2025/10" }, "01/07/2026", "stop"],
    // tested between the two days
    ["V08", { Status: "dropped 2026-01-07", Hydro: "2026/05" }, "01/07/2026", DATE],
    ["V10", { Hydro: "12/20*", Made: "1999/03" }, "01/07/2026", "stop"],
    ["V10", { Hydro: "1/21*", Made: "1999/03" }, "01/07/2026", DATE],
    ["V11", { Hydro: "10/24 E", Made: "2020/12" }, "01/07/2026", "stop"],
    ["V11", { Hydro: "10/24 E", Made: "2021/01" }, "01/07/2026", DATE],
    ["V11", { Hydro: "10/24" }, "01/07/2026", "nothing"],
    // An air test of 1 September 2026 holds to 1 March 2027.
    ["A01", {}, "03/04/2027", "breach"],
    ["A01", {}, "03/01/2027", DATE],
  ] as const)("%s, %j, filled %s: %s", (rule, change, date, expected) => {
    expect(verdict(rule, { ...change, Date: date })).toBe(expected);
  });

  it("air that failed between two good tests: suspect only if it was filled before the good one by both readings", () => {
    const airTests = [
      { date: "2026-01-05", passed: true },
      { date: "2026-02-10", passed: false },
      { date: "2026-06-10", passed: true },
    ];
    const suspect = (date: string) => {
      const log = logOf([{ ...FULL, Date: date }, SOUND], [], OPEN);
      const { findings, notChecked } = audit(log, countryRules("US"), { ...SHOP, airTests });
      const found = findings.filter(({ rule, cell }) => rule === "A02" && cell.row === 1);
      const lacks = notChecked.filter(({ rule }) => rule === "A02");
      return [...found.map(({ severity }) => severity), ...lacks.map(({ why }) => why)].join(", ");
    };
    // 2 March or 3 February; 1 July or 7 January
    expect(suspect("02/03/2026")).toBe("stop");
    expect(suspect("01/07/2026")).toBe(DATE);
  });

  it("says by which days, beside the reading of a test", () => {
    expect(message("V01", { Hydro: "2020/12", Date: "01/07/2026" })).toBe(
      "Hydro 2020-12 was due by 31 December 2025; filled 1 July 2026. It is so by either reading of the fill date, 1 July 2026 or 7 January 2026.",
    );
    expect(message("V01", { Hydro: "06/09", Made: "1999/03", Date: "01/07/2026" }, "GB")).toBe(
      "Hydro 2006-09 was due by 30 September 2011; filled 1 July 2026. It is so by either reading of the hydro, 2006-09 or 2009-06. It is so by either reading of the fill date, 1 July 2026 or 7 January 2026.",
    );
  });

  it("past due by law on one day, by the shop's own rule on the other: the lesser is told", () => {
    // 36 months in this shop, 60 by law
    const log = logOf([{ ...FULL, Hydro: "2020/12", Date: "01/07/2026" }, SOUND], [], OPEN);
    const house = { "US-3AL.hydro.months": 36 };
    const { findings } = audit(log, countryRules("US"), { ...SHOP, house });
    const [found] = findings.filter(({ rule }) => rule === "V01");
    expect([found?.severity, found?.basis]).toEqual(["stop", "law"]);
    const later = logOf([{ ...FULL, Hydro: "2021/03", Date: "01/07/2026" }, SOUND], [], OPEN);
    const [own] = audit(later, countryRules("US"), { ...SHOP, house }).findings.filter(
      ({ rule }) => rule === "V01",
    );
    expect([own?.severity, own?.basis]).toEqual(["breach", "house"]);
  });
});

describe("the due lists", () => {
  const lists = (hydro: string) =>
    dueLists(
      logOf([{ ...FULL, Hydro: hydro, Made: "1999/03", Visual: "2026/05" }], [], OPEN),
      countryRules("GB"),
      Temporal.PlainDate.from("2026-11-12"),
    );

  it("have a cylinder out of date by either reading among those out of date, with both", () => {
    const { outOfDate, notKnown } = lists("06/09");
    expect(outOfDate.map(({ test, last, until }) => [test, last, until])).toEqual([
      ["hydro", "2006-09 or 2009-06", "2014-06-30"],
    ]);
    expect(notKnown).toEqual([]);
  });

  it("have a date that cannot be read among those not known", () => {
    expect(lists("see sticker").notKnown.map(({ test }) => test)).toEqual(["hydro"]);
  });
});
