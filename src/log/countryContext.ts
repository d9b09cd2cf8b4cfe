import type { CountryRules } from "../cylinders/countryRules";
import type { DateOrder, LogContext } from "./context";

/**
 * How dates are written where they are not written day first (common practice, no source): the US puts the month
 * first, Canada writes both ways, so there the log has to say.
 */
const DATE_ORDERS: Readonly<Record<string, DateOrder | undefined>> = {
  US: "month first",
  CA: undefined,
  XX: undefined,
};

/**
 * Gauges and depths are in bar and metres where they are not in psi and feet (common practice, no source). Canada and
 * Hong Kong use both, and Japan gauges in MPa, so there the log has to say.
 */
const USUAL_UNITS: Readonly<Record<string, LogContext["usualUnits"]>> = {
  US: "us",
  CA: undefined,
  HK: undefined,
  JP: undefined,
  XX: undefined,
};

/** What a country's habits say about the reading of a log. */
export function countryContext(
  rules: CountryRules,
): Pick<LogContext, "dateOrder" | "usualUnits" | "stampOrder" | "stampMeans"> {
  const land = rules.country.slice(0, 2);
  return {
    dateOrder: Object.hasOwn(DATE_ORDERS, land) ? DATE_ORDERS[land] : "day first",
    usualUnits: Object.hasOwn(USUAL_UNITS, land) ? USUAL_UNITS[land] : "metric",
    stampOrder: rules.stampOrder,
    stampMeans: rules.stampMeans,
  };
}
