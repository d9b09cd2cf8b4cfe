import { describe, expect, it } from "vitest";
import type { AuditOptions } from "../../src/audit/shop/shop";
import { auditOf, FULL, onDay, SHOP, without, type TestRow } from "./sheets";

/*
 * What rules that look at the fills before and at the shop's sources say, word for word: whose rule it is, which cell it
 * leads to, and of what they cannot judge why, and where it is to be written.
 */

/** A clean bank, an oily compressor, and a bank of which only the name is told. */
const SOURCES: AuditOptions = {
  ...SHOP,
  sources: [
    { name: "Bank A", oxygenCompatible: true },
    { name: "Old compressor", oxygenCompatible: false },
    { name: "Bank C" },
  ],
};

interface Setting {
  readonly options?: AuditOptions;
  readonly register?: readonly TestRow[];
}

/** All that one rule says of a sheet: findings by harm, then what was not checked, each with its row and heading. */
function said(
  rule: string,
  rows: readonly TestRow[],
  { options = SOURCES, register = [] }: Setting = {},
): readonly string[] {
  const headings = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const ofRegister = Object.keys(register[0] ?? {});
  const { findings, notChecked } = auditOf(rows, register, "US", options);
  const place = ({ sheet, row, column }: { sheet: string; row: number; column: number }): string =>
    sheet === "Fills" ? `row ${row} ${headings[column]}` : `register row ${row} ${ofRegister[column]}`;
  return [
    ...findings
      .filter((finding) => finding.rule === rule)
      .map(
        ({ severity, basis, source, cell, message, todo }) =>
          `${severity}, ${basis} (${source}), ${place(cell)}: ${message} ${todo}`,
      ),
    ...notChecked
      .filter((lack) => lack.rule === rule)
      .map(
        ({ why, count, cells }) =>
          `not checked: ${[why, ...cells.map(place)].join(", ")}${count === 1 ? "" : ` (${count})`}`,
      ),
  ];
}

const AIR: TestRow = {
  ...FULL,
  Method: "air",
  "Ordered mix": "air",
  "O2 added psi": null,
  "Analysed O2 %": 20.9,
  "Start mix": "air",
};
const OCTOBER = onDay("2026-10-01");

