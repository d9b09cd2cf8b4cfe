import type { Temporal } from "temporal-polyfill";
import type { Acceptance } from "../../audit/judge/acceptance";
import type { AuditOptions } from "../../audit/shop/shop";
import type { CountryRules } from "../../cylinders/countryRules";
import type { Units } from "../../gas/units";
import type { Paper } from "../../sheet/draft/draft";

/** What a month's report is to be about, and how it is to look. */
export interface MonthOptions {
  readonly month: Temporal.PlainYearMonth;
  /** The day of the report: what is out of date or coming due is told as of this day. */
  readonly asOf: Temporal.PlainDate;
  readonly units: Units;
  readonly paper: Paper;
  /** Whether owners and receivers are named; only where somebody asked for it. */
  readonly names: boolean;
  readonly shopName?: string | undefined;
  /** What the shop has set for itself, as the audit takes it. */
  readonly audit: AuditOptions;
  readonly accepted?: readonly Acceptance[] | undefined;
  /** The file of the log, where the report is written into another one beside it. */
  readonly logFile?: string | undefined;
  /** Who signs: the figures are then sealed with a checksum. */
  readonly preparedBy?: string | undefined;
  /** The program that wrote it, with its version. */
  readonly program: string;
}

/** What a list to telephone by says where nobody is named on it. */
export function withoutOwners({ names }: Pick<MonthOptions, "names">): readonly string[] {
  return names
    ? []
    : [
        "Owners are left out, as names were not asked for: look them up in the log, or write the report with names.",
      ];
}

/** What reports say they were written by. */
export const PROGRAM = "Brimbook 0.1.0";

/** The units of a country where the shop has said nothing else. */
export function unitsOf({ habits }: CountryRules): Units {
  return habits.units ?? "metric";
}
