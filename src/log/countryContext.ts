import type { CountryRules } from "../cylinders/countryRules";
import type { DateOrder, LogContext } from "./context";

/**
 * How dates are written where they are not written day first (common practice, no source): the US puts the month
 * first, Canada writes both ways, so there the log has to say.
 */
const DATE_ORDERS: Readonly<Record<string, DateOrder | undefined>> = { US: "month first", CA: undefined };

/** What a country's habits say about the reading of a log. */
export function countryContext(
  rules: CountryRules,
): Pick<LogContext, "dateOrder" | "stampOrder" | "stampMeans"> {
  const land = rules.country.slice(0, 2);
  return {
    dateOrder: Object.hasOwn(DATE_ORDERS, land) ? DATE_ORDERS[land] : "day first",
    stampOrder: rules.stampOrder,
    stampMeans: rules.stampMeans,
  };
}
