import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { LANGUAGES } from "../../src/log/vocabularies/languages";
import { COUNTRIES, countryInWords, countryRules } from "../../src/cylinders/countryRules";

const RULES = new URL("../../shared/rules/", import.meta.url);
const CYLINDERS = new URL("../../shared/cylinders/", import.meta.url);
const json = (url: URL): unknown => JSON.parse(readFileSync(url, "utf8"));

const basis = z.enum(["law", "practice"]);
const interval = z
  .strictObject({
    months: z.int().min(0).max(240),
    firstMonths: z.int().positive().optional(),
    due: z.enum(["end of month", "first of month", "exact date"]),
    countsFrom: z.literal("end of previous month").optional(),
    withoutVisualsMonths: z.int().positive().optional(),
    madeBefore: z
      .strictObject({ month: z.string().regex(/^\d{4}-\d{2}$/), months: z.int().positive() })
      .optional(),
    basis,
    source: z.string().min(3),
  })
  .nullable();

const cylinder = z.strictObject({
  id: z.string().regex(/^[A-Z]{2}[A-Z0-9-]*$/),
  name: z.string().min(3),
  classes: z.array(z.string().min(1)),
  materials: z.array(z.enum(["aluminium", "steel", "composite"])).optional(),
  alloys: z.array(z.string()).optional(),
  hydro: interval,
  visual: interval,
  hydroCountsAsVisual: z.boolean(),
  eddyCurrent: interval.optional(),
  serviceLifeMonths: z.int().positive().optional(),
  maxFills: z.int().positive().optional(),
  plusAllowed: z.literal(true).optional(),
  oxygenMaxPercent: z.number().min(21).max(100).optional(),
  oxygenMaxSource: z.string().optional(),
  pureOxygenMaxPsi: z.int().min(1000).optional(),
  pureOxygenSource: z.string().min(3).optional(),
  underWater: z.enum(["never", "only marked UW"]).optional(),
  underWaterSource: z.string().min(3).optional(),
  anyPermit: z.literal(true).optional(),
  notAuthorised: z.string().min(3).optional(),
  notAuthorisedSource: z.string().min(3).optional(),
  note: z.string().optional(),
  sources: z.array(z.string()).min(1),
  confidence: z.enum(["low", "medium", "medium-high", "high"]),
});

const country = z.strictObject({
  country: z.string().regex(/^[A-Z]{2}(-[A-Z]{2})?$/),
  name: z.string(),
  alsoCalled: z.array(z.string().regex(/^[A-Z]+$/)).optional(),
  inSentences: z.string().min(3).optional(),
  habits: z.strictObject({
    paper: z.enum(["A4", "Letter"]),
    units: z.enum(["us", "metric"]).optional(),
    dateOrder: z.enum(["day first", "month first"]).optional(),
    languages: z.array(z.enum(LANGUAGES)),
    spelling: z.enum(["American", "British"]),
    source: z.string().min(3),
  }),
  standards: z.array(
    z.strictObject({ begins: z.string().min(2), of: z.string().min(3), law: z.literal(true).optional() }),
  ),
  airTest: z.strictObject({ months: z.int().min(1).max(24), source: z.string().min(3) }).optional(),
  startMinimumPsi: z.number().positive().optional(),
  serviceLifeSource: z.string().min(3).optional(),
  stampOrder: z.enum(["month first", "year first"]).optional(),
  stampMeans: z.enum(["test", "due"]),
  visualMarks: z.array(z.string()).min(1),
  notLaw: z.string().min(20).optional(),
  alloy6351Years: z.strictObject({
    first: z.int().min(1960).max(1980),
    last: z.int().min(1985).max(2000),
    sources: z.array(z.string()).min(1),
  }),
  referenceTemperatureC: z.number().min(0).max(30),
  fillPressure: z.strictObject({ basis, source: z.string().min(3) }).optional(),
  missedVisualSource: z.string().min(3).optional(),
  note: z.string().min(10),
  cylinders: z.array(cylinder).min(1),
  oxygen: z.strictObject({
    airOnlyMaxPercent: z.number().min(21).max(40),
    airOnlySource: z.string().min(3),
    cleanAbovePercent: z.number().min(21).max(100),
    cleanBasis: basis,
    cleanSource: z.string().min(3),
    cleanMonths: z.int().positive(),
    cleanMonthsSource: z.string().min(3),
    note: z.string().optional(),
    sources: z.array(z.string()).min(1),
  }),
});

