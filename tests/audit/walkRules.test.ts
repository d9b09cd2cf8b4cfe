import { describe, expect, it } from "vitest";
import type { AuditOptions } from "../../src/audit/shop/shop";
import { auditOf, FULL, onDay, SHOP, verdictOf, without, type TestRow } from "./sheets";

/* Rules that look at the fills before: through real sheets, what they find, do not find, and cannot judge. */

/** Oxygen-clean cylinder, an oily and a clean source, and one of which nobody said anything. */
const SOURCES: AuditOptions = {
  ...SHOP,
  sources: [
    { name: "Bank A", oxygenCompatible: true },
    { name: "Old compressor", oxygenCompatible: false },
    { name: "Bank C" },
  ],
};

const AIR_FILL: TestRow = {
  ...FULL,
  Method: "air",
  "Ordered mix": "air",
  "O2 added psi": null,
  "Analysed O2 %": 20.9,
  "Start mix": "air",
};

/** What the audit says by one rule of a cylinder's fills, the last first: row, severity and message. */
function found(rule: string, fills: readonly TestRow[], options: AuditOptions = SOURCES) {
  return auditOf(fills, [], "US", options)
    .findings.filter((finding) => finding.rule === rule)
    .map(({ severity, cell, message }) => ({ severity, row: cell.row, message }));
}

function lacks(rule: string, fills: readonly TestRow[], options: AuditOptions = SOURCES): readonly string[] {
  return auditOf(fills, [], "US", options)
    .notChecked.filter((lack) => lack.rule === rule)
    .map(({ why, count }) => `${count} ${why}`);
}

describe("O03, oxygen-clean status lost", () => {
  const oily = { ...AIR_FILL, Date: onDay("2026-10-01"), Source: "Old compressor" };
  const blend = { ...FULL, Date: onDay("2026-11-12") };

  it("warns where the air goes in, and stops where oxygen meets it", () => {
    expect(found("O03", [oily, blend])).toEqual([
      {
        severity: "stop",
        row: 2,
        message:
          "Partial pressure puts pure oxygen into a cylinder filled from Old compressor, not oxygen compatible, on 1 October 2026; last cleaned 2026-05.",
      },
      {
        severity: "warn",
        row: 1,
        message:
          "An oxygen-clean cylinder was filled from Old compressor, which is not oxygen compatible: it is no longer clean.",
      },
    ]);
  });

  it.each([
    // cleaned again after the air, on the day before the oxygen
    ["2026-11-11", 0],
    ["2026-10-02", 0],
    // cleaned on the day of the air, or in its month: counts as before it
    ["2026-10-01", 1],
    ["2026/10", 1],
    ["2026/11", 0],
    // cleaned after the oxygen: no help to it
    ["2026-11-13", 0],
  ])("cleaned %s: %i stop", (cleaned, stops) => {
    const rows = [
      { ...oily, "O2 cleaned": "2026/05" },
      { ...blend, "O2 cleaned": cleaned },
    ];
    expect(found("O03", rows).filter(({ severity }) => severity === "stop")).toHaveLength(stops);
  });

  it("counts in the order fills were made, not in the order of the rows", () => {
    expect(found("O03", [blend, oily]).map(({ row, severity }) => [row, severity])).toEqual([
      [1, "stop"],
      [2, "warn"],
    ]);
    const later = { ...oily, Date: onDay("2026-11-13") };
    expect(found("O03", [later, blend]).map(({ severity }) => severity)).toEqual(["warn"]);
  });

  it("lets other cylinders be", () => {
    expect(found("O03", [{ ...oily, Serial: "XY999" }, blend]).map(({ severity }) => severity)).toEqual([
      "warn",
    ]);
    expect(found("O03", [{ ...oily, "O2 rating": "40" }])).toEqual([]);
  });

  it("cannot judge what nobody has said, and takes no status away for it", () => {
    const unsaid = { ...AIR_FILL, Date: onDay("2026-10-01"), Source: "Bank C" };
    expect(found("O03", [unsaid, blend])).toEqual([]);
    expect(lacks("O03", [unsaid, blend])).toEqual([
      "1 nobody has said whether the source is oxygen compatible",
    ]);
    expect(lacks("O03", [{ ...unsaid, Source: null }, blend])).toEqual(["1 source is blank"]);
    expect(lacks("O03", [oily, { ...blend, "O2 cleaned": "?" }])).toEqual([
      "1 oxygen cleaning cannot be read",
    ]);
    expect(lacks("O03", [oily], { asOf: "2026-11-30" })).toEqual([
      "1 no bank or compressor is told of under Rules & shop in the pane",
    ]);
    expect(lacks("O03", [without(oily, "Source")])).toEqual(["1 the log has no column for source"]);
  });
});

