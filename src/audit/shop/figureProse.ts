import type { Basis, CountryRules } from "../../cylinders/countryRules";
import type { HouseSetting } from "./houseSetting";
import type { HouseFigures } from "./shop";

const MEMORY = "common practice, no source";
const APPENDIX_C = "29 CFR 1910 Subpart T Appendix C";

/** What each house limit is: every figure of the shop stands here, or the compiler says so. */
export const FIGURE_PROSE: {
  readonly [figure in keyof HouseFigures]: Omit<HouseSetting, "id" | "of" | "set" | "basis" | "source"> & {
    readonly source: string | ((rules: CountryRules) => string);
    readonly basis?: Basis;
  };
} = {
  analyserMarginPoints: {
    group: "Gas analysis",
    name: "How far an analyser may be off above a rating",
    unit: "points",
    source: MEMORY,
    limits: { least: 0, most: 2 },
  },
  mixTolerancePoints: {
    group: "Gas analysis",
    name: "Analysed against ordered: a breach beyond",
    unit: "points",
    source: MEMORY,
    limits: { least: 0.1, most: 5 },
  },
  mixToleranceStopPoints: {
    group: "Gas analysis",
    name: "Analysed against ordered: a stop beyond",
    unit: "points",
    source: MEMORY,
    limits: { least: 0.1, most: 10 },
  },
  maxPpO2: {
    group: "Gas analysis",
    name: "Oxygen pressure for the MOD on labels",
    unit: "ata or bar",
    source: `${APPENDIX_C} para. 3`,
    limits: { least: 1, most: 1.6 },
  },
  mostPpO2: {
    group: "Gas analysis",
    name: "Oxygen pressure for deco gas, and at the planned depth: a stop beyond",
    unit: "ata or bar",
    source: "Code du sport art. A322-92",
    limits: { least: 1.2, most: 2 },
  },
  airLeastPercent: {
    group: "Gas analysis",
    name: "Air has at least",
    unit: "% oxygen",
    source: "EN 12021; CGA G-7.1",
    limits: { least: 19, most: 20.9 },
  },
  airMostPercent: {
    group: "Gas analysis",
    name: "Air has at most",
    unit: "% oxygen",
    source: "EN 12021; CGA G-7.1",
    limits: { least: 21, most: 23.5 },
  },
  hypoxicBelowPercent: {
    group: "Gas analysis",
    name: "A certification on file for mixes below",
    unit: "% oxygen",
    source: MEMORY,
    limits: { least: 10, most: 21 },
  },
  basicNitroxMaxPercent: {
    group: "Gas analysis",
    name: "A certification on file for mixes above",
    unit: "% oxygen",
    source: `${APPENDIX_C} para. 3`,
    limits: { least: 22, most: 100 },
  },
  gaugeErrorPercent: {
    group: "Gas analysis",
    name: "Mass balance: a gauge may be off by",
    unit: "% of reading",
    source: MEMORY,
    limits: { least: 0, most: 5 },
  },
  temperatureErrorC: {
    group: "Gas analysis",
    name: "Mass balance: a temperature may be off by",
    unit: "°C",
    source: MEMORY,
    limits: { least: 0, most: 15 },
  },
  balanceAnalyserPoints: {
    group: "Gas analysis",
    name: "Mass balance: an analyser may be off by",
    unit: "points",
    source: `${APPENDIX_C} para. 6`,
    limits: { least: 0.1, most: 3 },
  },
  readingErrorPercent: {
    group: "Pressure",
    name: "A gauge may read high by, before an overfill is certain",
    unit: "%",
    source: MEMORY,
    limits: { least: 0, most: 10 },
  },
  warmFillC: {
    group: "Pressure",
    name: "A fresh fill without a temperature may be warmer than the stamp's by",
    unit: "°C",
    source: MEMORY,
    limits: { least: 0, most: 45 },
  },
  startMinimumBar: {
    group: "Pressure",
    name: "Look inside where it comes in below",
    unit: "bar on the gauge",
    source: "Arbeidstilsynet regulation 25-15; German filling practice",
    limits: { least: 0, most: 30 },
  },
  sameCylinderMinutes: {
    group: "Pressure",
    name: "The same cylinder is not filled again within",
    unit: "minutes",
    source: MEMORY,
    limits: { least: 0, most: 600 },
  },
  continuousMaxPercent: {
    group: "Oxygen",
    name: "Richest mix the compressor may take",
    unit: "% oxygen",
    source: `${APPENDIX_C} para. 6(d), (e)`,
    limits: { least: 21, most: 50 },
  },
  airTestMonths: {
    group: "Air",
    name: "Air is tested every",
    unit: "months",
    source: airTestSource,
    limits: { least: 1, most: 24 },
  },
};

/** Who says how often air is tested. */
export function airTestSource({ airTest }: CountryRules): string {
  return airTest?.source ?? "EN 12021; CGA practice";
}
