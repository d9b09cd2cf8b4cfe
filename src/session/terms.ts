import { Temporal } from "temporal-polyfill";
import type { Acceptance } from "../audit/judge/acceptance";
import type { AuditOptions } from "../audit/shop/shop";
import { countryRules } from "../cylinders/countryRules";
import type { Units } from "../gas/units";
import type { LogContext, SheetChoice } from "../log/context";
import { countryContext } from "../log/countryContext";
import type { ShopSettings } from "../workbook/settings";

/** What a log is read and judged by, as plain values: they travel to a worker. */
export interface Terms extends Pick<AuditOptions, "house" | "airTests" | "sources"> {
  readonly country: string;
  readonly units: Units;
  readonly choices: readonly SheetChoice[];
  readonly accepted: readonly Acceptance[];
  /** ISO date of today: no fill and no test lies after it. */
  readonly today: string;
}

/** The terms of a shop, today; undefined until it has said its country and units. */
export function termsOf(settings: ShopSettings): Terms | undefined {
  const { country, units, sheets: choices, house, airTests, sources, accepted = [] } = settings;
  if (country === undefined || units === undefined) return undefined;
  const today = Temporal.Now.plainDateISO().toString();
  return { country, units, choices, house, airTests, sources, accepted, today };
}

/** How the log is read under these terms. Throws Refusal where the country is not known. */
export function contextOf(terms: Terms): LogContext {
  return {
    ...countryContext(countryRules(terms.country)),
    units: terms.units,
    choices: terms.choices,
    asOf: Temporal.PlainDate.from(terms.today),
  };
}

/** What the log is judged by besides its country's rules. */
export function auditOptionsOf({ house, airTests, sources, today }: Terms): AuditOptions {
  return { house, airTests, sources, asOf: today };
}

/** The part of the terms that decides how cells are read: terms alike in it read the same log. */
export function readingKey({ country, units, choices, today }: Terms): string {
  return JSON.stringify([country, units, choices, today]);
}