describe("oxygen-clean status lost (O03)", () => {
  const OILY: TestRow = { ...AIR, Date: OCTOBER, Source: "Old compressor" };
  const WARNED =
    "warn, practice (NOAA Diving Manual ch. 15; 29 CFR 1910 subpart T app. C 6(e)), row 1 Source: An oxygen-clean cylinder was filled from Old compressor, which is not oxygen compatible: it is no longer clean. Take the oxygen-clean mark off, and put no oxygen on it before it is cleaned.";
  const stopped = (how: string, cleaned: string, at: string): string =>
    `stop, practice (NOAA Diving Manual ch. 15; 29 CFR 1910 subpart T app. C 6(e)), row 2 ${at}: ${how} into a cylinder filled from Old compressor, not oxygen compatible, on 1 October 2026; last cleaned ${cleaned}. Call the cylinder back, and put no more oxygen on it before it is cleaned again.`;
  const BY_PRESSURE = "Partial pressure puts pure oxygen";

  it.each<[string, TestRow, readonly string[]]>([
    ["oxygen by partial pressure", {}, [stopped(BY_PRESSURE, "2026-05", "Method")]],
    [
      "oxygen in its own column",
      { Method: null },
      [stopped("Pure oxygen was put", "2026-05", "O2 added psi")],
    ],
    [
      "rich gas from one bank",
      { Method: "premix", "O2 added psi": null, "Ordered mix": "EAN50", "Analysed O2 %": 50 },
      [stopped("EAN50 puts gas above 40 % oxygen", "2026-05", "Analysed O2 %")],
    ],
    ["EAN32 from one bank", { Method: "premix", "O2 added psi": null }, []],
    ["air of a clean bank", { ...AIR }, []],
    ["air of an untold bank", { ...AIR, Source: "Bank X" }, [notSaid("row 2 Source")]],
    ["air of a bank of which nothing is said", { ...AIR, Source: "Bank C" }, [notSaid("row 2 Source")]],
    ["no source", { ...AIR, Source: null }, ["not checked: source is blank, row 2 Source"]],
  ])("on top of oily air, %s", (_what, change, expected) => {
    expect(said("O03", [OILY, { ...FULL, ...change }])).toEqual([...expected.filter(isStop), WARNED, ...expected.filter((line) => !isStop(line))]); // prettier-ignore
  });

  it.each([
    // the register's rows stand as they were written, not in the order of the cleanings
    [["2026/05", "2025/04"], "2026-05"],
    [["2025/04", "2026/05"], "2026-05"],
    // cleaned on the day of the oxygen: before it
    [["2026/05", "2026-11-12"], undefined],
    [["2026-11-12", "2026/05"], undefined],
    // a day late: no help to it, and no last cleaning before it either
    [["2026/05", "2026-11-13"], "2026-05"],
  ])("cleaned %j by the register: the last one before the oxygen is named, %s", (cleaned, last) => {
    const own: TestRow = { "O2 cleaned": null, Hydro: null, Visual: null };
    const register = cleaned.map((stamp) => ({
      Serial: "AB1234",
      Made: "2014/03",
      Hydro: "2024/10",
      Visual: "2026/05",
      "O2 cleaned": stamp,
      "O2 rating": "O2 clean",
    }));
    const lines = said(
      "O03",
      [
        { ...OILY, ...own },
        { ...FULL, ...own },
      ],
      { register },
    );
    expect(lines).toEqual([...(last === undefined ? [] : [stopped(BY_PRESSURE, last, "Method")]), WARNED]);
  });

  it.each<[string, readonly TestRow[], Setting, readonly string[]]>([
    [
      "a rating that is not written",
      [{ ...FULL, "O2 rating": null }, { ...FULL, Serial: "ZZ9999" }],
      {},
      ["not checked: oxygen rating is blank, row 1 O2 rating"],
    ],
    [
      "a rating of which one reading is clean",
      [{ ...without(FULL, "O2 rating"), Nitrox: "yes" }],
      {},
      ["not checked: oxygen rating can be read in more than one way, row 1 Nitrox"],
    ],
    ["a rating that is clean by no reading", [{ ...FULL, "O2 rating": "no" }], {}, []],
    ["a rating for 40 %", [{ ...AIR, "O2 rating": "40", Source: "Old compressor" }], {}, []],
    [
      "one serial for two cylinders",
      [FULL],
      {
        register: [
          { Serial: "AB1234", Made: "2014/03", "O2 rating": "O2 clean" },
          { Serial: "AB1234", Made: "2019/01", "O2 rating": "O2 clean" },
        ],
      },
      ["not checked: serial stands for two cylinders in the register, register row 2 Serial"],
    ],
    [
      "a cleaning that cannot be read",
      [OILY, { ...FULL, "O2 cleaned": "?" }],
      {},
      [WARNED, "not checked: oxygen cleaning cannot be read, row 2 O2 cleaned"],
    ],
    [
      "no cleaning on record",
      [OILY, { ...FULL, "O2 cleaned": null }],
      {},
      [WARNED, "not checked: oxygen cleaning is blank, row 2 O2 cleaned"],
    ],
    [
      "oily air on a day that cannot be read",
      [{ ...OILY, Date: "smudged" }, FULL],
      {},
      [WARNED, "not checked: its fill from a source that is not oxygen compatible has no date that can be read, row 2 Serial"],
    ],
    ["no source told", [OILY], { options: { ...SHOP, sources: [] } }, ["not checked: no bank or compressor is told of under Rules & shop in the pane"]],
  ])("of %s", (_what, rows, setting, expected) => {
    expect(said("O03", rows, setting)).toEqual(expected);
  }); // prettier-ignore
});

function notSaid(at: string): string {
  return `not checked: nobody has said whether the source is oxygen compatible, ${at}`;
}

const isStop = (line: string): boolean => line.startsWith("stop");

describe("oxygen topped from a source that is not oxygen compatible (A03)", () => {
  const STOP =
    "stop, practice (29 CFR 1910 subpart T app. C 6(e)), row 1 Source: Partial pressure puts pure oxygen into the cylinder, topped from Old compressor, which is not oxygen compatible. Call the cylinder back and clean it; top oxygen only from a source that is tested for oil.";

  it.each<[string, TestRow, readonly string[]]>([
    ["oily", { Source: "Old compressor" }, [STOP]],
    // told as “Old compressor”
    ["in capitals, without the space", { Source: "OLDCOMPRESSOR" }, [STOP.replace("Old compressor", "OLDCOMPRESSOR")]],
    ["clean, with a space too many", { Source: "bank  a" }, []],
    ["another one", { Source: "Bank B" }, [notSaid("row 1 Source")]],
    ["of which nothing is said", { Source: "Bank C" }, [notSaid("row 1 Source")]],
    [
      "oily, with oxygen in its own column",
      { Source: "Old compressor", Method: null },
      [STOP.replace("Partial pressure puts pure oxygen", "Pure oxygen was put")],
    ],
    [
      "oily, but the oxygen came ready mixed: it met no other gas",
      { Source: "Old compressor", Method: "premix", "O2 added psi": null, "Ordered mix": "EAN50", "Analysed O2 %": 50 },
      [],
    ],
    ["not written", { Source: null }, ["not checked: source is blank, row 1 Source"]],
  ])("%s", (_what, change, expected) => {
    expect(said("A03", [{ ...FULL, ...change }, { ...FULL, Serial: "ZZ9999" }])).toEqual(expected);
  }); // prettier-ignore
});

