import { describe, expect, it } from "vitest";
import { audit } from "../../src/audit/audit";
import { CylinderOnRecord } from "../../src/audit/record/cylinderOnRecord";
import { fillCheck } from "../../src/audit/fillCheck";
import { knownCylinders } from "../../src/audit/record/knownCylinders";
import { read } from "../../src/audit/record/readField";
import { fieldName } from "../../src/words/fields";
import { percentText, pressureText, ratingText } from "../../src/words/inSentences";
import { countryRules } from "../../src/cylinders/countryRules";
import { readOxygenService } from "../../src/cylinders/readOxygenService";
import { absoluteBar } from "../../src/gas/units";
import type { LogContext } from "../../src/log/context";
import type { Log } from "../../src/log/log";
import { readLog } from "../../src/log/readLog";
import { cellName } from "../../src/sheet/sheet";
import { allAtOnce } from "../../src/sheet/steps";
import { FULL, logOf, onDay, SHOP, type TestRow } from "./sheets";
import { expectWellMade } from "./wellMade";

/* What findings about the records themselves say, word for word, whose rule it is and which cell they lead to. */

const US: LogContext = { units: "us", stampOrder: "month first", dateOrder: "month first" };
/** Nothing says in which order a stamp is written. */
const OPEN: LogContext = { units: "us" };

/** All that the audit says of one rule: each finding with its cell by heading, then what it could not check, and where. */
function said(rule: string, log: Log, country = "US"): readonly string[] {
  const result = audit(log, countryRules(country), SHOP);
  expectWellMade(log, result);
  const place = ({ sheet, row, column }: { sheet: string; row: number; column: number }): string => {
    const heading = log.sheets.find(({ name }) => name === sheet)?.source.rows[0]?.values[column];
    return `${String(heading)}, ${sheet} row ${row}`;
  };
  return [
    ...result.findings
      .filter((finding) => finding.rule === rule)
      .map(
        ({ severity, basis, source, cell, message, todo }) =>
          `${severity}, ${basis} (${source}), ${place(cell)}: ${message} ${todo}`,
      ),
    ...result.notChecked
      .filter((lack) => lack.rule === rule)
      .map(({ count, why, cells }) => `${count} not checked, ${[...cells.map(place), why].join(": ")}`),
  ];
}

const LOOK = "Look at the stamps on the cylinder, and correct the date that is wrong.";
const CUSTOM = "practice (common practice, no source)";
const CONSENT = "The owner's consent to the fill is not noted. Ask the owner, and tick it off.";

