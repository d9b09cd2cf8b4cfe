import { describe, expect, it } from "vitest";
import { settingsFor } from "../../src/audit/shop/limits";
import { sourceFor } from "../../src/audit/shop/citation";
import { COUNTRIES, countryRules } from "../../src/cylinders/countryRules";
import { auditOf, FULL, onDay, SHOP, without, type TestRow } from "./sheets";

/* A finding by custom names the country's own source where there is one; where there is none, it says whose it took. */

describe("the source of a finding by custom", () => {
  it.each([
    // of several, the country's own
    ["US", "EN 12021; CGA G-7.1", "CGA G-7.1"],
    ["GB", "EN 12021; CGA G-7.1", "EN 12021"],
    ["FI", "Queensland guidance on enriched air; Tukes", "Tukes"],
    ["NO", "Arbeidstilsynet regulation 25-15; German filling practice", "Arbeidstilsynet regulation 25-15"],
    ["CA-NB", "New Brunswick Reg. 91-191 s. 339; BS EN 1920", "New Brunswick Reg. 91-191 s. 339"],
    // none of its own
    [
      "GB",
      "NOAA Diving Manual ch. 15",
      "no rule of the United Kingdom found; taken from NOAA Diving Manual ch. 15 (United States)",
    ],
    [
      "JP",
      "EN 12021; CGA G-7.1",
      "no rule of Japan found; taken from EN 12021 (European standard); CGA G-7.1 (United States)",
    ],
    [
      "IT",
      "29 CFR 1910 Subpart T Appendix C para. 3; agency practice",
      "no rule of Italy found; taken from 29 CFR 1910 Subpart T Appendix C para. 3 (United States); agency practice",
    ],
    // nobody's in particular
    ["JP", "common practice, no source", "common practice, no source"],
    ["FR", "training agencies' practice", "training agencies' practice"],
  ])("%s, %s: %s", (country, source, expected) => {
    const rules = countryRules(country);
    expect(sourceFor(rules, { basis: "practice", source })).toBe(expected);
    expect(sourceFor(rules, { basis: "practice", source })).toBe(expected);
  });

  it("law is the country's own", () => {
    const source = "49 CFR 173.301(a)(2); Arbeidstilsynet regulation 25-15";
    expect(sourceFor(countryRules("NO"), { basis: "law", source })).toBe("Arbeidstilsynet regulation 25-15");
    expect(sourceFor(countryRules("US"), { basis: "law", source })).toBe("49 CFR 173.301(a)(2)");
  });

  it("law and the rule of the shop stand as they are", () => {
    for (const basis of ["law", "house"] as const)
      expect(sourceFor(countryRules("GB"), { basis, source: "49 CFR 180.205" })).toBe("49 CFR 180.205");
  });
});

it("figures that a shop can set say whose they are, country by country", () => {
  const sourceOf = (country: string, id: string) =>
    settingsFor(countryRules(country)).find((setting) => setting.id === id)?.source;
  expect(sourceOf("FR", "mostPpO2")).toBe("Code du sport art. A322-92");
  expect(sourceOf("GB", "mostPpO2")).toBe(
    "no rule of the United Kingdom found; taken from Code du sport art. A322-92 (France)",
  );
  expect(sourceOf("US", "airMostPercent")).toBe("CGA G-7.1");
  expect(sourceOf("NO", "startMinimumBar")).toBe("Arbeidstilsynet regulation 25-15");
  expect(sourceOf("US", "visualDue")).toContain("US trade practice");
  expect(sourceOf("GB", "visualDue")).toMatch(
    /^no rule of the United Kingdom found; taken from US trade practice/,
  );
  expect(sourceOf("GB", "GB.hydro.months")).toMatch(/^BS EN ISO 18119/);
});

describe("findings in every country", () => {
  /** Whose each source is, told apart from the rules under test: the US code of federal regulations is of the US only. */
  const FOREIGN: readonly (readonly [RegExp, readonly string[]])[] = [
    [/\d CFR|NOAA/, ["US"]],
    [/CGA/, ["US", "CA", "CA-NB"]],
    [/Code du sport/, ["FR"]],
    [/Tukes/, ["FI"]],
    [/Arbeidstilsynet/, ["NO"]],
    [/Queensland/, ["AU"]],
    [/New Brunswick/, ["CA", "CA-NB"]],
  ];
  const wrong: TestRow[] = [
    { ...FULL, "Analysed O2 %": 50, "O2 rating": "AIR", "Planned depth (ft)": 200, "MOD (ft)": 200 },
    { ...FULL, "Analysed O2 %": null, "Filled by": null, Signature: null, "MOD (ft)": null, Consent: null },
    { ...FULL, Hydro: "2015/01*", Visual: "2019/01", Status: "dropped", "External check": null },
    {
      ...FULL,
      Method: "air",
      "Ordered mix": "air",
      "Analysed O2 %": 19,
      "Start psi": 0,
      "Valve thread": "M25x2",
    },
    { ...FULL, Hydro: null, Made: null, "O2 cleaned": "2019/01", Certification: null },
    { ...without(FULL, "Hydro"), Hydro: "10/24 E", Made: "2001/01", Date: onDay("2027-11-12") },
  ].map((row, at) => ({ ...row, Serial: `AB${2000 + at}` }));

  it.each(COUNTRIES.map(({ code }) => code))("%s: no foreign source stands as its own", (code) => {
    const { findings } = auditOf(wrong, [], code, SHOP);
    expect(findings.length).toBeGreaterThan(20);
    for (const { rule, source, basis } of findings) {
      const foreign = FOREIGN.filter(([words, countries]) => words.test(source) && !countries.includes(code));
      if (foreign.length > 0)
        expect([rule, basis, source]).toEqual([rule, "practice", expect.stringMatching(/^no rule of /)]);
    }
  });
});
