import type { CountryRules } from "../cylinders/countryRules";
import type { LogContext } from "./context";
import type { Language } from "./vocabularies/languages";

/** What a country's habits say about the reading of a log. */
export function countryContext({
  habits,
  stampOrder,
  stampMeans,
}: CountryRules): Pick<LogContext, "dateOrder" | "usualUnits" | "languages" | "stampOrder" | "stampMeans"> {
  return {
    dateOrder: habits.dateOrder,
    usualUnits: habits.units,
    languages: habits.languages as readonly Language[],
    stampOrder,
    stampMeans,
  };
}