describe("a cylinder of the register", () => {
  const fill = (change: TestRow): TestRow => ({
    Date: onDay("2026-11-12"),
    Owner: null,
    Serial: null,
    "Shop number": null,
    Consent: "yes",
    "Ordered mix": "EAN32",
    "End psi": 3000,
    ...change,
  });
  const cylinder = (change: TestRow): TestRow => ({
    Owner: null,
    Class: "3AL",
    Serial: null,
    "Shop number": null,
    Made: "2014/03",
    "Service psi": 3000,
    Hydro: "2024/10",
    Visual: "2026/05",
    "O2 rating": "40",
    ...change,
  });
  const REGISTER = [cylinder({ Serial: "AB1234", "Shop number": "12", Owner: "C-014" })];
  const HELD_TWICE = [...REGISTER, cylinder({ Serial: "CD5678", "Shop number": "12" })];
  const TWO = [...REGISTER, cylinder({ Serial: "AB1234", Made: "2019/01" })];
  const found = (rule: string, change: TestRow, register: readonly TestRow[], country = "GB") =>
    said(rule, logOf([fill(change), fill({ Serial: "AB1234", "Shop number": "12" })], register), country);

  const BREACH = "breach, practice (BS EN 1920)";
  const NOTHING = "is not in the register: nothing is known of its tests and rating.";
  const ENTER = "Compare it with the cylinder; correct it here, or enter the cylinder in the register.";
  it.each<[change: TestRow, register: readonly TestRow[], ofR01: string, ofV03: string | undefined]>([
    [{ Serial: "ab 1234" }, REGISTER, "", undefined],
    [{ "Shop number": "12" }, REGISTER, "", undefined],
    [{ "Shop number": "AB1234" }, REGISTER, "", undefined],
    [{ Serial: "ZZ9999" }, REGISTER, `${BREACH}, Serial, Fills row 1: ZZ9999 ${NOTHING} ${ENTER}`, "1 not checked, Serial, Fills row 1: serial is not in the register"],
    [{ Serial: "AB123A" }, REGISTER, `${BREACH}, Serial, Fills row 1: AB123A ${NOTHING} Compare it with the cylinder: the register has AB1234.`, "1 not checked, Serial, Fills row 1: serial is not in the register"],
    [{ "Shop number": "77" }, REGISTER, `${BREACH}, Shop number, Fills row 1: 77 ${NOTHING} ${ENTER}`, "1 not checked, Shop number, Fills row 1: shop number is not in the register"],
    [{ "Shop number": "12" }, HELD_TWICE, `${BREACH}, Shop number, Fills row 1: Shop number 12 is held by more than one cylinder. Write the serial. Write the serial from the cylinder's shoulder.`, "1 not checked, Shop number, Fills row 1: shop number is held by more than one cylinder"],
    [{}, REGISTER, "1 not checked, Serial, Fills row 1: serial is blank", "1 not checked, Serial, Fills row 1: serial is blank"],
    [{ Serial: "A?1234" }, REGISTER, "1 not checked, Serial, Fills row 1: serial cannot be read", "1 not checked, Serial, Fills row 1: serial cannot be read"],
    [{ Serial: "AB1234" }, TWO, `${BREACH}, Serial, Cylinders row 2: AB1234 stands for two cylinders in the register: the entries differ in more than their tests. Look at both cylinders and correct the serials.`, "2 not checked, Serial, Cylinders row 2: serial stands for two cylinders in the register"],
    // both of a twin set
    [{ Serial: "YY8888 / ZZ9999" }, REGISTER, `${BREACH}, Serial, Fills row 1: YY8888 ${NOTHING} ${ENTER} | ${BREACH}, Serial, Fills row 1: ZZ9999 ${NOTHING} ${ENTER}`, "1 not checked, Serial, Fills row 1: serial is not in the register"],
  ])("R01, filled %j with register %j", (change, register, ofR01, ofV03) => {
    expect(found("R01", change, register).join(" | ")).toBe(ofR01);
    expect(found("V03", change, register)).toEqual(ofV03 === undefined ? [] : [ofV03]);
  }); // prettier-ignore

  it("goes in the findings by the number that two cylinders hold", () => {
    const log = logOf([fill({ "Shop number": "12" })], HELD_TWICE);
    const names = (each: Log) => audit(each, countryRules("GB"), SHOP).findings.map(({ rule, serial }) => `${rule} ${serial}`); // prettier-ignore
    expect(names(log)).toEqual(["R01 12"]);
    // where there is a serial, by that
    expect(names(logOf([fill({ Serial: "ZZ9999", "Shop number": "12" })], REGISTER))).toEqual(["R01 ZZ9999"]);
  });

  it.each<[own: TestRow, isFinding: boolean]>([
    [{ Hydro: "2024/10", Made: null }, false],
    [{ Hydro: null, Made: "2024/03" }, false],
    // a rating alone says nothing of its tests
    [{ Hydro: null, Made: null }, true],
  ])("R01 does not ask for one whose dates stand in the fill's own row: %j", (own, isFinding) => {
    const row = { ...fill({ Serial: "ZZ9999" }), "O2 rating": "40" };
    const other = { ...fill({ Serial: "AB1234" }), Hydro: "2024/10", Made: "2014/03" };
    expect(said("R01", logOf([{ ...row, ...own }, other], REGISTER))).toHaveLength(isFinding ? 1 : 0);
  });

  it("what its own row says and cannot be read is the reason, not the register", () => {
    const own = { Hydro: "2024/10", Made: "2014/03" };
    const rows = [
      { ...fill({ Serial: "ZZ9999" }), ...own, "Service psi": "smudged" },
      { ...fill({ Serial: "YY8888" }), ...own, "Service psi": null },
      { ...fill({ Serial: "AB1234" }), ...own, "Service psi": 3000 },
    ];
    expect(said("V03", logOf(rows, REGISTER))).toEqual([
      "1 not checked, Service psi, Fills row 1: service pressure cannot be read",
      "1 not checked, Serial, Fills row 2: serial is not in the register",
    ]);
  });

  it("there twice is judged by no rule that asks what kind it is", () => {
    for (const rule of ["V01", "V04", "V05", "V12", "V13", "O09"])
      expect(found(rule, { Serial: "AB1234" }, TWO, "US"), rule).toEqual([
        "2 not checked, Serial, Cylinders row 2: serial stands for two cylinders in the register",
      ]);
  });

  it("whose class the country does not name is not checked, once for all its fills, and its class is shown", () => {
    const log = logOf(
      [fill({ Serial: "AB1234" }), fill({ Serial: "AB1234" }), fill({ Serial: "CD5678" })],
      [cylinder({ Serial: "AB1234", Class: "3ZZ" }), cylinder({ Serial: "CD5678", Class: "3ZZ" })],
    );
    for (const rule of ["V01", "V04", "V05"])
      expect(said(rule, log), rule).toEqual([
        "3 not checked, Class, Cylinders row 1: Class, Cylinders row 2: class is not in the country's rules",
      ]);
    const flat = logOf([{ ...FULL, Class: "3ZZ" }, FULL]);
    expect(said("V01", flat)).toEqual([
      "1 not checked, Class, Fills row 1: class is not in the country's rules",
    ]);
  });

  it("of which only tests after the fill are on record: they prove nothing, and are shown", () => {
    const later = [cylinder({ Serial: "AB1234", Made: null, Hydro: "2026/12", Visual: "2026/12" })];
    const filled = { Serial: "AB1234" };
    expect(found("V01", filled, later)).toEqual([
      "2 not checked, Hydro, Cylinders row 1: the only hydro on record is later than the fill",
    ]);
    expect(found("V06", filled, later, "US")).toEqual([
      "2 not checked, Visual, Cylinders row 1: the only visual on record is later than the fill",
    ]);
  });

  it("R09 asks for the consent of the owner whom the register names, and of nobody where none is known", () => {
    const CONSENT_OF = `note, law (49 CFR 173.301(e)), Consent, Fills row 1: ${CONSENT}`;
    const blank = { Serial: "AB1234", Consent: null };
    expect(found("R09", blank, REGISTER, "US")).toEqual([CONSENT_OF]);
    expect(found("R09", blank, [cylinder({ Serial: "AB1234", Owner: "Shop" })], "US")).toEqual([]);
    expect(found("R09", blank, [cylinder({ Serial: "AB1234" })], "US")).toEqual([]);
    // the fill's own row goes before
    expect(found("R09", { ...blank, Owner: "rental 4" }, REGISTER, "US")).toEqual([]);
    expect(found("R09", { ...blank, Owner: "C-002" }, [cylinder({ Serial: "AB1234", Owner: "Shop" })], "US")).toEqual([CONSENT_OF]); // prettier-ignore
  });
});