const sources = z.record(
  z.string(),
  z.strictObject({
    document: z.string().min(5),
    part: z.string().min(1),
    url: z.url().optional(),
    read: z.enum(["in full", "in part", "not read"]),
  }),
);

const sizes = z.strictObject({
  about: z.string(),
  sources: z.record(z.string(), z.string().min(5)),
  cylinders: z.array(
    z.strictObject({
      id: z.string(),
      names: z.array(z.string().min(2)).min(1),
      material: z.enum(["aluminium", "steel"]),
      waterVolumeL: z.number().min(0.2).max(40),
      count: z.union([z.literal(1), z.literal(2)]),
      servicePressure: z.number(),
      unit: z.enum(["psi", "bar"]),
      plusPossible: z.literal(true).optional(),
      capacityCuFt: z.number().optional(),
      source: z.string(),
      confidence: z.enum(["low", "medium", "medium-high", "high"]),
    }),
  ),
});

const files = readdirSync(RULES).filter((name) => !["sources.json", "composite.json"].includes(name));
const known = sources.parse(json(new URL("sources.json", RULES)));

describe("country rules", () => {
  it.each(files)("%s has the right shape, and sources that exist", (file) => {
    const rules = country.parse(json(new URL(file, RULES)));
    expect(file).toBe(`${rules.country.toLowerCase()}.json`);
    const named = [
      ...rules.cylinders.flatMap((each) => each.sources),
      ...rules.oxygen.sources,
      ...rules.alloy6351Years.sources,
    ];
    for (const id of named) expect(Object.keys(known)).toContain(id);
    for (const each of rules.cylinders) {
      // No class rests on nothing that was read.
      expect(each.sources.some((id) => known[id]?.read !== "not read")).toBe(true);
    }
  });

  it("offers every file, and no country without one", () => {
    expect(COUNTRIES.map(({ code }) => `${code.toLowerCase()}.json`).sort()).toEqual([...files].sort());
  });

  it("names no source that no rule uses", () => {
    const used = COUNTRIES.flatMap(({ code }) => {
      const { cylinders, oxygen, alloy6351Years } = countryRules(code);
      return [...cylinders.flatMap((each) => each.sources), ...oxygen.sources, ...alloy6351Years.sources];
    });
    expect(Object.keys(known).filter((id) => !used.includes(id))).toEqual([]);
  });

  it.each(["SE", "PT", "IE", "AT", "zz", ""])(
    "there are none for %j, and it says which there are",
    (code) => {
      const all = COUNTRIES.map((each) => each.code).join(", ");
      expect(() => countryRules(` ${code} `)).toThrow(
        code === ""
          ? "No country's rules are chosen: write one, such as US or GB."
          : `There are no rules for "${code}". Write one of ${all}.`,
      );
    },
  );

  it("are found in any case", () => {
    for (const [code, instead] of [
      ["UK", "write GB for the United Kingdom."],
      ["usa", "write US for the United States."],
      ["germany", "write DE for Germany."],
    ] as const)
      expect(() => countryRules(code)).toThrow(instead);
    expect(countryRules(" us ").country).toBe("US");
    expect(countryRules("ca-nb").name).toContain("New Brunswick");
  });

  /* Intervals in months, hydro and visual, as the sources in shared/rules give them. */
  it.each([
    ["US", 60, 12], ["CA", 60, 12], ["CA-NB", 60, 12], ["GB", 60, 30], ["DE", 60, 30], ["CH", 60, 30], ["BE", 60, 30],
    ["NL", 60, null], ["FR", 24, 12], ["ES", 36, 12], ["IT", 24, null], ["NO", 24, 24], ["FI", 120, null],
    ["DK", 60, 12], ["AU", 12, 12], ["NZ", 24, 12], ["ZA", 48, 24], ["JP", 60, 12], ["HK", 60, null], ["XX", 60, 12],
  ])("%s: hydro every %d, visual every %s months", (code, hydro, visual) => {
    const [usual] = countryRules(code).cylinders;
    expect(usual?.hydro?.months).toBe(hydro);
    expect(usual?.visual?.months ?? null).toBe(visual);
  }); // prettier-ignore

  it("cite nothing from memory, and call nothing law that was not read", () => {
    for (const file of [...files, "sources.json", "composite.json"]) {
      expect(readFileSync(new URL(file, RULES), "utf8"), file).not.toContain("from memory");
    }
    for (const { code } of COUNTRIES) {
      for (const { id, hydro, visual } of countryRules(code).cylinders) {
        for (const interval of [hydro, visual]) {
          if (interval === null || !/unconfirmed/.test(interval.source)) continue;
          expect(interval.basis, id).toBe("practice");
          expect(interval.source, id).toMatch(/unconfirmed: (?:confirm with|read) /);
        }
      }
    }
  });

  it("say of the 40 % where it is borrowed, unless the country says so itself", () => {
    for (const { code } of COUNTRIES) {
      const { oxygen } = countryRules(code);
      const own = ["US", "FR", "FI"].includes(code);
      expect(/borrowed/.test(oxygen.note ?? ""), code).toBe(!own && oxygen.cleanSource.includes("NOAA"));
    }
  });

  it("without a national rule are guidance: never law, and they say so", () => {
    const rules = countryRules("XX");
    expect(rules.notLaw).toMatch(/not law\. Ask the authority/);
    for (const { hydro, visual } of rules.cylinders) {
      expect([hydro?.basis, visual?.basis]).toEqual(["practice", "practice"]);
    }
    expect(rules.oxygen.cleanBasis).toBe("practice");
    expect(COUNTRIES.at(-1)?.code).toBe("XX");
    expect(() => countryRules("none")).toThrow("write XX");
  });

  it("tell law from custom: the US hydro is law, its yearly visual is not; both are in Britain", () => {
    const [us] = countryRules("US").cylinders;
    const [gb] = countryRules("GB").cylinders;
    expect([us?.hydro?.basis, us?.visual?.basis]).toEqual(["law", "practice"]);
    expect([gb?.hydro?.basis, gb?.visual?.basis]).toEqual(["law", "law"]);
  });

  it('hold "air only" to 22 % in Europe and 23.5 % elsewhere', () => {
    expect(countryRules("GB").oxygen.airOnlyMaxPercent).toBe(22);
    expect(countryRules("DE").oxygen.airOnlyMaxPercent).toBe(22);
    expect(countryRules("US").oxygen.airOnlyMaxPercent).toBe(23.5);
    expect(
      [countryRules("GB"), countryRules("FI"), countryRules("US")].map(({ oxygen }) => oxygen.cleanMonths),
    ).toEqual([15, 24, 12]);
  });
});

describe("trade sizes", () => {
  it("have the right shape, and sources that exist", () => {
    const table = sizes.parse(json(new URL("sizes.json", CYLINDERS)));
    for (const { source } of table.cylinders) expect(Object.keys(table.sources)).toContain(source);
  });
});

it("a country stands in a sentence as people say it", () => {
  const said = COUNTRIES.map(countryInWords);
  expect(said).toContain("the United States");
  expect(said).toContain("the United Kingdom");
  expect(said).toContain("the Netherlands");
  expect(said.filter((name) => name.startsWith("the "))).toHaveLength(3);
});