describe("A03, oxygen topped from a source that is not oxygen compatible", () => {
  it.each([
    ["Bank A", "nothing"],
    ["bank a", "nothing"],
    ["Old compressor", "stop"],
    ["Bank C", "not checked: nobody has said whether the source is oxygen compatible"],
    ["Bank X", "not checked: nobody has said whether the source is oxygen compatible"],
    [null, "not checked: source is blank"],
  ])("partial pressure, topped from %s: %s", (source, expected) => {
    expect(verdictOf("A03", { Source: source }, { options: SOURCES })).toBe(expected);
  });

  it("is no matter of fills without pure oxygen", () => {
    expect(verdictOf("A03", { ...AIR_FILL, Source: "Old compressor" }, { options: SOURCES })).toBe("nothing");
  });
});

describe("A02, filled since the last good air test", () => {
  const tests = (failedFrom?: string): AuditOptions => ({
    ...SHOP,
    airTests: [
      { date: "2026-09-01", passed: true },
      { date: "2026-11-01", passed: false, source: failedFrom },
      { date: "2026-11-20", passed: true },
    ],
  });

  it.each([
    ["2026-08-31", "nothing"],
    // filled on the day of the good test: after it
    ["2026-09-01", "stop"],
    ["2026-10-31", "stop"],
    ["2026-11-01", "stop"],
    ["2026-11-19", "stop"],
    ["2026-11-20", "nothing"],
  ])("good 1 September, failed 1 November, good 20 November; filled %s: %s", (date, expected) => {
    expect(verdictOf("A02", { Date: onDay(date) }, { options: tests() })).toBe(expected);
  });

  it("is about the source that failed", () => {
    const october = { Date: onDay("2026-10-10") };
    expect(verdictOf("A02", october, { options: tests("Bank A") })).toBe("stop");
    expect(verdictOf("A02", october, { options: tests("Bank B") })).toBe("nothing");
    expect(verdictOf("A02", { ...october, Source: null }, { options: tests("Bank B") })).toBe(
      "not checked: source is blank",
    );
    expect(verdictOf("A02", { ...october, Source: null }, { options: tests() })).toBe("stop");
    expect(verdictOf("A02", { Date: null }, { options: tests() })).toBe("not checked: fill date is blank");
  });

  it("needs tests to judge by", () => {
    expect(lacks("A02", [FULL], { asOf: "2026-11-30" })).toEqual(["1 no air test is on record"]);
    const other: AuditOptions = { airTests: [{ date: "2026-09-01", passed: true, source: "Bank Z" }] };
    expect(lacks("A02", [FULL], other)).toEqual(["1 no air test of the source is on record"]);
  });

  it("names both tests", () => {
    const [fault] = found("A02", [{ ...FULL, Date: onDay("2026-10-10") }], tests("Bank A"));
    expect(fault?.message).toBe(
      "The air of Bank A failed its test on 1 November 2026; the last good test was on 1 September 2026.",
    );
  });
});

