import { Temporal } from "temporal-polyfill";
import { dayNumber } from "../../cylinders/calendar";
import type { CountryRules } from "../../cylinders/countryRules";
import { shopWith, type Override } from "./limits";
import type { AuditOptions, Shop } from "./shop";

/** What a shop judges by: the country's rules with its own figures in place, and all that it has told besides. */
export function shopFor(
  rules: CountryRules,
  { house, airTests, sources, asOf }: AuditOptions = {},
): { readonly shop: Shop; readonly overrides: readonly Override[] } {
  const { shop, overrides } = shopWith(rules, house);
  const told: Shop = {
    ...shop,
    ...(sources && { sources }),
    ...(airTests && { airTests: [...airTests].sort((one, other) => (one.date < other.date ? -1 : 1)) }),
    ...(asOf !== undefined && { today: dayNumber(Temporal.PlainDate.from(asOf)) }),
  };
  return { shop: told, overrides };
}
