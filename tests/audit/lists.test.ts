import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { audit, auditSteps } from "../../src/audit/audit";
import { predictedContents } from "./predictedContents";
import { dueLists } from "../../src/audit/lists/dueLists";
import { housePatterns, meanOf, studentT95 } from "../../src/audit/lists/housePatterns";
import { notToFillNext } from "../../src/audit/lists/recall";
import { rehearse } from "../../src/audit/lists/rehearsal";
import { mixed, suspectCylinders, type Share } from "../../src/audit/lists/suspectGas";
import { inTimeOrder } from "../../src/audit/walk/timeOrder";
import { countryRules } from "../../src/cylinders/countryRules";
import { cellName } from "../../src/sheet/sheet";
import { auditOf, FULL, logOf, onDay, SHOP, type TestRow } from "./sheets";

/* What the audit makes lists of: whom to call, what not to fill, what falls due, and what a station's habits are. */

const US = countryRules("US");

describe("the order in which fills were made", () => {
  const order = (rows: readonly TestRow[]): readonly number[] =>
    [...inTimeOrder(logOf(rows.map((row) => ({ ...FULL, Time: null, ...row }))))].map(({ index }) => index);

  it("goes by day, then by time", () => {
    const rows = [
      { Date: onDay("2026-11-12"), Time: "15:00" },
      { Date: onDay("2026-11-12"), Time: "09:30" },
      { Date: onDay("2026-11-11"), Time: "17:00" },
    ];
    expect(order(rows)).toEqual([2, 1, 0]);
  });

  it("leaves rows without a time where they stand in their day, and those without a date beside their neighbours", () => {
    const rows = [
      { Date: onDay("2026-11-08"), Time: null },
      { Date: onDay("2026-11-11"), Time: "10:00" },
      { Date: onDay("2026-11-11"), Time: null },
      { Date: "see book", Time: null },
      { Date: onDay("2026-11-11"), Time: "12:00" },
      { Date: onDay("2026-11-10"), Time: "12:00" },
    ];
    expect(order(rows)).toEqual([0, 5, 1, 2, 3, 4]);
  });

  it("reads a sheet that runs from the newest row to the oldest backwards", () => {
    const rows = ["2026-11-13", "2026-11-12", "2026-11-12", "2026-11-11"].map((day) => ({
      Date: onDay(day),
    }));
    expect(order(rows)).toEqual([3, 2, 1, 0]);
  });

  it("findings do not depend on how the rows are shuffled", () => {
    const days = ["2026-10-01", "2026-10-05", "2026-10-09", "2026-11-12", "2026-11-20"];
    const rows = days.map((day, at): TestRow => ({ ...FULL, Date: onDay(day), "Start mix": at % 2 === 0 ? "air" : null, "Start psi": 1200, Method: at % 2 === 0 ? "partial pressure" : "air", "Ordered mix": at % 2 === 0 ? "EAN32" : "air", "Analysed O2 %": at % 2 === 0 ? 31 : null, "O2 added psi": at % 2 === 0 ? 300 : null })); // prettier-ignore
    const said = (shuffled: readonly TestRow[]): readonly string[] =>
      auditOf(shuffled, [], "US", SHOP)
        .findings.map(({ rule, severity, fillDate, message }) => `${rule} ${severity} ${fillDate} ${message}`)
        .sort();
    const inOrder = said(rows);
    expect(inOrder.some((line) => line.startsWith("O10"))).toBe(true);
    fc.assert(
      fc.property(fc.shuffledSubarray(rows, { minLength: rows.length }), (shuffled) => {
        expect(said(shuffled)).toEqual(inOrder);
      }),
      { numRuns: 15 },
    );
  });
});

describe("steps of the audit", () => {
  it("rise from 0 (the fills are put in order first) to below 1, and come to what the audit answers", () => {
    const log = logOf(Array.from({ length: 450 }, (_, at) => ({ ...FULL, Serial: `AB${1000 + at}` })));
    const steps = auditSteps(log, US, SHOP);
    const shares: number[] = [];
    let step = steps.next();
    while (!step.done) {
      shares.push(step.value);
      step = steps.next();
    }
    expect(shares).toEqual([0, 0, 100 / 450, 200 / 450, 300 / 450, 400 / 450]);
    expect(step.value).toEqual(audit(log, US, SHOP));
  });
});