describe("filled since the last good air test (A02)", () => {
  const stop = (air: string, since: string, failed = "1 November 2026"): string =>
    `stop, practice (29 CFR 1910.430(b)(4)), row 1 Date: ${air} failed its test on ${failed}; ${since}. Call the owner; the cylinder is to be emptied, looked into and filled with tested air.`;
  const FAILED = { date: "2026-11-01", passed: false };
  const NONE_BEFORE = "no good test before is on record";
  const BLANK = "not checked: source is blank, row 1 Source";

  it.each<[string, NonNullable<AuditOptions["airTests"]>, TestRow, readonly string[]]>([
    ["no good test before", [FAILED], {}, [stop("The air of Bank A", NONE_BEFORE)]],
    [
      "the last good test of all the air",
      [{ date: "2026-08-01", passed: true }, { date: "2026-09-01", passed: true }, FAILED],
      { Source: null },
      [stop("The air", "the last good test was on 1 September 2026")],
    ],
    [
      "tests told in any order",
      [FAILED, { date: "2026-09-01", passed: true }],
      {},
      [stop("The air of Bank A", "the last good test was on 1 September 2026")],
    ],
    [
      "failed twice: the last one before the fill",
      [{ date: "2026-10-01", passed: false }, FAILED],
      {},
      [stop("The air of Bank A", NONE_BEFORE)],
    ],
    [
      "another bank passed since: that clears nothing of the one that failed",
      [{ ...FAILED, source: "Bank A" }, { date: "2026-11-05", passed: true, source: "Bank B" }],
      {},
      [stop("The air of Bank A", NONE_BEFORE)],
    ],
    // which of the two it came from decides, and nobody wrote it down
    ["one bank failed, another passed since; no source", [{ ...FAILED, source: "Bank A" }, { date: "2026-11-05", passed: true, source: "Bank B" }], { Source: null }, [BLANK]],
    ["every bank passed; no source", [{ date: "2026-11-05", passed: true, source: "Bank B" }], { Source: null }, []],
    ["a source without a test", [{ ...FAILED, source: "Bank Q" }], {}, ["not checked: no air test of the source is on record, row 1 Source"]],
  ])("%s", (_what, airTests, change, expected) => {
    expect(said("A02", [{ ...FULL, ...change }, { ...FULL, Date: onDay("2026-12-01"), Source: "Bank Q" }], { options: { ...SHOP, airTests } }).filter((line) => !line.includes("row 2"))).toEqual(expected);
  }); // prettier-ignore
});

