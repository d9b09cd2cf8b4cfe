import { describe, expect, it } from "vitest";
import { cellName } from "../../src/sheet/sheet";
import { auditOf, FULL, SHOP, verdictOf, without, type TestRow } from "./sheets";

/* Rules of oxygen, analysis, air and people through real sheets, with the edges of their figures. */

type Case = readonly [change: TestRow, expected: string];
const table = (rule: string, cases: readonly Case[], country = "US", row = FULL): void => {
  it.each(cases)(`${rule} %j: %s`, (change, expected) => {
    expect(verdictOf(rule, change, { country, row })).toBe(expected);
  });
};
const AIR = {
  Method: "air",
  "Ordered mix": "air",
  "Start mix": "air",
  "O2 added psi": null,
  "MOD (ft)": null,
};
const analysed = (oxygen: number | string | null, helium: number | null = null): TestRow => ({
  "Analysed O2 %": oxygen,
  "Analysed He %": helium,
});

describe("O04, oxygen cleaning out of date", () => {
  table("O04", [
    [{ "O2 cleaned": "2025/11" }, "nothing"],
    [{ "O2 cleaned": "2025/10" }, "stop"],
    [{ "O2 cleaned": null }, "not checked: oxygen cleaning is blank"],
    [{ "O2 cleaned": "2026/12" }, "not checked: the only oxygen cleaning on record is later than the fill"],
    [{ "O2 cleaned": "??" }, "not checked: oxygen cleaning cannot be read"],
    [{ "O2 cleaned": "2025/10", Date: null }, "not checked: fill date is blank"],
    // no oxygen went in
    [{ "O2 cleaned": "2020/10", Method: "premix", "O2 added psi": null }, "nothing"],
    // never clean: that is O01
    [{ "O2 cleaned": "2020/10", "O2 rating": "40" }, "nothing"],
  ]);
  table(
    "O04",
    [
      [{ "O2 cleaned": "2025/08" }, "nothing"],
      [{ "O2 cleaned": "2025/07" }, "stop"],
    ],
    "GB",
  );
  table(
    "O04",
    [
      [{ "O2 cleaned": "2024/11" }, "nothing"],
      [{ "O2 cleaned": "2024/10" }, "stop"],
    ],
    "FI",
  );
});

describe("O05, a hydro since the oxygen cleaning", () => {
  // FULL: hydro of October 2024, cleaned in May 2026, filled on 12 November 2026
  table("O05", [
    [{}, "nothing"],
    [{ Hydro: "2026/06" }, "breach"],
    // one visit, as far as months tell
    [{ Hydro: "2026/05" }, "nothing"],
    [{ Hydro: "2026-05-11", "O2 cleaned": "2026-05-10" }, "breach"],
    [{ Hydro: "2026-05-10", "O2 cleaned": "2026-05-10" }, "nothing"],
    [{ Hydro: "2026-05-31", "O2 cleaned": "2026/05" }, "nothing"],
    [{ Hydro: "2026-06-01", "O2 cleaned": "2026/05" }, "breach"],
    // a hydro after the fill opened nothing before it
    [{ Hydro: "2026-11-13" }, "nothing"],
    [{ Hydro: "2026-11-12" }, "breach"],
    // cleaned again since
    [{ Hydro: "2026/06", "Previous O2 cleaned": "2026/05", "O2 cleaned": "2026/07" }, "nothing"],
    // no oxygen went in
    [{ Hydro: "2026/06", Method: "premix", "O2 added psi": null }, "nothing"],
    // not clean at all: that is O01; never cleaned: that is O04
    [{ Hydro: "2026/06", "O2 rating": "40" }, "nothing"],
    [{ Hydro: "2026/06", "O2 cleaned": null }, "nothing"],
    [{ Hydro: "see sticker" }, "not checked: hydro cannot be read"],
    [{ "O2 cleaned": "??" }, "not checked: oxygen cleaning cannot be read"],
    [{ Hydro: "2026/06", Date: null }, "not checked: fill date is blank"],
    // manufacture is no hydro
    [{ Hydro: null, Made: "2026/06" }, "nothing"],
  ]);

  it("says what was done when, at the cell where the oxygen stands", () => {
    const [found] = auditOf([{ ...FULL, Hydro: "2026/06" }], [], "US", SHOP).findings.filter(
      ({ rule }) => rule === "O05",
    );
    expect(found?.message).toBe(
      "Partial pressure puts pure oxygen into a cylinder cleaned for oxygen 2026-05, and opened and filled with water for its hydro 2026-06.",
    );
    expect(cellName(found!.cell)).toBe("J2");
  });
});