describe("the recall list", () => {
  const rich: TestRow = { ...FULL, Date: onDay("2026-11-01"), "Analysed O2 %": null };

  it("names cylinders whose last fill is dangerous, with their owners", () => {
    const { recall, doNotFill } = auditOf([{ ...FULL, Serial: "ZZ9999" }, rich], [], "US", SHOP);
    expect(recall.map(({ serial, owner, fillDate, lastFill, findings }) => [serial, owner, fillDate, lastFill.row, findings.map(({ rule }) => rule)])).toEqual([
      ["AB1234", "C-014", "2026-11-01", 2, ["G01"]],
    ]); // prettier-ignore
    expect(doNotFill).toEqual([]);
  });

  it("has the latest fill first, and the cell that names the cylinder there", () => {
    const on = (serial: string, date: string) => ({ ...rich, Serial: serial, Date: onDay(date) });
    const { recall } = auditOf(
      [on("AB1", "2026-11-03"), on("AB2", "2026-11-09"), on("AB3", "2026-11-01")],
      [],
      "US",
      SHOP,
    );
    expect(recall.map(({ serial, lastFill }) => `${serial} ${cellName(lastFill)}`)).toEqual([
      "AB2 C3",
      "AB1 C2",
      "AB3 C4",
    ]);
  });

  it("lets go of a cylinder that was filled well since, wherever the row stands", () => {
    const good = { ...FULL, Date: onDay("2026-11-12") };
    expect(auditOf([rich, good], [], "US", SHOP).recall).toEqual([]);
    expect(auditOf([good, rich], [], "US", SHOP).recall).toEqual([]);
    expect(auditOf([good, { ...rich, Date: onDay("2026-11-13") }], [], "US", SHOP).recall).toHaveLength(1);
  });

  it("keeps what is wrong with the vessel apart for the next fill", () => {
    const late = { ...FULL, Hydro: "2021/06", Visual: "2026/05" };
    const result = auditOf([late], [], "US", SHOP);
    expect(
      result.doNotFill.map(({ serial, findings }) => [serial, findings.map(({ rule }) => rule)]),
    ).toEqual([["AB1234", ["V01"]]]);
    const due = dueLists(logOf([late]), US, Temporal.PlainDate.from("2026-11-30"));
    expect(notToFillNext(result, due)).toEqual([
      {
        serial: "AB1234",
        owner: "C-014",
        reasons: ["Hydro 2021-06 was due by 30 June 2026."],
        cell: { sheet: "Fills", row: 1, column: 27 },
      },
    ]);
    const condemned = { ...FULL, Status: "condemned" };
    const again = auditOf([condemned], [], "US", SHOP);
    const none = dueLists(logOf([condemned]), US, Temporal.PlainDate.from("2026-11-30"));
    expect(notToFillNext(again, none).map(({ serial, reasons }) => [serial, reasons])).toEqual([
      ["AB1234", ["The register has it as “condemned”, and it was filled."]],
    ]);
  });
});

