import { describe, expect, it } from "vitest";
import { auditOf, FULL, verdictOf, without, type TestRow } from "./sheets";

/*
 * Rules of the pressure vessel through real sheets: what each finds, what it does not find, what it cannot judge, with
 * the edges of days and pressures. Figures are those of 49 CFR and of the country rules in shared/rules.
 */

const UNRATED_CLASS = "class is not in the country's rules";
type Case = readonly [change: TestRow, expected: string];
const table = (rule: string, cases: readonly Case[], country = "US"): void => {
  it.each(cases)(`${rule} %j: %s`, (change, expected) => {
    expect(verdictOf(rule, change, { country })).toBe(expected);
  });
};
const message = (rule: string, change: TestRow, country = "US"): string | undefined =>
  auditOf([{ ...FULL, ...change }], [], country).findings.find((finding) => finding.rule === rule)?.message;

describe("V02, condemned, rejected or retired", () => {
  table("V02", [
    [{ Status: "in service" }, "nothing"],
    [{ Status: null }, "nothing"],
    [{ Status: "CONDEMNED" }, "stop"],
    [{ Status: "Rejected - neck" }, "stop"],
    [{ Status: "retired" }, "stop"],
    [{ Status: "not condemned" }, "nothing"],
    // a date says from when
    [{ Status: "condemned 2026/12" }, "nothing"],
    [{ Status: "condemned 2026-11-13" }, "nothing"],
    [{ Status: "condemned 2026-11-12" }, "stop"],
    [{ Status: "condemned 2026/11" }, "stop"],
    [{ Status: "condemned 2026/13" }, "stop"],
    [{ Status: "condemned 2026-11-12", Date: null }, "not checked: fill date is blank"],
  ]);
  it("is law in the US, practice elsewhere", () => {
    const basis = (country: string) =>
      auditOf([{ ...FULL, Status: "scrapped" }], [], country).findings.find(({ rule }) => rule === "V02")
        ?.basis;
    expect([basis("US"), basis("GB")]).toEqual(["law", "practice"]);
  });
});

describe("V08, after heat, fire, a fall or dents", () => {
  table("V08", [
    [{ Status: "dropped" }, "stop"],
    [{ Status: "was in a fire" }, "stop"],
    [{ Status: "no dents" }, "nothing"],
    [{ Status: "fell off the boat 2026/06" }, "stop"],
    // a hydro since, in the same month or later, clears it; one before does not
    [{ Status: "fell off the boat 2026/06", Hydro: "2026/06" }, "nothing"],
    [{ Status: "fell off the boat 2026/06", Hydro: "2026/07" }, "nothing"],
    [{ Status: "fell off the boat 2026/06", Hydro: "2026/05" }, "stop"],
    [{ Status: "fell off the boat 2026/12" }, "nothing"],
  ]);
});