describe("O06, oxygen above 3000 psi in aluminium", () => {
  const oxygen = { "Ordered mix": "oxygen", ...analysed(99), "MOD (ft)": 13 };
  table("O06", [
    [{ ...oxygen, "End psi": 3000 }, "nothing"],
    [{ ...oxygen, "Service psi": 3442, "End psi": 3050 }, "warn"],
    [{ ...oxygen, "Service psi": 3442, "End psi": 3091 }, "stop"],
    [{ ...oxygen, "Ordered mix": "EAN95", ...analysed(94), "End psi": 3200 }, "stop"],
    [{ ...oxygen, "Ordered mix": "EAN94", ...analysed(94.9), "End psi": 3200 }, "nothing"],
    [{ ...oxygen, "Class": "3AA", Material: "steel", Alloy: null, "End psi": 3200 }, "nothing"],
  ]); // prettier-ignore
});

describe("O07, continuous blend richer than the compressor may take", () => {
  const stream = { Method: "continuous", "O2 added psi": null };
  table("O07", [
    [{ ...stream, "Ordered mix": "EAN40", ...analysed(40) }, "nothing"],
    [{ ...stream, "Ordered mix": "EAN40", ...analysed(40.5) }, "nothing"],
    [{ ...stream, "Ordered mix": "EAN40", ...analysed(40.6) }, "stop"],
    [{ ...stream, "Ordered mix": "EAN41", ...analysed(null) }, "stop"],
    [{ ...stream, "Ordered mix": "EAN50", Method: "premix", ...analysed(50) }, "nothing"],
    [{ Method: null }, "not checked: method is blank"],
    [{ ...stream, ...analysed("??") }, "not checked: analysis cannot be read"],
  ]);
});

describe("O08, an enriched mix in a cylinder without a rating", () => {
  table("O08", [
    [{ "O2 rating": null }, "breach"],
    [{ "O2 rating": null, ...AIR, ...analysed(20.9) }, "nothing"],
    [{ "O2 rating": null, ...analysed(24) }, "nothing"],
    [{ "O2 rating": null, ...analysed(24.1) }, "breach"],
    // with a rating O02 decides
    [{ "O2 rating": "AIR" }, "nothing"],
    [{ "O2 rating": "nitrox" }, "nothing"],
    [{ "O2 rating": null, ...analysed("??") }, "not checked: analysis cannot be read"],
  ]);
  table(
    "O08",
    [
      [{ "O2 rating": null, ...analysed(22.5) }, "nothing"],
      [{ "O2 rating": null, ...analysed(22.6) }, "warn"],
    ],
    "GB",
  );
});

describe("O09 and O11", () => {
  const permit = { Class: "SP10915", Material: "composite", Alloy: null };
  table("O09", [
    [{ ...permit, ...analysed(39.5) }, "nothing"],
    [{ ...permit, ...analysed(39.6) }, "breach"],
    [{ ...permit, ...analysed(null), "Ordered mix": "EAN40" }, "breach"],
    [{ ...analysed(50) }, "nothing"],
  ]);
  table("O11", [
    [{ "O2 cleaned": null }, "warn"],
    [{ "O2 cleaned": "??" }, "nothing"],
    [{ "O2 cleaned": null, "O2 rating": "40" }, "nothing"],
  ]);
});