describe("due lists", () => {
  const cylinder = (serial: string, change: TestRow): TestRow => ({
    Serial: serial,
    Owner: "C-014",
    Class: "3AL",
    Made: "2014/03",
    Hydro: "2024/10",
    Visual: "2026/10",
    "O2 rating": "40",
    "O2 cleaned": null,
    ...change,
  });
  const lists = (register: readonly TestRow[], asOf = "2026-11-15") =>
    dueLists(
      logOf([{ Date: onDay("2026-01-05"), Serial: "S1", "End psi": 3000 }], register),
      US,
      Temporal.PlainDate.from(asOf),
    );

  it.each([
    // good to the last day of November: out of date on the first of December
    ["2021/11", "2026-11-30", "within 30", 0],
    ["2021/11", "2026-12-01", "out of date", -1],
    ["2021/12", "2026-12-01", "within 30", 30],
    ["2021/12", "2026-11-30", "within 60", 31],
    ["2022/01", "2026-12-02", "within 60", 60],
    ["2022/01", "2026-12-01", "within 90", 61],
    ["2022/02", "2026-11-30", "within 90", 90],
    ["2022/02", "2026-11-29", "none", undefined],
  ])("hydro %s on %s: %s", (hydro, asOf, list, daysLeft) => {
    const { outOfDate, dueWithin } = lists([cylinder("S1", { Hydro: hydro, Visual: "2026/11" })], asOf);
    const entries = [
      ...outOfDate.map((entry) => ["out of date", entry] as const),
      ...dueWithin.flatMap(({ days, entries }) => entries.map((entry) => [`within ${days}`, entry] as const)),
    ].filter(([, { test }]) => test === "hydro");
    expect(entries.map(([name, entry]) => [name, entry.daysLeft])).toEqual(
      list === "none" ? [] : [[list, daysLeft]],
    );
  });

  it("goes by owner, the earliest first, and says what cannot be known", () => {
    const { outOfDate, notKnown } = lists([
      cylinder("S1", { Owner: "C-020", Hydro: "2020/05" }),
      cylinder("S2", { Hydro: "2020/06" }),
      cylinder("S3", { Hydro: "2019/01" }),
      cylinder("S4", { Owner: null, Hydro: "2018/01" }),
      cylinder("S5", { Hydro: "see sticker" }),
      cylinder("S6", { Class: "3ZZ" }),
      cylinder("S7", { "O2 rating": "O2 clean" }),
    ]);
    expect(outOfDate.map(({ owner, serial, until }) => [owner, serial, until])).toEqual([
      ["C-014", "S3", "2024-01-31"],
      ["C-014", "S2", "2025-06-30"],
      ["C-020", "S1", "2025-05-31"],
      [undefined, "S4", "2023-01-31"],
    ]);
    expect(notKnown.map(({ serial, test }) => [serial, test])).toEqual([
      ["S5", "hydro"],
      ["S6", "hydro"],
      ["S7", "oxygen cleaning"],
    ]);
  });

  it("names the cell that says so: of the register, of the fill's own row, or where the date would stand", () => {
    const cells = (due: ReturnType<typeof lists>) =>
      [...due.outOfDate, ...due.dueWithin.flatMap(({ entries }) => entries), ...due.notKnown].map(
        ({ serial, test, cell }) => `${serial} ${test} ${cell.sheet}!${cellName(cell)}`,
      );
    const register = [
      cylinder("S1", { Hydro: "2020/06" }),
      cylinder("S2", { Hydro: null, Visual: "2026/10", Made: "2019/06" }),
      cylinder("S3", { Hydro: "see sticker" }),
      cylinder("S4", { Class: "3ZZ" }),
      cylinder("S5", { "O2 rating": "O2 clean" }),
      cylinder("S6", { Hydro: "2027/01", "O2 cleaned": "2026/05" }),
    ];
    expect(cells(lists(register)).sort()).toEqual([
      "S1 hydro Cylinders!E2",
      "S2 hydro Cylinders!D3",
      "S3 hydro Cylinders!E4",
      "S4 hydro Cylinders!C5",
      "S5 oxygen cleaning Cylinders!H6",
      "S6 hydro Cylinders!E7",
    ]);
    const flat = dueLists(
      logOf([{ ...FULL, Date: onDay("2026-01-05") }, FULL].map((row) => ({ ...row, Hydro: "2020/06" }))),
      US,
      Temporal.PlainDate.from("2026-11-15"),
    );
    expect(cells(flat)).toEqual(["AB1234 hydro Fills!AB3"]);
  });

  it("counts oxygen cleanings of oxygen-clean cylinders only, for 12 months", () => {
    const cleaned = { "O2 cleaned": "2025/11" };
    const { dueWithin } = lists([
      cylinder("S1", { ...cleaned, "O2 rating": "O2 clean" }),
      cylinder("S2", cleaned),
    ]);
    expect(dueWithin[0]!.entries.map(({ serial, test, until }) => [serial, test, until])).toEqual([
      ["S1", "oxygen cleaning", "2026-11-30"],
    ]);
  });
});