describe("V03 and V07, above its pressure", () => {
  const steel = { Class: "3AA", Material: "steel", Alloy: null, "Service psi": 2400, Hydro: "10/24+" };
  table("V03", [
    [{ "End psi": 3000 }, "nothing"],
    [{ "End psi": 3001 }, "warn"],
    // within 3 %: a gauge may be off by that
    [{ "End psi": 3090 }, "warn"],
    [{ "End psi": 3400 }, "stop"],
    [{ "End psi": "207 bar" }, "nothing"],
    // warm, and settled from its temperature (real gas): 3300 psi at 120 °F is about 2900 at 70 °F
    [{ "End psi": 3300, "Gas temp F": 120 }, "nothing"],
    [{ "End psi": 3900, "Gas temp F": 120 }, "stop"],
    // cold: what is below the limit now is above it at 70 °F
    [{ "End psi": 2900, "Gas temp F": 50 }, "warn"],
    // 0 may be a blank cell: it settles nothing, and passes nothing
    [{ "End psi": 2990, "Gas temp F": 0 }, "not checked: gas temperature of 0 may be a blank cell"],
    // without a temperature, what 25 °C above the reference explains (about 8 psi to the °F near 3,000 psi) is a warning
    [{ "End psi": 3100, "Gas temp F": null }, "warn"],
    [{ "End psi": 3400, "Gas temp F": null }, "warn"],
    [{ "End psi": 3500, "Gas temp F": null }, "stop"],
    // the stamp and the size say a pressure too: the lowest counts
    [{ "Service psi": null, Class: "DOT-3AL-3000", "End psi": 3400 }, "stop"],
    [{ "Service psi": 3300, Class: "DOT-3AL-3000", "End psi": 3400 }, "stop"],
    [{ "Service psi": 6000, Size: "AL80", "End psi": 3400 }, "stop"],
    [{ "Service psi": "n/k", Class: "DOT-3AL-3000", "End psi": 3400 }, "stop"],
    [{ "Service psi": "n/k", Class: "DOT-3AL-3000" }, "not checked: service pressure cannot be read"],
    // a hot and cold pair, and a settled column, are settled already
    [{ "End psi": "3400/3000", "Gas temp F": 120 }, "nothing"],
    [{ "End psi": 3600, "Gas temp F": null, "Settled psi": 2995 }, "nothing"],
    [{ "End psi": 3600, "Gas temp F": 150, "Settled psi": 3400 }, "stop"],
    [{ "End psi": 3600, "Settled psi": "full" }, "not checked: settled pressure cannot be read"],
    [{ "Service psi": null }, "not checked: service pressure is blank"],
    [{ "End psi": null, Price: 9 }, "not checked: end pressure is blank"],
    [{ "End psi": 3400, Class: "3ZZ", Alloy: null }, `not checked: ${UNRATED_CLASS}`],
    // the plus: 110 % while the latest test carries it
    [{ ...steel, "End psi": 2640 }, "nothing"],
    [{ ...steel, "End psi": 2641 }, "warn"],
    [{ ...steel, "End psi": 2719 }, "warn"],
    [{ ...steel, "End psi": 2760 }, "stop"],
    [{ ...steel, "End psi": 2640, Date: null }, "not checked: fill date is blank"],
    [{ ...steel, "End psi": 2640, Hydro: "N/A" }, "not checked: hydro cannot be read"],
  ]); // prettier-ignore
  table("V07", [
    [{ "End psi": 3300 }, "stop"],
    [{ "End psi": 3091 }, "stop"],
    [{ "End psi": 3090 }, "nothing"],
    [{ "End psi": 3399 }, "stop"],
    [{ "End psi": 3400 }, "nothing"],
    // retested without the plus: lost until another test earns it again
    [{ ...steel, Hydro: "10/24", "End psi": 2640 }, "stop"],
    [{ ...steel, "End psi": 2640 }, "nothing"],
    [{ ...steel, Hydro: "10/24", "Previous hydro": "11/19+", "End psi": 2640 }, "stop"],
    [{ ...steel, Hydro: "10/24+", "Previous hydro": "11/19", "End psi": 2640 }, "nothing"],
    [{ ...steel, Class: "E-STEEL", "End psi": 2640 }, "stop"],
  ]); // prettier-ignore

  it("give one finding between them, which says what is wrong", () => {
    for (const psi of [3050, 3200, 3500]) {
      const { findings } = auditOf([{ ...FULL, "End psi": psi }]);
      expect(findings.map(({ rule }) => rule)).toHaveLength(1);
    }
    expect(message("V07", { "End psi": 3300 })).toBe(
      "Filled to 3,300 psi, above the service pressure of 3,000 psi: a cylinder of this class (Aluminium, alloy 6061 (DOT-3AL, TC-3ALM)) can have no plus.",
    );
    expect(message("V07", { ...steel, Hydro: "10/24", "End psi": 2640 })).toContain(
      "the latest test, 2024-10, carries no plus",
    );
    expect(message("V03", { "End psi": 3500, "Gas temp F": null })).toBe(
      "Filled to 3,500 psi (as read: no temperature is logged), above the 3,000 psi it may hold.",
    );
    expect(message("V03", { "End psi": 2990, "Gas temp F": 5 })).toMatch(
      /^Filled to 2,990 psi, which settles at 3,\d{3} psi, above the 3,000 psi it may hold\.$/,
    );
    expect(message("V03", { "End psi": 3200, "Gas temp F": null })).toBe(
      "Filled to 3,200 psi (as read: no temperature is logged), above the 3,000 psi it may hold, as a cylinder reads that is still warm from filling (115 °F).",
    );
  });

  it("know no plus in Britain, where 15 °C is the reference", () => {
    const bar = {
      ...without(FULL, "End psi", "Service psi"),
      "Service bar": 232,
      "End bar": 232,
      "Gas temp F": null,
    };
    const of = (change: TestRow) => verdictOf("V03", change, { country: "GB", row: bar });
    expect(of({})).toBe("nothing");
    expect(of({ "End bar": 233 })).toBe("warn");
    expect(of({ "End bar": 240 })).toBe("warn");
    expect(of({ "End bar": 280 })).toBe("stop");
    expect(verdictOf("V07", { "End bar": 280 }, { country: "GB", row: bar })).toBe("nothing");
    // 232 bar at 21 °C settles below it at 15 °C
    expect(of({ "End bar": 235, "Gas temp F": 70 })).toBe("nothing");
  });
});

