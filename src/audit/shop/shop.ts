import type { CountryRules } from "../../cylinders/countryRules";
import type { Mixture } from "../../gas/mixture";
import { BAR_PER_PSI } from "../../gas/units";

/** What the shop judges by: its country's rules with its own figures in them, and its house limits. */
export interface Shop {
  readonly rules: CountryRules;
  readonly figures: HouseFigures;
  /** Every air test on record, passed or not, the earliest first; undefined where the shop keeps none here. */
  readonly airTests?: readonly AirTest[];
  /** The banks and compressors that the shop has told of; undefined where it has told of none. */
  readonly sources?: readonly GasSource[];
  /** Day number of the day of the audit, after which no test can have been; undefined where nobody said. */
  readonly today?: number;
}

/** Limits that no country's rules set. What each is and rests on stands in `houseSettings.ts`. */
export interface HouseFigures {
  readonly analyserMarginPoints: number;
  readonly mixTolerancePoints: number;
  readonly mixToleranceStopPoints: number;
  readonly maxPpO2: number;
  readonly mostPpO2: number;
  readonly warmFillC: number;
  readonly readingErrorPercent: number;
  readonly startMinimumBar: number;
  readonly continuousMaxPercent: number;
  readonly airLeastPercent: number;
  readonly airMostPercent: number;
  readonly hypoxicBelowPercent: number;
  readonly basicNitroxMaxPercent: number;
  readonly airTestMonths: number;
  readonly gaugeErrorPercent: number;
  readonly temperatureErrorC: number;
  readonly balanceAnalyserPoints: number;
  readonly sameCylinderMinutes: number;
}

/** A test of the air that a compressor or bank gives. */
export interface AirTest {
  /** ISO date of the sample. */
  readonly date: string;
  readonly passed: boolean;
  /** The bank or compressor, as the log names it; absent for all the air of the shop. */
  readonly source?: string | undefined;
}

/** A bank or compressor, as far as the shop has told of it. */
export interface GasSource {
  /** As the log names it. */
  readonly name: string;
  /** Whether its gas may meet oxygen: oil proven to be at most 0.1 mg/m³. Absent where nobody said. */
  readonly oxygenCompatible?: boolean | undefined;
  /** What it holds; absent where nobody said, or it differs from day to day. */
  readonly mix?: Mixture | undefined;
}

/** A shop's own figures by the id of the setting; figures that stand as they came are absent. */
export type HouseOverrides = Readonly<Record<string, number | string>>;

/** What a shop may say for itself. */
export interface AuditOptions {
  readonly house?: HouseOverrides | undefined;
  readonly airTests?: readonly AirTest[] | undefined;
  readonly sources?: readonly GasSource[] | undefined;
  /** ISO date of today. */
  readonly asOf?: string | undefined;
  /** ISO dates, both included: only what was filled then is told and counted; fills without a date always are. */
  readonly period?: { readonly from: string; readonly to: string } | undefined;
}

/** The country's rules, and the limits that hold where the shop sets none of its own. */
export function shopOf(rules: CountryRules): Shop {
  const { airTest, startMinimumPsi } = rules;
  return {
    rules,
    figures: {
      ...FIGURES,
      ...(airTest && { airTestMonths: airTest.months }),
      ...(startMinimumPsi !== undefined && {
        startMinimumBar: Math.round(startMinimumPsi * BAR_PER_PSI * 1000) / 1000,
      }),
    },
  };
}

const FIGURES: HouseFigures = {
  analyserMarginPoints: 0.5,
  mixTolerancePoints: 1,
  mixToleranceStopPoints: 3,
  maxPpO2: 1.4,
  mostPpO2: 1.6,
  warmFillC: 25,
  readingErrorPercent: 3,
  startMinimumBar: 3,
  continuousMaxPercent: 40,
  airLeastPercent: 20,
  airMostPercent: 22,
  hypoxicBelowPercent: 18,
  basicNitroxMaxPercent: 40,
  airTestMonths: 3,
  gaugeErrorPercent: 1,
  temperatureErrorC: 3,
  balanceAnalyserPoints: 1,
  sameCylinderMinutes: 30,
};