describe("what is probably in a cylinder", () => {
  const contents = (rows: readonly TestRow[]) => predictedContents(logOf(rows), US, SHOP).get("AB1234");

  it("is what was analysed; else what the readings make; else what was ordered", () => {
    expect(contents([FULL])).toMatchObject({ mix: { oxygen: 0.32, helium: 0 }, mixBy: "analysis", owner: "C-014", fillDate: "2026-11-12", notKnown: [] }); // prettier-ignore
    const topped = { ...FULL, Date: onDay("2026-11-20"), Method: "air", "Ordered mix": "air", "O2 added psi": null, "Analysed O2 %": null, "Start mix": null, "Start psi": 1160.3, "End psi": 2900.75 }; // prettier-ignore
    const found = contents([FULL, topped])!;
    // 80 bar of EAN32 topped with air to 200 bar: 25.58 % by the reference code (tests/outside/worked-blends.json)
    expect(found.mix!.oxygen).toBeCloseTo(0.25582, 3);
    expect(found.mixBy).toBe("mass balance");
    expect(contents([{ ...FULL, "Analysed O2 %": null, "O2 added psi": null }])).toMatchObject({ mixBy: "order", notKnown: ["Its last fill was not analysed: the mix is the one ordered."] }); // prettier-ignore
    expect(contents([{ ...FULL, "Analysed O2 %": "smudged" }])).toMatchObject({ mix: undefined, notKnown: ["Its last fill was not analysed in a way that can be read."] }); // prettier-ignore
  });
});

describe("what is not known of a cylinder's content", () => {
  const last = { ...FULL, Date: onDay("2026-11-20") };
  const found = (row: TestRow, before: TestRow = FULL) =>
    predictedContents(logOf([before, row]), US, SHOP).get("AB1234")!;

  it("is said in a sentence each", () => {
    expect(found(last)).toMatchObject({
      leftWithBar: expect.closeTo(207.9, 1) as number,
      lastFill: { sheet: "Fills", row: 2 },
      notKnown: [],
    });
    const air = { ...last, Method: "air", "Ordered mix": "air", "O2 added psi": null, "Analysed O2 %": null };
    expect(found(air).notKnown).toEqual(["Its last fill was not analysed: the mix is worked out."]);
    expect(found({ ...last, "End psi": null }).notKnown).toEqual([
      "The pressure it left with is not on record.",
    ]);
    expect(found(last, last).notKnown).toEqual([
      "Which fill was its last is taken on trust: the cylinder was filled more than once that day, and times do not say in which order.",
    ]);
    expect(found({ ...last, Date: "smudged" })).toMatchObject({
      fillDate: "",
      notKnown: [
        "Which fill was its last is taken on trust: a fill of the cylinder has no date that can be read.",
      ],
    });
  });

  it("is not kept of a fill without a serial", () => {
    expect([...predictedContents(logOf([{ ...FULL, Serial: null }]), US, SHOP).keys()]).toEqual([]);
  });
});