describe("V01 where a country has more to say", () => {
  const inFrance = (change: TestRow) =>
    verdictOf("V01", { Class: "TIV", Alloy: null, Hydro: "2022-01-10", ...change }, { country: "FR" });
  it("France: six years while the yearly inspections are unbroken, else two", () => {
    expect(inFrance({ Visual: "2026-01-10" })).toBe("nothing");
    expect(inFrance({ Visual: "2025-01-10" })).toBe("stop");
    expect(inFrance({ Visual: "2025-01-10", Hydro: "2025-01-10" })).toBe("nothing");
    expect(inFrance({ Visual: "??" })).toBe("not checked: whether the visuals are unbroken is not known");
    expect(inFrance({ Visual: "2026-01-10", Hydro: "2020-11-12" })).toBe("nothing");
    expect(inFrance({ Visual: "2026-01-10", Hydro: "2020-11-11" })).toBe("stop");
  });
  it("Japan: three years for steel made before April 1989", () => {
    const inJapan = (Made: string, Hydro: string) =>
      verdictOf("V01", { Class: null, Alloy: null, Material: "steel", Made, Hydro }, { country: "JP" });
    expect([inJapan("1989/03", "2023/11"), inJapan("1989/03", "2023/10")]).toEqual(["nothing", "stop"]);
    expect([inJapan("1989/04", "2021/11"), inJapan("1989/04", "2021/10")]).toEqual(["nothing", "stop"]);
  });
});

describe("V03 and V07, of a cylinder whose class is not written", () => {
  const kindless: TestRow = {
    Class: null,
    Material: null,
    Alloy: null,
    "Service psi": 2400,
    "End psi": 2640,
  };
  const said = (change: TestRow) => {
    const { findings, notChecked } = auditOf([
      without({ ...FULL, ...kindless, ...change }, "Class", "Material", "Alloy"),
    ]);
    const faults = findings.filter(({ rule }) => rule === "V03" || rule === "V07");
    const lacks = notChecked.filter(({ rule }) => rule === "V03" || rule === "V07");
    return [...faults.map(({ rule, message }) => `${rule}: ${message}`), ...lacks.map(({ why }) => why)];
  };

  it("a plus on the latest test shows that it may have one, and its absence that it has none", () => {
    expect(said({ Hydro: "10/24+" })).toEqual([]);
    expect(said({ Hydro: "10/24" })).toEqual([
      "V07: Filled to 2,640 psi, above the service pressure of 2,400 psi: the latest test, 2024-10, carries no plus.",
    ]);
    expect(said({ Hydro: "10/24+", "End psi": 2900 })).toEqual([
      "V03: Filled to 2,900 psi, above the 2,640 psi with its plus it may hold.",
    ]);
  });
});

describe("V04, past its service life", () => {
  const composite = { Class: "SP12479", Material: "composite", Alloy: null };
  table("V04", [
    [{}, "nothing"],
    [{ ...composite, Made: "2011/11" }, "nothing"],
    [{ ...composite, Made: "2011/10" }, "stop"],
    // no later test lengthens it
    [{ ...composite, Made: "2011/10", Hydro: "2026/10" }, "stop"],
    [{ ...composite, Made: null }, "not checked: manufacture date is blank"],
    [{ ...composite, Made: "2011/10", Date: null }, "not checked: fill date is blank"],
    [{ Class: "3HT", Made: "2002/11", Alloy: null }, "nothing"],
    [{ Class: "3HT", Made: "2002/10", Alloy: null }, "stop"],
    [{ Class: "3ZZ", Alloy: null }, `not checked: ${UNRATED_CLASS}`],
  ]);

  it("composite in Japan too", () => {
    const of = (Made: string) =>
      verdictOf("V04", { Class: "composite", Made, Alloy: null }, { country: "JP" });
    expect([of("2011/11"), of("2011/10")]).toEqual(["nothing", "stop"]);
  });
});

