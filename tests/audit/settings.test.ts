import { describe, expect, it } from "vitest";
import { inUnit, problemWith, settingsFor, shopWith } from "../../src/audit/shop/limits";
import { ruleInWords } from "../../src/audit/rules/ruleInWords";
import { shopOf } from "../../src/audit/shop/shop";
import { shopFor } from "../../src/audit/shop/shopFor";
import { countryRules } from "../../src/cylinders/countryRules";

/** The settings of a country as the form shows them. */
function form(country: string): ReadonlyMap<string, string> {
  const rules = countryRules(country);
  const shop = shopOf(rules);
  return new Map(
    settingsFor(rules).map((setting) => {
      const { id, group, name, basis, source } = setting;
      return [id, `${group}: ${name} ${inUnit(setting.of(shop), setting)} (${basis}: ${source})`];
    }),
  );
}

describe("the settings of a shop", () => {
  it.each([
    ["US", "visualDue", "Tests: A visual holds to the end of month (practice: US trade practice: end of month; some inspectors: first of month)"],
    ["US", "hydroCountsAsVisual", "Tests: A hydro counts as a visual yes (practice: 49 CFR 180.205(f))"],
    ["US", "airOnlyMaxPercent", "Oxygen: A cylinder marked air only may have 23.5 % oxygen (practice: CGA G-4.1)"],
    ["US", "cleanAbovePercent", "Oxygen: Oxygen clean is needed for gas above 40 % oxygen (practice: 29 CFR 1910.430(i); NOAA Diving Manual ch. 15)"],
    ["US", "cleanMonths", "Oxygen: An oxygen cleaning holds 12 months (practice: common practice, no source)"],
    ["US", "mostPpO2", "Gas analysis: Oxygen pressure for deco gas, and at the planned depth: a stop beyond 1.6 ata or bar (practice: no rule of the United States found; taken from Code du sport art. A322-92 (France))"],
    ["US", "US-3AL.hydro.months", "Aluminium, alloy 6061 (DOT-3AL, TC-3ALM): Hydro every 60 months (law: 49 CFR 180.205(c) and 180.209 Table 1)"],
    ["US", "US-3AL.visual.months", "Aluminium, alloy 6061 (DOT-3AL, TC-3ALM): Visual every 12 months (practice: US trade practice; no federal interval)"],
    ["US", "US-SP-CFFC.serviceLifeMonths", "Carbon composite of breathing-apparatus type (such as permit 10915): Service life 180 months (law: special permit 10915)"],
    ["US", "US-SP-CFFC.oxygenMaxPercent", "Carbon composite of breathing-apparatus type (such as permit 10915): Oxygen at most 39 % (law: special permit 10915)"],
    ["FR", "FR-TIV.hydro.months", "Metal cylinder on a register with yearly inspection: Hydro every 72 months (law: Arrêté du 20 novembre 2017)"],
  ])("in %s, %s", (country, id, shown) => {
    expect(form(country).get(id)).toBe(shown);
  }); // prettier-ignore

  it("have none for what a country does not ask, or forbids", () => {
    expect(form("IT").has("visualDue")).toBe(false);
    expect([...form("IT").keys()].filter((id) => id.includes("visual"))).toEqual([]);
    expect([...form("NZ").keys()].filter((id) => id.startsWith("NZ-6351"))).toEqual([]);
    expect([...form("US").keys()].filter((id) => id.startsWith("US-3HT.visual"))).toEqual([]);
  });

  it("of a province are those of its country", () => {
    const [province, country] = [form("CA-NB"), form("CA")];
    expect(province.get("airTestMonths")).toBe(country.get("airTestMonths"));
    expect(shopOf(countryRules("CA-NB")).figures).toEqual(shopOf(countryRules("CA")).figures);
  });

  it("refuse what is no number, and what lies outside", () => {
    const clean = settingsFor(countryRules("US")).find(({ id }) => id === "cleanMonths")!;
    const { least, most } = clean.limits as { least: number; most: number };
    const wrong = `Write a number from ${least} to ${most}.`;
    expect([least, most].map((value) => problemWith(clean, value))).toEqual([undefined, undefined]);
    expect([least - 1, most + 1, Number.NaN, "12"].map((value) => problemWith(clean, value))).toEqual([
      wrong,
      wrong,
      wrong,
      wrong,
    ]);
    const { shop, overrides } = shopWith(countryRules("US"), {
      cleanMonths: most + 1,
      hydroCountsAsVisual: "no",
    });
    expect(shop.rules.oxygen.cleanMonths).toBe(12);
    expect(shop.rules.cylinders.some(({ hydroCountsAsVisual }) => hydroCountsAsVisual)).toBe(false);
    expect(overrides.map(({ name, figure, instead, problem }) => [name, figure, instead, problem])).toEqual([
      ["Tests: A hydro counts as a visual", "no", "yes", undefined],
      ["Oxygen: An oxygen cleaning holds", `${most + 1} months`, "12 months", wrong],
    ]);
    expect(overrides[0]).not.toHaveProperty("problem");
  });
});

describe("what a shop has told besides", () => {
  const US = countryRules("US");

  it("is kept: air tests by their day, sources, and the day of the audit", () => {
    const sources = [{ name: "Bank A" }];
    const days = ["2026-09-01", "2026-01-01", "2026-05-01"];
    const { shop } = shopFor(US, {
      airTests: days.map((date) => ({ date, passed: true })),
      sources,
      asOf: "1970-01-11",
    });
    expect(shop.airTests?.map(({ date }) => date)).toEqual(["2026-01-01", "2026-05-01", "2026-09-01"]);
    expect(shop.sources).toBe(sources);
    expect(shop.today).toBe(10);
  });

  it("is not there where nothing was told", () => {
    const { shop } = shopFor(US);
    expect(["airTests", "sources", "today"].filter((told) => told in shop)).toEqual([]);
  });
});

describe("a rule in words", () => {
  it("is its id and title; of a rule nobody knows its id", () => {
    expect(ruleInWords("V03")).toBe("V03 Filled above its pressure");
    expect(ruleInWords("Z99")).toBe("Z99");
  });
});