describe("G01, not analysed", () => {
  const blank = analysed(null);
  table("G01", [
    [{}, "nothing"],
    [blank, "stop"],
    [{ ...blank, ...AIR }, "nothing"],
    [{ ...blank, "Ordered mix": "21%" }, "nothing"],
    [{ ...blank, "Ordered mix": "EAN23" }, "stop"],
    [{ ...blank, "Ordered mix": "TX 21/35" }, "stop"],
    [{ ...blank, "Ordered mix": null, Method: "premix" }, "stop"],
    [{ ...blank, "Ordered mix": null, Method: "air" }, "nothing"],
    [{ ...blank, "Ordered mix": null, Method: null }, "not checked: mix is blank"],
    [{ ...blank, "Ordered mix": "nitrox" }, "not checked: mix cannot be read"],
    [analysed("??"), "not checked: analysis cannot be read"],
  ]);
  it("is not judged where the log has no column for it", () => {
    const row = without(FULL, "Analysed O2 %", "Analysed He %");
    expect(verdictOf("G01", {}, { row })).toBe("not checked: the log has no column for analysis");
  });
});

describe("G02, MOD on the label too deep", () => {
  // 33 x (1.4 / 0.32 - 1) = 111.375 ft; 10 x the same = 33.75 m; EAN36: 95.3 ft, 28.9 m; EAN40: 82.5 ft, 25 m.
  // A label rounded up is a foot (or 0.3 m) off at most, and no more than a slip.
  table("G02", [
    [{ "MOD (ft)": 111 }, "nothing"],
    [{ "MOD (ft)": 112 }, "warn"],
    [{ "MOD (ft)": 113 }, "stop"],
    [{ "MOD (ft)": 132 }, "stop"],
    [{ "MOD (ft)": null }, "nothing"],
    [{ "MOD (ft)": "deep" }, "not checked: MOD cannot be read"],
    // deco gas keeps 1.6: EAN50 to 72 ft, oxygen to 20 ft (33 ft to the ata), the depths of common practice
    [{ ...analysed(50), "MOD (ft)": 59 }, "nothing"],
    [{ ...analysed(50), "MOD (ft)": 70 }, "note"],
    [{ ...analysed(50), "MOD (ft)": 72 }, "note"],
    [{ ...analysed(50), "MOD (ft)": 80 }, "stop"],
    [{ "Ordered mix": "oxygen", ...analysed(100), "MOD (ft)": 20 }, "note"],
    [{ "Ordered mix": "oxygen", ...analysed(100), "MOD (ft)": 30 }, "stop"],
    [{ ...analysed(40), "MOD (ft)": 82 }, "nothing"],
    [{ ...analysed(40), "MOD (ft)": 83 }, "warn"],
    [{ ...analysed(40), "MOD (ft)": 84 }, "stop"],
    // 32.2 %: 110.5 ft; the label of the order is half a foot too deep. 33 %: 107 ft.
    [{ ...analysed(32.2), "MOD (ft)": 111 }, "warn"],
    [{ ...analysed(33), "MOD (ft)": 108 }, "warn"],
    [{ ...analysed(33), "MOD (ft)": 109 }, "stop"],
    [{ ...analysed(33), "MOD (ft)": 111 }, "stop"],
    // by the order where nothing was analysed
    [{ ...analysed(null), "MOD (ft)": 112 }, "warn"],
    [{ ...analysed(null), "MOD (ft)": 132 }, "stop"],
    [{ ...analysed("??") }, "not checked: analysis cannot be read"],
  ]); // prettier-ignore
  const metric = without(FULL, "MOD (ft)");
  table(
    "G02",
    [
      [{ "MOD (m)": 33 }, "nothing"],
      [{ "MOD (m)": 34 }, "warn"],
      [{ "MOD (m)": 35 }, "stop"],
      [{ ...analysed(36), "MOD (m)": 29 }, "warn"],
      [{ ...analysed(40), "MOD (m)": 25 }, "nothing"],
      [{ ...analysed(40), "MOD (m)": 26 }, "stop"],
    ],
    "GB",
    metric,
  );

  it("by the ppO2 of the house", () => {
    const options = { ...SHOP, house: { maxPpO2: 1.3 } };
    // 33 x (1.3 / 0.32 - 1) = 101.06
    expect(verdictOf("G02", { "MOD (ft)": 101 }, { options })).toBe("nothing");
    expect(verdictOf("G02", { "MOD (ft)": 102 }, { options })).toBe("warn");
    expect(verdictOf("G02", { "MOD (ft)": 111 }, { options })).toBe("stop");
  });

  it("says both depths, and the ppO2 at the one on the label", () => {
    const said = (mod: number) => {
      const found = auditOf([{ ...FULL, "MOD (ft)": mod }]).findings.find(({ rule }) => rule === "G02");
      return [found?.message, found?.todo];
    };
    // 0.32 x (132 / 33 + 1) = 1.60; 0.32 x (112 / 33 + 1) = 1.406
    expect(said(132)).toEqual([
      "The label says 132 ft, 21 ft too deep: analysed EAN32 ends at 111 ft (ppO2 1.4); at 132 ft it has 1.60.",
      "Call the diver at once, and put a right label on the cylinder.",
    ]);
    expect(said(112)).toEqual([
      "The label says 112 ft, rounded up: analysed EAN32 ends at 111.4 ft (ppO2 1.4); at 112 ft it has 1.41.",
      "Round depths on labels down: 111 ft.",
    ]);
  });
});

