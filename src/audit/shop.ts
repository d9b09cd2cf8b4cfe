import type { CountryRules } from "../cylinders/countryRules";

/** What the shop judges by. */
export interface Shop {
  readonly rules: CountryRules;
  /** How far an analyser may be off, as a mole fraction. */
  readonly analyserMargin: number;
}

/** What a shop may set for itself. */
export interface AuditOptions {
  /** How far an analyser may be off, in points of oxygen; 0.5 unless set. Trade practice, no source. */
  readonly analyserMarginPoints?: number;
}

const DEFAULT_ANALYSER_MARGIN_POINTS = 0.5;

/** The country's rules, and its own settings. */
export function shopOf(rules: CountryRules, options: AuditOptions = {}): Shop {
  const points = options.analyserMarginPoints ?? DEFAULT_ANALYSER_MARGIN_POINTS;
  return { rules, analyserMargin: points / 100 };
}
