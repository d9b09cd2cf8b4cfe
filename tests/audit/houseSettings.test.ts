import { describe, expect, it } from "vitest";
import { problemWith, settingsFor, shopWith } from "../../src/audit/shop/limits";
import { shopOf, type HouseOverrides } from "../../src/audit/shop/shop";
import { COUNTRIES, countryRules } from "../../src/cylinders/countryRules";
import { auditOf, FULL, onDay, SHOP, verdictOf, type TestRow } from "./sheets";

const house = (figures: HouseOverrides) => ({ options: { ...SHOP, house: figures } });

describe.each(COUNTRIES)("the figures of $name", ({ code }) => {
  const rules = countryRules(code);
  const settings = settingsFor(rules);
  it("have an id each, a name, a source, and a value within their limits", () => {
    expect(new Set(settings.map(({ id }) => id)).size).toBe(settings.length);
    const shop = shopOf(rules);
    for (const setting of settings) {
      expect(setting.name.length).toBeGreaterThan(5);
      expect(setting.source.length).toBeGreaterThan(2);
      expect(problemWith(setting, setting.of(shop))).toBeUndefined();
    }
  });
  it("can be set, each alone: what is read back is what was set, and nothing else moved", () => {
    const usual = shopOf(rules);
    for (const setting of settings) {
      const { limits } = setting;
      const other =
        "choices" in limits ? limits.choices.find((each) => each !== setting.of(usual))! : limits.most;
      const { shop, overrides } = shopWith(rules, { [setting.id]: other });
      expect([setting.id, setting.of(shop)]).toEqual([setting.id, other]);
      const moved = settings.filter((each) => each.of(shop) !== each.of(usual)).map(({ id }) => id);
      expect(moved).toEqual(other === setting.of(usual) ? [] : [setting.id]);
      expect(overrides.map(({ id }) => id)).toEqual(moved);
    }
  });
});

describe("a shop's own interval", () => {
  const filled = (hydro: string): TestRow => ({ Hydro: hydro, Visual: "2026/05", Date: onDay("2026-11-12") });
  const stricter = house({ "US-3AL.hydro.months": 36 });

  it("that is stricter breaks the rule of the house, until the law's date is past too", () => {
    expect(verdictOf("V01", filled("2023/11"), stricter)).toBe("nothing");
    expect(verdictOf("V01", filled("2023/10"), stricter)).toBe("breach");
    expect(verdictOf("V01", filled("2021/11"), stricter)).toBe("breach");
    expect(verdictOf("V01", filled("2021/10"), stricter)).toBe("stop");
    const found = auditOf([{ ...FULL, ...filled("2023/10") }], [], "US", stricter.options).findings.at(0);
    expect([found?.basis, found?.source]).toEqual(["house", "rule of this shop"]);
  });

  it("that is laxer holds, is listed, and past it the law speaks", () => {
    const laxer = house({ "US-3AL.hydro.months": 72 });
    expect(verdictOf("V01", filled("2021/10"), laxer)).toBe("nothing");
    expect(verdictOf("V01", filled("2020/10"), laxer)).toBe("stop");
    expect(auditOf([FULL], [], "US", laxer.options).overrides).toEqual([
      {
        id: "US-3AL.hydro.months",
        name: "Aluminium, alloy 6061 (DOT-3AL, TC-3ALM): Hydro every",
        figure: "72 months",
        instead: "60 months",
        source: "49 CFR 180.205(c) and 180.209 Table 1",
      },
    ]);
  });

  it("holds for its class alone, and the first one from manufacture", () => {
    expect(verdictOf("V01", { ...filled("2023/10"), Class: "3AA", Material: "steel" }, stricter)).toBe(
      "nothing",
    );
    const first = { country: "IT", ...house({ "IT.hydro.firstMonths": 24 }) };
    const made = (month: string): TestRow => ({ Hydro: null, Made: month });
    expect(verdictOf("V01", made("2024/11"), first)).toBe("nothing");
    expect(verdictOf("V01", made("2024/10"), first)).toBe("breach");
    expect(verdictOf("V01", made("2022/10"), first)).toBe("stop");
  });
});

describe("other figures of the house", () => {
  it("a visual to the first of the month, or to the day", () => {
    const first = house({ visualDue: "first of month" });
    const on = (date: string, setting = first) =>
      verdictOf("V06", { Visual: "2025/11", Hydro: "2024/10", Date: onDay(date) }, setting);
    expect([on("2026-10-31"), on("2026-11-01")]).toEqual(["nothing", "breach"]);
    expect([on("2026-11-30", house({})), on("2026-12-01", house({}))]).toEqual(["nothing", "breach"]);
  });
  it("a hydro that counts as no visual", () => {
    const change = { Visual: "2025/05", Hydro: "2026/05" };
    expect(verdictOf("V06", change)).toBe("nothing");
    expect(verdictOf("V06", change, house({ hydroCountsAsVisual: "no" }))).toBe("breach");
  });
  it.each([
    ["analyserMarginPoints", 1, "O02", { "O2 rating": "40", "Ordered mix": "EAN40", "Analysed O2 %": 41 }, "stop", "warn"],
    ["airOnlyMaxPercent", 40, "O02", { "O2 rating": "AIR" }, "stop", "nothing"],
    ["cleanAbovePercent", 23.5, "O01", { "O2 rating": "40", Method: "premix", "O2 added psi": null }, "nothing", "stop"],
    ["cleanMonths", 24, "O04", { "O2 cleaned": "2025/01" }, "stop", "nothing"],
    ["mixTolerancePoints", 2, "G03", { "Analysed O2 %": 33.5 }, "breach", "nothing"],
    ["mixToleranceStopPoints", 5, "G03", { "Analysed O2 %": 36 }, "stop", "breach"],
    ["startMinimumBar", 10, "V17", { "Start psi": 100 }, "nothing", "warn"],
    ["continuousMaxPercent", 36, "O07", { Method: "continuous", "Ordered mix": "EAN40", "Analysed O2 %": 40 }, "nothing", "stop"],
    ["readingErrorPercent", 1, "V07", { "End psi": 3050 }, "nothing", "stop"],
    ["airTestMonths", 1, "A01", {}, "nothing", "breach"],
    ["airMostPercent", 23, "G04", { "Ordered mix": "air", "Start mix": "air", "Analysed O2 %": 22.5 }, "stop", "nothing"],
  ] as const)("%s %s: %s", (id, figure, rule, change, usual, own) => {
    expect(verdictOf(rule, change)).toBe(usual);
    expect(verdictOf(rule, change, house({ [id]: figure }))).toBe(own);
  }); // prettier-ignore

  it("one that cannot be is not used, and said so", () => {
    const { overrides } = auditOf([FULL], [], "US", { house: { maxPpO2: 14, visualDue: "never" } });
    expect(overrides.map(({ id, problem }) => [id, problem])).toEqual([
      ["visualDue", "Choose end of month or first of month or exact date."],
      ["maxPpO2", "Write a number from 1 to 1.6."],
    ]);
    expect(verdictOf("G02", { "MOD (ft)": 111 }, house({ maxPpO2: 14 }))).toBe("nothing");
    expect(verdictOf("G02", { "MOD (ft)": 112 }, house({ maxPpO2: 14 }))).toBe("warn");
  });

  it("one that is as it came is none, and one of another country is not heard of here", () => {
    expect(shopWith(countryRules("US"), { maxPpO2: 1.4, "GB.hydro.months": 12 }).overrides).toEqual([]);
  });
});