describe("air on top of another mix (O10)", () => {
  const said10 = (change: TestRow, before: readonly TestRow[] = []): readonly string[] =>
    said("O10", [
      {
        ...AIR,
        "Start psi": 1160.3,
        "End psi": 2900.75,
        "Start mix": "EAN32",
        "Analysed O2 %": null,
        ...change,
      },
      ...before,
    ]);
  const breach = (left: string, result: string): string =>
    `breach, practice (no rule of the United States found; taken from mass balance (GERG-2008); EN 12021 (European standard)), row 1 Start mix: Air went on top of ${left} without emptying: ${result}, and is not air. Analyse it and label it as analysed, or empty it and fill it again.`;
  const NOT_KNOWN =
    "not checked: start mix is not written, and no earlier fill of the cylinder is in the log, row 1 Start mix";
  // 80 bar of EAN32 topped with air to 200 bar: 25.58 % by the reference code (tests/outside/worked-blends.json)
  const WORKED_OUT = breach("EAN32", "it came to about 25.6 % oxygen");

  it.each<[string, TestRow, readonly string[]]>([
    ["not analysed", {}, [WORKED_OUT]],
    ["analysed", { "Analysed O2 %": 25.5 }, [breach("EAN32", "analysed EAN25.5")]],
    // EN 12021; CGA G-7.1: air has 20 to 22 %
    ["analysed 22.0 %", { "Analysed O2 %": 22 }, []],
    ["analysed 22.1 %", { "Analysed O2 %": 22.1 }, [breach("EAN32", "analysed EAN22.1")]],
    ["analysed 20.0 %", { "Analysed O2 %": 20 }, []],
    ["analysed 19.9 %", { "Analysed O2 %": 19.9 }, [breach("EAN32", "analysed EAN19.9")]],
    ["a trace of helium, as little as an analyser shows", { "Start mix": "21/35", "Analysed O2 %": 20.9, "Analysed He %": 1 }, []],
    ["more helium than a trace", { "Start mix": "21/35", "Analysed O2 %": 20.9, "Analysed He %": 1.1 }, [breach("TX 21/35", "analysed TX 20.9/1.1")]],
    ["analysed, and nothing known of what was there", { "Start mix": null, "Analysed O2 %": 25.5 }, [NOT_KNOWN]],
    ["an analysis that cannot be read", { "Analysed O2 %": "smudged" }, ["not checked: analysis cannot be read, row 1 Analysed O2 %"]],
    // that analysis is no matter of what was there: air that is not air is told elsewhere
    ["air on air, analysed 25.5 %", { "Start mix": "air", "Analysed O2 %": 25.5 }, []],
    ["ordered, the method not written", { Method: null }, [WORKED_OUT]],
    ["by method, no mix ordered", { "Ordered mix": null }, [WORKED_OUT]],
    ["neither ordered nor by method", { Method: null, "Ordered mix": null }, ["not checked: mix is blank, row 1 Ordered mix"]],
    ["an order that cannot be read", { Method: null, "Ordered mix": "smudged" }, ["not checked: mix cannot be read, row 1 Ordered mix"]],
    ["ordered, but blended", { Method: "partial pressure", "O2 added psi": 100 }, []],
    ["no mix ordered, and blended", { Method: "partial pressure", "Ordered mix": null, "O2 added psi": 100 }, []],
    ["an end that is not written", { "End psi": null }, ["not checked: end pressure is blank, row 1 End psi"]],
  ])("%s", (_what, change, expected) => {
    expect(said10(change, [{ ...FULL, Serial: "ZZ9999" }])).toEqual(expected);
  }); // prettier-ignore

  it("names a residue that only the fill before tells", () => {
    const before = { ...FULL, Date: OCTOBER };
    expect(said10({ "Start mix": null }, [before])).toEqual([
      breach("EAN32, left by its last fill,", "it came to about 25.6 % oxygen"),
    ]);
    expect(said10({}, [before])).toEqual([WORKED_OUT]);
  });
});

describe("filled elsewhere in between (R11)", () => {
  /** Left on 1 October, came back on 12 November. */
  const said11 = (left: TestRow, back: TestRow, options: AuditOptions = SHOP): readonly string[] =>
    said(
      "R11",
      [
        { ...FULL, Date: OCTOBER, ...left },
        { ...FULL, ...back },
      ],
      { options },
    );
  const came = (withPressure: string, left: string): string =>
    `note, practice (conservation of mass), row 2 Start psi: Came with ${withPressure}, more than the ${left} of its fill on 1 October 2026: it was filled elsewhere in between. Analyse what is in it before anything goes on top.`;

  it.each<[string, TestRow, TestRow, readonly string[]]>([
    // Two gauges of 1 % and two temperatures of 3 °C each: 4.05 % at twice their spread; 3 bar for a gauge near zero.
    ["137.9 bar left: 146.4 back is no more than that", { "End psi": 2000 }, { "Start psi": 2123 }, []],
    ["146.6 back is", { "End psi": 2000 }, { "Start psi": 2126 }, [came("2,126 psi", "2,000 psi")]],
    ["bled to nothing: 2.96 bar back is none", { "End psi": 0 }, { "Start psi": 43 }, []],
    ["3.03 bar is some", { "End psi": 0 }, { "Start psi": 44 }, [came("44 psi", "0 psi")]],
    ["what it settled at counts", { "End psi": 3000, "Settled psi": 2000 }, { "Start psi": 2500 }, [came("2,500 psi", "2,000 psi")]],
    ["no start pressure", {}, { "Start psi": null }, ["not checked: start pressure is blank, row 2 Start psi"]],
    ["nothing known of what it left with", { "End psi": null }, {}, ["not checked: what the fill before left is not known, row 2 Start psi"]],
    [
      "the fill before has no date",
      { "End psi": 2000, Date: "smudged" },
      { "Start psi": 2500 },
      ["not checked: a fill of the cylinder has no date that can be read, row 2 Start psi"],
    ],
    [
      "its own date is not known",
      { "End psi": 2000 },
      { "Start psi": 2500, Date: "smudged" },
      ["not checked: a fill of the cylinder has no date that can be read, row 2 Start psi"],
    ],
    [
      "two fills of one day without times: the other may have been the first",
      { "End psi": 2000, Date: FULL.Date! },
      { "Start psi": 2500 },
      ["not checked: the cylinder was filled more than once that day, and times do not say in which order, row 2 Start psi"],
    ],
    ["less than it left with: whatever the order", { Date: FULL.Date! }, { "Start psi": 2500 }, []],
  ])("%s", (_what, left, back, expected) => {
    expect(said11(left, back)).toEqual(expected);
  }); // prettier-ignore

  it("goes by the shop's own gauges", () => {
    const better = { ...SHOP, house: { gaugeErrorPercent: 0.25, temperatureErrorC: 1 } };
    expect(said11({ "End psi": 2000 }, { "Start psi": 2100 }, better)).toEqual([
      came("2,100 psi", "2,000 psi"),
    ]);
    expect(said11({ "End psi": 2000 }, { "Start psi": 2100 })).toEqual([]);
  });
});