describe("V05, alloy 6351", () => {
  const cracking = { Alloy: "6351-T6" };
  const ofItsYears = { Class: "3AL", Alloy: null, Made: "1985/06" };
  table("V05", [
    [{}, "nothing"],
    [cracking, "stop"],
    [{ ...cracking, "Eddy current": "2021/11" }, "nothing"],
    [{ ...cracking, "Eddy current": "2021/10" }, "stop"],
    // the mark VE behind a hydro stands for it
    [{ ...cracking, Hydro: "10/24 VE" }, "nothing"],
    [{ ...cracking, "Eddy current": "2027/01" }, "stop"],
    [{ ...cracking, "Eddy current": "??" }, "not checked: eddy current cannot be read"],
    [{ ...cracking, Date: null }, "not checked: fill date is blank"],
    // not proven: by exemption number, or by its years
    [{ Class: "E6498", Alloy: null }, "breach"],
    [{ Class: "E6498", Alloy: "6061" }, "nothing"],
    [ofItsYears, "breach"],
    [{ ...ofItsYears, Made: "1972/01" }, "breach"],
    [{ ...ofItsYears, Made: "1971/12" }, "nothing"],
    [{ ...ofItsYears, Made: "1988/12" }, "breach"],
    [{ ...ofItsYears, Made: "1989/01" }, "nothing"],
    [{ ...ofItsYears, Class: "3AA", Material: "steel" }, "nothing"],
    [{ ...ofItsYears, "Eddy current": "2024/01" }, "nothing"],
  ]);
  it("is not judged where the log has no column for the test, unless a hydro carries VE", () => {
    const row = without(FULL, "Eddy current");
    expect(verdictOf("V05", cracking, { row })).toBe("not checked: the log has no column for eddy current");
    expect(verdictOf("V05", { ...cracking, Hydro: "10/24 VE" }, { row })).toBe("nothing");
  });
  it("is not asked for in Britain", () => {
    expect(verdictOf("V05", cracking, { country: "GB" })).toBe("nothing");
  });
});

describe("V10 and V11, marks that are no hydro for a diver", () => {
  table("V10", [
    [{ Hydro: "11/21*" }, "nothing"],
    [{ Hydro: "10/21*" }, "stop"],
    [{ Hydro: "10/21" }, "nothing"],
    [{ Hydro: "10/21*", Date: null }, "not checked: fill date is blank"],
  ]);
  table("V11", [
    [{ Hydro: "10/24 E", Made: "2014/03" }, "stop"],
    [{ Hydro: "10/24 E", Made: "2021/11" }, "nothing"],
    [{ Hydro: "10/24 E", Made: "2021/10" }, "stop"],
    [
      { Hydro: "10/24 E", Made: null },
      "not checked: only an external visual is on record, and no manufacture date",
    ],
    [{ Hydro: "10/24 E", "Previous hydro": "11/21" }, "nothing"],
    [{ Hydro: "10/24 E", "Previous hydro": "10/21" }, "stop"],
    [{ Hydro: "10/24 UE" }, "nothing"],
    // a hydro later than the fill proves nothing about it; of two before it the one that held longer counts
    [{ Hydro: "10/24 E", "Previous hydro": "12/26", Made: "2014/03" }, "stop"],
    [{ Hydro: "10/24 E", "Previous hydro": "10/21", Made: "2021/11" }, "stop"],
    [{ Hydro: null }, "nothing"],
  ]);
  it("V11 holds in every country an E may come from, and is good to the last day", () => {
    const e = { Hydro: "10/24 E", Made: "2014/03" };
    expect(verdictOf("V11", e, { country: "GB" })).toBe("stop");
    const onDay = (Date: string) => verdictOf("V11", { ...e, Made: "2021/11", Date });
    expect([onDay("2026-11-30"), onDay("2026-12-01")]).toEqual(["nothing", "stop"]);
  });
});

describe("V12 and V13, classes that have no place here", () => {
  table("V12", [
    [{ Class: "UN-ISO11119", Alloy: null }, "stop"],
    [{ Class: "UN-ISO11119 UW", Alloy: null }, "nothing"],
    [{ Class: "SP10915", Alloy: null }, "stop"],
    [{}, "nothing"],
  ]);
  table("V13", [
    [{ Class: "3HT", Alloy: null }, "breach"],
    [{ Class: "CE", Alloy: null }, "breach"],
    [{}, "nothing"],
    [{ Class: "3ZZ", Alloy: null }, `not checked: ${UNRATED_CLASS}`],
  ]);
});