describe("G03, far from the order", () => {
  table("G03", [
    [analysed(33), "nothing"],
    [analysed(31), "nothing"],
    [analysed(33.1), "breach"],
    [analysed(30.9), "breach"],
    [analysed(35), "breach"],
    [analysed(35.1), "stop"],
    [analysed(28.9), "stop"],
    [{ "Ordered mix": "TX 18/45", ...analysed(18.4, 44) }, "nothing"],
    [{ "Ordered mix": "TX 18/45", ...analysed(18.4, 43.5) }, "breach"],
    [{ "Ordered mix": "TX 18/45", ...analysed(18, 41.9) }, "stop"],
    // helium nobody analysed is G06
    [{ "Ordered mix": "TX 18/45", ...analysed(18) }, "nothing"],
    // air that is none is G04
    [{ ...AIR, ...analysed(32) }, "nothing"],
    [analysed(null), "not checked: analysis is blank"],
    [{ "Ordered mix": null }, "not checked: mix is blank"],
  ]);
});

describe("G04, air that is not air", () => {
  table("G04", [
    [{ ...AIR, ...analysed(20.9) }, "nothing"],
    [{ ...AIR, ...analysed(22) }, "nothing"],
    [{ ...AIR, ...analysed(22.1) }, "stop"],
    [{ ...AIR, ...analysed(20) }, "nothing"],
    [{ ...AIR, ...analysed(19.9) }, "stop"],
    [{ ...AIR, ...analysed(null) }, "nothing"],
    [{ ...AIR, ...analysed("??") }, "not checked: analysis cannot be read"],
    [{ ...AIR, "Start mix": null, ...analysed(24) }, "stop"],
    // on a residue of nitrox it is O10
    [{ ...AIR, "Start mix": "EAN32", ...analysed(24) }, "nothing"],
  ]);
});

describe("G05 and G10, certification on file", () => {
  const uncertified = { Certification: null };
  table("G05", [
    [{ ...uncertified, "Ordered mix": "TX 18/45", ...analysed(18, 45) }, "nothing"],
    [{ ...uncertified, "Ordered mix": "TX 10/50", ...analysed(17.9, 45) }, "stop"],
    [{ ...uncertified, ...analysed(40.5) }, "nothing"],
    [{ ...uncertified, ...analysed(40.6) }, "breach"],
    [{ ...analysed(50) }, "nothing"],
    [uncertified, "nothing"],
  ]);
  table("G10", [
    [uncertified, "breach"],
    [{ Certification: "no" }, "breach"],
    [{ ...uncertified, ...AIR, ...analysed(20.9) }, "nothing"],
    [{ ...uncertified, ...analysed(50) }, "nothing"],
    [{ ...uncertified, ...analysed("??") }, "not checked: analysis cannot be read"],
  ]);
});

describe("G06, helium not analysed", () => {
  const trimix = { "Ordered mix": "TX 18/45", "MOD (ft)": 200 };
  table("G06", [
    [{ ...trimix, ...analysed(18, 45) }, "nothing"],
    [{ ...trimix, ...analysed("18/45") }, "nothing"],
    [{ ...trimix, ...analysed(18) }, "breach"],
    // not analysed at all is G01
    [{ ...trimix, ...analysed(null) }, "nothing"],
    [{ ...trimix, ...analysed("??") }, "not checked: analysis cannot be read"],
    [{}, "nothing"],
  ]);
});