describe("O10, air on top of another mix", () => {
  const onResidue = (start: number, mix: string | null, analysed: number | null): TestRow => ({
    ...AIR_FILL,
    "Start psi": start,
    "Start mix": mix,
    "Analysed O2 %": analysed,
  });

  it.each([
    // 80 bar (1160 psi) of EAN32 topped with air to 200 bar (2901 psi): 25.6 %
    ["1160 psi of EAN32, not analysed", onResidue(1160, "EAN32", null), "breach"],
    ["1160 psi of EAN32, analysed 25.5", onResidue(1160, "EAN32", 25.5), "breach"],
    ["1160 psi of EAN32, analysed 20.9", onResidue(1160, "EAN32", 20.9), "nothing"],
    // 0 psi gauge of EAN32 leaves an atmosphere: 20.95 + 11.05 x 0.005 = 21.0 %
    ["an atmosphere of EAN32", onResidue(0, "EAN32", null), "nothing"],
    ["1160 psi of air", onResidue(1160, "air", null), "nothing"],
    ["helium left", onResidue(300, "TX 21/35", null), "breach"],
    [
      "nothing known of it",
      onResidue(300, null, null),
      "not checked: start mix is not written, and no earlier fill of the cylinder is in the log",
    ],
    // even pure oxygen could not spoil it: one atmosphere in 200
    ["nothing known of it, but vented", onResidue(0, null, null), "nothing"],
    [
      "no start pressure",
      { ...onResidue(0, "EAN32", null), "Start psi": null },
      "not checked: start pressure is blank",
    ],
    ["a nitrox fill", { "Start mix": "EAN32" }, "nothing"],
    [
      "a nitrox topped with air on purpose",
      { ...onResidue(1160, "EAN32", null), "Ordered mix": "EAN28" },
      "nothing",
    ],
  ] as const)("%s: %s", (_what, row, expected) => {
    expect(verdictOf("O10", row as TestRow)).toBe(expected);
  });

  it("knows what the last fill left, and says what came of it", () => {
    const nitrox = { ...FULL, Date: onDay("2026-11-01") };
    const air = { ...onResidue(1160, null, null), "End psi": 2901 };
    expect(found("O10", [nitrox, air], SHOP)).toEqual([
      {
        severity: "breach",
        row: 2,
        message:
          "Air went on top of EAN32, left by its last fill, without emptying: it came to about 25.6 % oxygen, and is not air.",
      },
    ]);
    // came back fuller than it left: filled elsewhere, so nobody knows
    const fuller = { ...air, "Start psi": 2600, "End psi": 3000 };
    expect(lacks("O10", [{ ...nitrox, "End psi": 2000 }, fuller], SHOP)).toEqual([
      "1 start mix is not written, and the cylinder was filled elsewhere in between",
    ]);
  });
});

describe("R11, filled elsewhere in between", () => {
  const first = { ...FULL, Date: onDay("2026-11-01"), "End psi": 2000 };

  it.each([
    [2000, 0],
    // two gauges of 1 % and 3 degrees each way: 4.1 % and a little
    [2080, 0],
    [2200, 1],
    [0, 0],
  ])("left with 2000 psi, back with %i: %i", (start, count) => {
    expect(found("R11", [first, { ...FULL, "Start psi": start }], SHOP)).toHaveLength(count);
  });

  it("names the pressures, and cannot judge without them", () => {
    expect(found("R11", [first, { ...FULL, "Start psi": 2500 }], SHOP)).toEqual([
      {
        severity: "note",
        row: 2,
        message:
          "Came with 2,500 psi, more than the 2,000 psi of its fill on 1 November 2026: it was filled elsewhere in between.",
      },
    ]);
    expect(lacks("R11", [first, { ...FULL, "Start psi": null }], SHOP)).toEqual([
      "1 start pressure is blank",
    ]);
    expect(lacks("R11", [{ ...first, "End psi": null }, FULL], SHOP)).toEqual([
      "1 what the fill before left is not known",
    ]);
  });
});

describe("R07, one cylinder filled twice within minutes", () => {
  const at = (time: string | null, change: TestRow = {}): TestRow => ({ ...FULL, Time: time, ...change });
  const again = (time: string | null, change: TestRow = {}) =>
    found("R07", [at("10:00"), at(time, { "Start psi": 250, ...change })], SHOP).map(
      ({ message }) => message,
    );

  it("half an hour is too short to breathe it empty", () => {
    expect(again("10:30")).toEqual([
      "This cylinder was filled 30 minutes before, to 3,000 psi, and is back with 250 psi.",
    ]);
    expect(again("10:31")).toEqual([]);
    expect(again("10:05", { Serial: "ZZ1" })).toEqual([]);
    expect(again("10:05", { Date: onDay("2026-11-13") })).toEqual([]);
  });

  it("cooling and topping is one fill in two rows", () => {
    expect(again("10:20", { "Start psi": 2700 })).toEqual([]);
  });

  it("the same row twice is one too many", () => {
    const twice = found("R07", [at(null), at(null)], SHOP).map(({ row, message }) => [row, message]);
    expect(twice).toEqual([[2, "The same fill of this cylinder stands here twice that day."]]);
  });

  it("cannot tell without times", () => {
    expect(lacks("R07", [at("10:00"), at(null, { "Start psi": 250 })], SHOP)).toEqual(["1 time is blank"]);
  });
});