describe("V14, threads of neck and valve", () => {
  table("V14", [
    [{}, "nothing"],
    [{ "Neck thread": "M25x2", "Valve thread": "M25 x 2 ISO" }, "nothing"],
    [{ "Neck thread": "M25x2", "Valve thread": "3/4 NPSM" }, "stop"],
    [{ "Neck thread": "3/4 BSP", "Valve thread": "3/4 NPSM" }, "stop"],
    [{ "Neck thread": "G3/4", "Valve thread": "3/4 BSP" }, "nothing"],
    [{ "Neck thread": '0.75" NPSM', "Valve thread": "3/4-14 NPSM" }, "nothing"],
    [{ "Neck thread": ".75 NPSM", "Valve thread": "¾ NPSM" }, "nothing"],
    [{ "Neck thread": "M25×2", "Valve thread": "m25x2" }, "nothing"],
    [{ "Neck thread": "M18x1.5", "Valve thread": "M18 x 1.5" }, "nothing"],
    [{ "Neck thread": "M25x2", "Valve thread": "M18x1.5" }, "stop"],
    [{ "Neck thread": "3/4 NPSM", "Valve thread": "M25x2" }, "stop"],
    [{ "Neck thread": "R3/4", "Valve thread": "G3/4" }, "nothing"],
    [{ "Neck thread": "¾ BSP", "Valve thread": "3/4 G" }, "nothing"],
    // of threads that are not told apart here, the same words are the same thread
    [{ "Neck thread": "17E", "Valve thread": "17E" }, "nothing"],
    [{ "Neck thread": "17E", "Valve thread": "25E" }, "stop"],
    [{ "Valve thread": null }, "not checked: valve thread is blank"],
    [{ "Neck thread": null }, "not checked: neck thread is blank"],
  ]);
});

describe("V15, a missed visual made good by a visual", () => {
  const tested = (change: TestRow): TestRow => ({ Made: "2014/03", Hydro: "2019/01", ...change });
  table(
    "V15",
    [
      // due by July 2021
      [tested({ "Previous visual": "2021/07", Visual: "2023/12" }), "nothing"],
      [tested({ "Previous visual": "2021/07", Visual: "2024/01" }), "nothing"],
      [tested({ "Previous visual": "2021/07", Visual: "2024/02" }), "breach"],
      // nothing but the last one is on record
      [tested({ Visual: "2021/07" }), "nothing"],
      [tested({ Visual: "2021/08" }), "not checked: the visuals before the last are not on record"],
      [tested({ "Previous visual": "2021/07", Visual: "2026/12" }), "nothing"],
      [tested({ Made: null, Hydro: null, "Previous visual": null, Visual: "2021/07" }), "nothing"],
      // a hydro since makes it good
      [tested({ "Previous visual": "2021/07", Visual: "2024/02", Hydro: "2024/05" }), "nothing"],
      [
        tested({ "Previous visual": "2021/07", Visual: "2024/02", Date: null }),
        "not checked: fill date is blank",
      ],
    ],
    "GB",
  );
  it("is no rule in the US", () => {
    const change = tested({ "Previous visual": "2021/07", Visual: "2024/02" });
    expect(verdictOf("V15", change)).toBe("nothing");
  });
});

describe("V17 and V18, as it came in", () => {
  table("V17", [
    [{ "Start psi": 50 }, "nothing"],
    [{ "Start psi": 49 }, "warn"],
    [{ "Start psi": 0 }, "warn"],
    [{ "Start psi": "empty" }, "warn"],
    [{ "Start psi": null }, "not checked: start pressure is blank"],
    // straight from a look inside, in this month or the last
    [{ "Start psi": 0, Visual: "2026/10" }, "nothing"],
    [{ "Start psi": 0, Visual: "2026/09" }, "warn"],
    [{ "Start psi": 0, Hydro: "2026/11" }, "nothing"],
    [{ "Start psi": 0, Visual: "2026/12" }, "warn"],
  ]);
  it("V17 is 3 bar where gauges show bar", () => {
    const row = { ...without(FULL, "Start psi", "End psi", "Service psi"), "End bar": 200 };
    const of = (start: number) => verdictOf("V17", { "Start bar": start }, { row, country: "DE" });
    expect([of(3), of(2.9)]).toEqual(["nothing", "warn"]);
  });
  table("V18", [
    [{ "External check": "ok" }, "nothing"],
    [{ "External check": null }, "warn"],
    [{ "External check": false }, "warn"],
  ]);
  it("V18 is law in the US and Norway, practice elsewhere", () => {
    const basis = (country: string) =>
      auditOf(
        [
          { ...FULL, "External check": null },
          { ...FULL, Serial: "ZZ9999" },
        ],
        [],
        country,
      ).findings.find(({ rule }) => rule === "V18")?.basis;
    expect(["US", "NO", "GB"].map(basis)).toEqual(["law", "law", "practice"]);
  });
});