describe("one cylinder filled twice within minutes (R07)", () => {
  const FIRST: TestRow = { ...FULL, Time: "10:00" };
  const said7 = (again: TestRow, first: TestRow = {}): readonly string[] =>
    said(
      "R07",
      [
        { ...FIRST, ...first },
        { ...FIRST, ...again },
      ],
      { options: SHOP },
    );
  const warned = (message: string): string =>
    `warn, practice (common practice, no source), row 2 Serial: ${message} Compare the serial with the cylinder, and strike out the row that is too many.`;
  const TWICE = warned("The same fill of this cylinder stands here twice that day.");
  const soon = (minutes: number, how = ", to 3,000 psi, and is back with 250 psi"): string =>
    warned(`This cylinder was filled ${minutes} minutes before${how}.`);
  /** What the other half of R07 says, whether the end is above the start. */
  const blank = (pressure: string, heading: string, rows: readonly number[]): string =>
    `not checked: ${[`${pressure} is blank`, ...rows.map((row) => `row ${row} ${heading}`)].join(", ")}${rows.length === 1 ? "" : ` (${rows.length})`}`;
  const startBlank = (...rows: readonly number[]) => blank("start pressure", "Start psi", rows);
  const endBlank = (...rows: readonly number[]) => blank("end pressure", "End psi", rows);
  const AT_ONCE = soon(0, ", to 3,000 psi, and is back with 500 psi");

  it.each<[string, TestRow, TestRow, readonly string[]]>([
    ["the same row twice", {}, {}, [TWICE]],
    ["the same row, no time written", { Time: null }, { Time: null }, [TWICE]],
    ["the same row, one of them without a time", { Time: null }, {}, [TWICE]],
    ["the same row, one of them without an analysis", { "Analysed O2 %": null }, {}, [TWICE]],
    ["the same row, one of them without an order", {}, { "Ordered mix": null }, [TWICE]],
    ["the same but for the minute", { Time: "10:01" }, {}, [soon(1, ", to 3,000 psi, and is back with 500 psi")]],
    ["the same but for the start", { "Start psi": 250 }, {}, [soon(0)]],
    ["the same but for the end", { "End psi": 2900 }, {}, [AT_ONCE]],
    ["the same but for the analysis", { "Analysed O2 %": 31.9 }, {}, [AT_ONCE]],
    ["the same but for the order", { "Ordered mix": "EAN31" }, {}, [AT_ONCE]],
    ["a start that neither row has", { "Start psi": null }, { "Start psi": null }, [soon(0, ""), startBlank(1, 2)]],
    ["an end that neither row has", { "End psi": null }, { "End psi": null }, [soon(0, ""), endBlank(1, 2)]],
    ["half an hour", { Time: "10:30", "Start psi": 250 }, {}, [soon(30)]],
    ["a minute more", { Time: "10:31", "Start psi": 250 }, {}, []],
    ["over the hour", { Time: "11:05", "Start psi": 250 }, { Time: "10:40" }, [soon(25)]],
    ["what the first left is not known", { Time: "10:20", "Start psi": 250 }, { "End psi": null }, [soon(20, ""), endBlank(1)]],
    ["no start pressure", { Time: "10:20", "Start psi": null }, {}, [soon(20, ""), startBlank(2)]],
    // four fifths of 3000 psi are left: cooled, and topped
    ["2398 psi left: topped", { Time: "10:20", "Start psi": 2398 }, {}, []],
    ["2396 psi left: filled again", { Time: "10:20", "Start psi": 2396 }, {}, [soon(20, ", to 3,000 psi, and is back with 2,396 psi")]],
    ["no time", { Time: null, "Start psi": 250 }, {}, ["not checked: time is blank, row 2 Time"]],
    ["no time of the first", { "Start psi": 250 }, { Time: null }, ["not checked: its fill before on the same day has no time that can be read, row 2 Serial"]],
    ["the day after", { Date: onDay("2026-11-13"), "Start psi": 250 }, {}, []],
    ["no date of the first", {}, { Date: "smudged" }, ["not checked: a fill of the cylinder has no date that can be read, row 2 Date"]],
    ["no date", { Date: "smudged" }, {}, ["not checked: a fill of the cylinder has no date that can be read, row 2 Date"]],
    ["no date, and no other fill", { Date: "smudged", Serial: "ZZ9999" }, {}, []],
  ])("%s", (_what, again, first, expected) => {
    expect(said7(again, first)).toEqual(expected);
  }); // prettier-ignore
});