describe("what several rows of a register say of one field", () => {
  const reading = (...owners: readonly TestRow[string][]): string => {
    const fill = { Date: onDay("2026-10-05"), Serial: "S1", "End psi": 3000 };
    const rows = owners.map((Owner) => ({ Serial: "S1", Owner, Hydro: "2024/10", "O2 rating": "40" }));
    const { reading: found, at } = read(
      new CylinderOnRecord(logOf([fill], rows).cylinders, countryRules("US")),
      "owner",
    );
    return `${found.kind === "value" ? found.value : found.kind}, ${at.field} of row ${at.record?.row}`;
  };
  const WRONG = { error: "#REF!" } as const;
  it.each<[owners: readonly TestRow[string][], expected: string]>([
    // the first value
    [["C-1"], "C-1, owner of row 1"],
    [["C-1", "C-2"], "C-1, owner of row 1"],
    [[null, "C-2"], "C-2, owner of row 2"],
    [[WRONG, "C-2"], "C-2, owner of row 2"],
    // else the first doubt
    [[WRONG, WRONG], "unreadable, owner of row 1"],
    [[WRONG, null], "unreadable, owner of row 1"],
    [[null, WRONG], "unreadable, owner of row 2"],
    // else where it would stand
    [[null], "blank, owner of row 1"],
    [[], "blank, owner of row undefined"],
  ])("%j: %s", (owners, expected) => {
    expect(reading(...owners)).toBe(expected);
  });
});