describe("G09 and G11, names and labels", () => {
  table("G09", [
    [{}, "nothing"],
    [{ "Analysed by": null }, "breach"],
    [{ Signature: null }, "breach"],
    [{ "Analysed by": null, Signature: false }, "breach, breach"],
    [{ ...AIR, ...analysed(null), "Analysed by": null, Signature: null }, "nothing"],
    // nobody analysed: that is G01
    [{ ...analysed(null), "Analysed by": null }, "nothing"],
  ]);
  table("G11", [
    [{ "MOD (ft)": null }, "warn"],
    [{ ...AIR, ...analysed(null) }, "nothing"],
    [{ "MOD (ft)": "deep" }, "not checked: MOD cannot be read"],
  ]);
});

describe("G13, planned depth", () => {
  // EAN32: 1.4 at 33.75 m, 1.6 at 40 m
  const metric = { ...without(FULL, "Planned depth (ft)"), "Planned depth (m)": 30 };
  table(
    "G13",
    [
      [{ "Planned depth (m)": 33 }, "nothing"],
      [{ "Planned depth (m)": 35 }, "breach"],
      [{ "Planned depth (m)": 40 }, "breach"],
      [{ "Planned depth (m)": 41 }, "stop"],
      [{ "Planned depth (m)": null }, "nothing"],
      [{ "Planned depth (m)": "wreck" }, "not checked: planned depth cannot be read"],
    ],
    "FR",
    metric,
  );
});

describe("A01, air test out of date", () => {
  const on = (airTests: NonNullable<typeof SHOP.airTests>, country = "US", change: TestRow = {}) =>
    verdictOf("A01", change, { country, options: { ...SHOP, airTests } });
  it.each([
    ["US", "2026-05-12", "nothing"],
    ["US", "2026-05-11", "breach"],
    ["GB", "2026-08-12", "nothing"],
    ["GB", "2026-08-11", "breach"],
    ["NL", "2025-11-12", "nothing"],
    ["NL", "2025-11-11", "breach"],
    ["US", "2026-11-12", "nothing"],
    ["US", "2026-11-13", "not checked: no air test before the fill is on record"],
  ])("%s, tested %s: %s", (country, date, expected) => {
    expect(on([{ date, passed: true }], country)).toBe(expected);
  });
  it("by source, where tests and log name one", () => {
    const tests = [
      { date: "2026-10-01", passed: true, source: "Bank B" },
      { date: "2026-01-01", passed: true, source: "bank a" },
    ];
    expect(on(tests)).toBe("breach");
    expect(on(tests, "US", { Source: "Bank B" })).toBe("nothing");
    expect(on(tests, "US", { Source: "Bank C" })).toBe(
      "not checked: no air test before the fill is on record",
    );
    expect(on(tests, "US", { Date: null })).toBe("not checked: fill date is blank");
  });
  it.each([
    ["2026-10-01", "2026-01-01", undefined, "not checked: source is blank"],
    ["2026-10-01", "2026-05-12", undefined, "nothing"],
    ["2026-05-11", "2026-01-01", undefined, "breach"],
    ["2026-10-01", "2026-10-01", "2026-01-01", "not checked: source is blank"],
    ["2026-10-01", "2026-10-01", "2026-06-01", "nothing"],
    ["2026-01-01", "2026-02-01", "2026-10-01", "nothing"],
  ])(
    "of a fill without a source, Bank A tested %s, Bank B %s, all air %s: %s",
    (bankA, bankB, all, expected) => {
      const tests = [
        { date: bankA, passed: true, source: "Bank A" },
        { date: bankB, passed: true, source: "Bank B" },
        ...(all === undefined ? [] : [{ date: all, passed: true }]),
      ];
      expect(on(tests, "US", { Source: null })).toBe(expected);
    },
  );
  it("is not judged where the shop keeps no tests here", () => {
    expect(on([])).toBe("not checked: no air test is on record");
  });
});

describe("P01, filler not named", () => {
  table("P01", [
    [{}, "nothing"],
    [{ "Filled by": null }, "breach"],
    [{ "Filled by": "n/a" }, "breach"],
  ]);
});