describe("after a bad air test", () => {
  const failed = { date: "2026-11-10", passed: false, source: "Bank A" };
  const options = { ...SHOP, airTests: [{ date: "2026-10-01", passed: true }] };
  const fill = (day: string, change: TestRow = {}): TestRow => ({
    ...FULL,
    Date: onDay(day),
    "Start mix": "EAN32",
    ...change,
  });
  const call = (rows: readonly TestRow[]) => suspectCylinders(logOf(rows), US, failed, options);

  it("lists every fill since the last good test, and no other", () => {
    const rows = [
      fill("2026-09-30", { Serial: "BEFORE" }),
      fill("2026-10-01", { Serial: "SAMEDAY" }),
      fill("2026-11-12", { Serial: "AFTER" }),
      fill("2026-10-20", { Serial: "OTHER", Source: "Bank Z" }),
      fill("2026-10-20", { Serial: "OPEN", Source: null }),
    ];
    // 500 of 3000 psi were there before: an ideal gas gives 1 - 515/3015 = 0.829
    expect(call(rows).map(({ serial, share }) => [serial, share.most, share.least > 0])).toEqual([
      ["SAMEDAY", expect.closeTo(0.824, 2) as number, true],
      ["AFTER", expect.closeTo(0.824, 2) as number, true],
      ["OPEN", expect.closeTo(0.824, 2) as number, false],
    ]); // prettier-ignore
  });

  it("falls with every clean top-off, by the gas that was left", () => {
    const suspect = fill("2026-10-20", { "Start psi": 0 });
    const clean = fill("2026-10-25", { Source: "Bank Z", "Start psi": 1500 });
    const [once] = call([suspect, clean]);
    const [twice] = call([suspect, clean, { ...clean, Date: onDay("2026-10-28") }]);
    // half the pressure is a little more than half the gas of a full cylinder
    expect(once!.share.most).toBeCloseTo(0.53, 1);
    expect(twice!.share.most).toBeCloseTo(once!.share.most * once!.share.most, 1);
    expect(twice).toMatchObject({ owner: "C-014", lastFillDate: "2026-10-28" });
    expect(twice!.suspectFills.map(({ date, isCertain }) => [date, isCertain])).toEqual([
      ["2026-10-20", true],
    ]);
  });

  it("is a range where the start pressure is not known", () => {
    const [found] = call([
      fill("2026-10-20", { "Start psi": 0 }),
      fill("2026-10-25", { Source: "Bank Z", "Start psi": null }),
    ]);
    expect(found!.share.least).toBe(0);
    expect(found!.share.most).toBeGreaterThan(0.99);
  });

  const number = fc.double({ min: 0, max: 1, noNaN: true });
  const share = fc.tuple(number, number).map(([one, other]): Share => ({ least: Math.min(one, other), most: Math.max(one, other) })); // prettier-ignore

  it("a share stays between 0 and 1, and clean gas never raises it", () => {
    fc.assert(
      fc.property(share, share, share, (before, inflow, remaining) => {
        const after = mixed(before, inflow, remaining);
        expect(after.least).toBeGreaterThanOrEqual(0);
        expect(after.most).toBeLessThanOrEqual(1 + 1e-12);
        expect(after.least).toBeLessThanOrEqual(after.most + 1e-12);
        const diluted = mixed(before, { least: 0, most: 0 }, remaining);
        expect(diluted.most).toBeLessThanOrEqual(before.most + 1e-12);
        expect(diluted.least).toBeLessThanOrEqual(before.least + 1e-12);
      }),
    );
  });
});