describe("R10, a cylinder filled on 11 November 2025, and again on 12 November 2026", () => {
  const UNUSED =
    "note, practice (common practice, no source), Date, Fills row 2: It was not filled for over a year, and nobody looked inside since. Look inside at the next occasion.";
  it.each<[tests: TestRow, country: string, expected: readonly string[]]>([
    [{ Visual: "2025/06" }, "GB", [UNUSED]],
    // looked into on the day of the first fill, so before it stood; and a day later
    [{ Visual: "2025-11-11" }, "GB", [UNUSED]],
    [{ Visual: "2025-11-12" }, "GB", []],
    // past due: that is told instead
    [{ Visual: "2025/06" }, "US", []],
    // nobody asks for a look inside
    [{ Visual: "2025/06" }, "IT", []],
    [{ Visual: null, Hydro: null }, "GB", []],
  ])("%j in %s", (tests, country, expected) => {
    const rows = ["2025-11-11", "2026-11-12"].map((date) => ({ ...FULL, ...tests, Date: onDay(date) }));
    expect(said("R10", logOf(rows), country)).toEqual(expected);
  });
});

describe("every cylinder that a log knows", () => {
  const fill = (serial: string | null, change: TestRow = {}): TestRow => ({
    Date: onDay("2026-11-12"),
    Serial: serial,
    "Shop number": null,
    Owner: null,
    "End psi": 3000,
    ...change,
  });
  const cylinder = (serial: string | null, change: TestRow = {}): TestRow => ({
    Serial: serial,
    "Shop number": null,
    Owner: null,
    Class: "3AL",
    Hydro: "2024/10",
    ...change,
  });
  const numbered = (number: string, change: TestRow = {}) => ({ "Shop number": number, ...change });
  const other = fill("ZZ9999", numbered("99", { Owner: "C-99" }));
  const known = (fills: readonly TestRow[], register: readonly TestRow[] = []): readonly string[] =>
    allAtOnce(knownCylinders(logOf([...fills, other], register), countryRules("US")))
      .filter(({ serial }) => serial !== "ZZ9999")
      .map(({ serial, owner, row, cylinder: { records } }) => {
        const rows = records.map((record) => `${record.sheet} row ${record.row}`).join(" and ");
        return `${serial} of ${owner ?? "nobody"}, ${row.sheet} row ${row.row}, by ${rows || "no record"}`;
      });

  it.each<[what: string, fills: readonly TestRow[], register: readonly TestRow[], expected: readonly string[]]>([
    ["in the register, whether it was filled or not", [], [cylinder("G-1680", { Owner: "C-1" })], ["G-1680 of C-1, Cylinders row 1, by Cylinders row 1"]],
    ["as the register writes its serial, and by its latest fill", [fill("g1680"), fill("G 1680")], [cylinder("G-1680", { Owner: "C-1" })], ["G-1680 of C-1, Fills row 2, by Cylinders row 1"]],
    ["each of a twin set", [fill("S1111 / S2222", { Owner: "C-7" })], [cylinder("S3333 / S4444")], ["S3333 of nobody, Cylinders row 1, by Cylinders row 1", "S4444 of nobody, Cylinders row 1, by Cylinders row 1", "S1111 of C-7, Fills row 1, by no record", "S2222 of C-7, Fills row 1, by no record"]],
    ["by number where the register has no serial", [], [cylinder(null, numbered("pd 01", { Owner: "C-1" }))], ["pd 01 of C-1, Cylinders row 1, by Cylinders row 1"]],
    ["by serial alone where it has both", [], [cylinder("S1", numbered("12"))], ["S1 of nobody, Cylinders row 1, by Cylinders row 1"]],
    ["of one number once with and once without a serial", [], [cylinder("S1", numbered("12")), cylinder(null, numbered("12"))], ["S1 of nobody, Cylinders row 1, by Cylinders row 1", "12 of nobody, Cylinders row 2, by Cylinders row 2"]],
    ["filled under a number of the register", [fill(null, numbered("PD01")), fill(null, numbered("12", { Owner: "C-2" }))], [cylinder(null, numbered("pd 01", { Owner: "C-1" })), cylinder("S1", numbered("12"))], ["S1 of C-2, Fills row 2, by Cylinders row 2", "pd 01 of C-1, Fills row 1, by Cylinders row 1"]],
    ["filled under a number that is a serial of the register", [fill(null, numbered("S1", { Owner: "C-2" }))], [cylinder("S1")], ["S1 of C-2, Fills row 1, by Cylinders row 1"]],
    // two customers may each have a number 5
    ["by number and customer where nobody has the number on record", [fill(null, numbered("5", { Owner: "C-1" })), fill(null, numbered("5", { Owner: "C-2" })), fill(null, numbered("5")), fill(null, numbered("5"))], [], ["5 of C-1, Fills row 1, by no record", "5 of C-2, Fills row 2, by no record", "5 of nobody, Fills row 4, by no record"]],
    ["but not one that nobody could tell from others", [fill(null), fill("S?3")], [], []],
    ["of the owner whom the latest fill names", [fill("S1", { Owner: "C-1" }), fill("S1", { Owner: "C-2" })], [cylinder("S1", { Owner: "C-3" })], ["S1 of C-2, Fills row 2, by Cylinders row 1"]],
    ["else of the one whom the register names first", [fill("S1")], [cylinder("S1"), cylinder("S1", { Owner: "C-5" }), cylinder("S1", { Owner: "C-6" })], ["S1 of C-5, Fills row 1, by Cylinders row 1 and Cylinders row 2 and Cylinders row 3"]],
    ["else of the one whom an earlier fill named", [fill("S1", { Owner: "C-1" }), fill("S1")], [], ["S1 of C-1, Fills row 2, by no record"]],
    ["and of nobody where no fill names one", [fill("S1"), fill("S1")], [], ["S1 of nobody, Fills row 2, by no record"]],
    ["the latest by its day, wherever the row stands", [fill("S1", { Date: onDay("2026-11-13"), Owner: "C-2" }), fill("S1", { Owner: "C-1" })], [], ["S1 of C-2, Fills row 1, by no record"]],
  ])("is listed %s", (_what, fills, register, expected) => {
    expect(known(fills, register)).toEqual(expected);
  }); // prettier-ignore
});