describe("a cylinder that the register does not have (R01)", () => {
  const breach = (at: string, message: string, todo: string): string =>
    `breach, practice (no rule of the United States found; taken from BS EN 1920 (European standard)), ${at}: ${message} ${todo}`;
  const unknown = (at: string, name: string, todo: string): string =>
    breach(at, `${name} is not in the register: nothing is known of its tests and rating.`, todo);
  const COMPARE = "Compare it with the cylinder; correct it here, or enter the cylinder in the register.";
  const REGISTER: readonly TestRow[] = [
    { Serial: "AB1234", "Shop number": "12", Made: "2014/03", Hydro: "2024/10" },
    { Serial: "CD5678", "Shop number": "14", Made: "2014/03", Hydro: "2024/10" },
    { Serial: "EF9012", "Shop number": "14", Made: "2014/03", Hydro: "2024/10" },
  ];
  const FILL: TestRow = { Date: FULL.Date!, Serial: null, "Shop number": null, "Start psi": 500, "End psi": 3000, "Ordered mix": "EAN32", Method: "premix" }; // prettier-ignore

  it.each<[string, TestRow, readonly string[]]>([
    ["a serial of the register", { Serial: "AB1234" }, []],
    ["written with a hyphen", { Serial: "ab-1234" }, []],
    ["another", { Serial: "GH3456" }, [unknown("row 1 Serial", "GH3456", COMPARE)]],
    ["one character off", { Serial: "AB1235" }, [unknown("row 1 Serial", "AB1235", "Compare it with the cylinder: the register has AB1234.")]],
    ["one of a twin set", { Serial: "AB1234 + GH3456" }, [unknown("row 1 Serial", "GH3456", COMPARE)]],
    ["by its shop number", { "Shop number": "12" }, []],
    ["a shop number that nobody has", { "Shop number": "99" }, [unknown("row 1 Shop number", "99", COMPARE)]],
    [
      "a shop number of two cylinders",
      { "Shop number": "14" },
      [breach("row 1 Shop number", "Shop number 14 is held by more than one cylinder. Write the serial.", "Write the serial from the cylinder's shoulder.")],
    ],
    ["a serial in the column of numbers", { "Shop number": "AB1234" }, []],
    ["neither", {}, ["not checked: serial is blank, row 1 Serial"]],
  ])("%s", (_what, change, expected) => {
    const other = { ...FILL, Serial: "AB1234", "Shop number": "12" };
    expect(said("R01", [{ ...FILL, ...change }, other], { register: REGISTER })).toEqual(expected);
  }); // prettier-ignore

  it("is no matter where there is no register, or where the row has dates of its own", () => {
    expect(said("R01", [{ ...FILL, Serial: "GH3456" }])).toEqual([]);
    const own = { ...FILL, Serial: "GH3456", Hydro: "2024/10" };
    expect(said("R01", [own], { register: REGISTER })).toEqual([]);
    expect(said("R01", [{ ...own, Hydro: null }, own], { register: REGISTER })).toEqual([
      unknown("row 1 Serial", "GH3456", COMPARE),
    ]);
  });
});