describe("a rehearsal under other rules", () => {
  it("shows what would appear, and what would vanish", () => {
    // in Great Britain a visual holds 30 months, in the US one year by custom
    const log = logOf([{ ...FULL, Visual: "2025/06", Hydro: "2023/01" }]);
    const run = rehearse(log, { rules: US, options: SHOP }, { rules: countryRules("GB"), options: SHOP });
    const shares: number[] = [];
    let step = run.next();
    while (!step.done) {
      shares.push(step.value);
      step = run.next();
    }
    expect(shares).toEqual([0, 0, 0.5, 0.5]);
    expect(step.value.vanish.map(({ rule }) => rule)).toContain("V06");
    expect(step.value.appear.map(({ rule }) => rule)).not.toContain("V06");
    const same = drained(rehearse(log, { rules: US, options: SHOP }, { rules: US, options: SHOP }));
    expect([same.appear, same.vanish, same.change, same.lessChecked]).toEqual([[], [], [], []]);
  });

  it("shows what is weighed otherwise, and what could be judged less", () => {
    // a visual past due breaks a custom in the US, and a law in Australia
    const late = logOf([{ ...FULL, Visual: "2025/06" }]);
    const { change } = drained(
      rehearse(late, { rules: US, options: SHOP }, { rules: countryRules("AU"), options: SHOP }),
    );
    expect(change.map(({ now, then }) => [now.rule, now.severity, then.rule, then.severity])).toContainEqual([
      "V06",
      "breach",
      "V06",
      "stop",
    ]);
    // Great Britain tells no classes apart; the US does not know this one
    const unknown = logOf([{ ...FULL, Class: "3ZZ", Hydro: "2026/05" }]);
    const GB = countryRules("GB");
    const lessChecked = (now: typeof US, then: typeof US) =>
      drained(
        rehearse(unknown, { rules: now, options: SHOP }, { rules: then, options: SHOP }),
      ).lessChecked.map(({ rule, why }) => `${rule}: ${why}`);
    expect(lessChecked(GB, US)).toContain("V01: class is not in the country's rules");
    expect(lessChecked(US, GB)).not.toContain("V01: class is not in the country's rules");
  });

  it("shows what a stricter house limit would find", () => {
    const log = logOf([{ ...FULL, "Analysed O2 %": 32.8, "MOD (ft)": 107 }]);
    const strict = { ...SHOP, house: { mixTolerancePoints: 0.5 } };
    const { appear, vanish } = drained(
      rehearse(log, { rules: US, options: SHOP }, { rules: US, options: strict }),
    );
    expect(appear.map(({ rule }) => rule)).toEqual(["G03"]);
    expect(vanish).toEqual([]);
  });

  function drained<T>(steps: Generator<number, T, undefined>): T {
    for (;;) {
      const step = steps.next();
      if (step.done) return step.value;
    }
  }
});

describe("house patterns", () => {
  it.each([
    // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, two-sided 95 %
    [1, 12.706],
    [2, 4.303],
    [3, 3.182],
    [4, 2.776],
    [5, 2.571],
    [9, 2.262],
    [10, 2.228],
    [20, 2.086],
    [30, 2.042],
    [100, 1.984],
  ])("Student's t for %i degrees of freedom is %f", (degrees, expected) => {
    expect(studentT95(degrees)).toBeCloseTo(expected, 2);
  });

  it("gives mean and confidence: 0.1, 0.3, 0.5, 0.7, 0.9 is 0.5 ± 0.39", () => {
    // s = 0.3162, s / sqrt(5) = 0.1414, t(4) = 2.776
    const mean = meanOf([0.1, 0.3, 0.5, 0.7, 0.9]);
    expect(mean.meanPoints).toBeCloseTo(0.5, 10);
    expect(mean.mostPoints - mean.meanPoints).toBeCloseTo(0.3926, 3);
    expect(mean.isBias).toBe(true);
    expect(meanOf([-0.3, 0.1, 0.3, -0.2, 0.2]).isBias).toBe(false);
  });

  it("tells a person's bias from chance, and leaves mistakes and air out", () => {
    const blends = (filledBy: string, errors: readonly number[]): readonly TestRow[] =>
      errors.map((error) => ({
        ...FULL,
        "Filled by": filledBy,
        "Analysed O2 %": Number((32 + error).toFixed(1)),
      }));
    const {
      patterns,
      leftOut,
      blends: count,
    } = housePatterns(
      logOf([
        ...blends("R.", [0.6, 0.7, 0.5, 0.8, 0.6, 0.7]),
        ...blends("T.", [0.1, -0.2, 0.2, -0.1, 0, 0.1]),
        ...blends("R.", [6]),
        ...blends("X.", [1, 1]),
        { ...FULL, Method: "air", "Ordered mix": "air", "Analysed O2 %": 21.8 },
      ]),
    );
    expect([count, leftOut]).toEqual([15, 1]);
    expect(patterns.filter(({ by }) => by === "filledBy").map(({ name, fills, isBias, meanPoints }) => [name, fills, isBias, Number(meanPoints.toFixed(2))])).toEqual([
      ["R.", 6, true, 0.65],
      ["T.", 6, false, 0.02],
    ]); // prettier-ignore
    expect(patterns.map(({ by }) => by)).toContain("method");
    expect(patterns.map(({ by }) => by)).toContain("source");
  });
});