describe("on sheets with several tables", () => {
  it("a finding leads to the column of its own table", () => {
    const rows = [
      ["Date", "Serial", "Start psi", "End psi", "Mix", "Owner"],
      ["2026-11-12", "AB1234", 500, 3000, "EAN32", "C-1"],
      [],
      ["Serial", "Date", "Mix", "Start psi", "Owner", "End psi", "Consent"],
      ["AB1235", "2026-11-13", "EAN32", 3000, "C-1", 500, null],
      ["AB1236", "2026-11-13", "EAN32", 500, "C-1", 3000, "yes"],
      [],
      ["Owner", "Serial", "Class", "Hydro", "Visual", "O2 rating"],
      ["C-2", "AB1235", "3AL", null, "2026/05", "40"],
      ["C-1", "AB1236", "3AL", null, "2026/05", "40"],
    ];
    const sheet = { name: "Log", hidden: false, dateSystem: 1900, merges: [], rows: rows.map((values) => ({ values })) } as const; // prettier-ignore
    const { findings, notChecked } = audit(readLog([sheet], US), countryRules("US"), SHOP);
    expect(
      findings
        .filter(({ rule }) => ["R01", "R07", "R09", "V09"].includes(rule))
        .map(({ rule, cell, serial, fillDate }) => `${rule} ${cellName(cell)} ${serial} ${fillDate}`.trim()),
    ).toEqual([
      // no hydro and no make: told of the register, not of a fill
      "V09 D9 AB1235",
      "V09 D10 AB1236",
      "R01 B2 AB1234 2026-11-12",
      "R07 F5 AB1235 2026-11-13",
      "R09 G5 AB1235 2026-11-13",
    ]);
    expect(notChecked.filter(({ rule }) => rule === "R09")).toEqual([
      { rule: "R09", count: 1, why: "the log has no column for consent", cells: [], runs: [] },
    ]);
  });
});

it("a finding leads to the column of the last test, though one of an earlier test stands before it", () => {
  const row = { "Previous hydro": "2019/01", ...FULL };
  expect(
    said(
      "R03",
      logOf([
        { ...row, Hydro: "2014/01" },
        { ...row, Serial: "ZZ9999" },
      ]),
    ),
  ).toEqual([
    `breach, ${CUSTOM}, Hydro, Fills row 1: The hydro 2014-01 is before it was made in 2014-03: that cannot be. ${LOOK}`,
  ]);
});

describe("a check of one fill says whole why it could not judge", () => {
  it.each<[change: TestRow, text: string]>([
    [{}, "OK: hydro, visual, rating, method"],
    [{ Hydro: null }, "UNKNOWN: hydro is blank"],
    [{ Hydro: "out of test" }, "UNKNOWN: hydro: “out of test”: out of test, with no date. Write the date of the last test."],
    // July or January, and good to the end of January
    [{ Date: "01/07/2026", Hydro: "2021/01" }, "UNKNOWN: fill date: “01/07/2026”: day or month first?"],
    [{ Date: "2026-02-30" }, "UNKNOWN: fill date: “2026-02-30”: the calendar has no such day. Correct it."],
    [{ Method: "magic" }, "UNKNOWN: method: “magic” is not known. Say what it means."],
  ])("%j: %s", (change, text) => {
    const { fields, cylinderInRow } = logOf([{ ...FULL, ...change }, FULL], [], OPEN).fills[0]!;
    const { date, method, orderedMix: mix } = fields;
    const { hydro, visual, oxygenService } = cylinderInRow!.fields;
    expect(fillCheck({ date, hydro, visual, oxygenService, mix, method }, countryRules("US")).text).toBe(text);
  }); // prettier-ignore
});

describe("words", () => {
  it.each([
    [3000, "psi", "3,000 psi"],
    [999, "psi", "999 psi"],
    [1000, "psi", "1,000 psi"],
    [10000, "psi", "10,000 psi"],
    [500.4, "psi", "500 psi"],
    [207, "bar", "207 bar"],
    [207.46, "bar", "207.5 bar"],
    [0, "bar", "0 bar"],
  ] as const)("a gauge at %d %s reads %s", (gauge, unit, expected) => {
    expect(pressureText(absoluteBar(gauge, unit === "psi" ? "us" : "metric"), unit)).toBe(expected);
  });

  it.each([
    [0.318, "31.8 %"],
    [0.32, "32 %"],
    [0.2096, "21 %"],
  ])("a fraction of %d is %s", (fraction, expected) => {
    expect(percentText(fraction)).toBe(expected);
  });

  it.each([
    ["O2 clean", "oxygen clean"],
    ["40", "40 %"],
    ["air", "air only"],
  ])("a rating of %s is %s", (written, expected) => {
    expect(ratingText(readOxygenService(written))).toBe(expected);
  });

  it("a field is called as the trade calls it", () => {
    expect((["startPressure", "made", "modOnLabelM", "hydro", "settledPressure"] as const).map(fieldName)).toEqual([
      "start pressure",
      "manufacture date",
      "MOD",
      "hydro",
      "settled pressure",
    ]); // prettier-ignore
  });
});
