import { ATMOSPHERE_BAR } from "../gas/units";
import type { CylinderRules } from "./countryRules";
import type { TestStamp } from "./testStamp";

/** 49 CFR 173.302a(b): 110 % while a `+` follows the date of the latest test. */
export const PLUS_FACTOR = 1.1;

/**
 * The highest settled pressure (bar absolute) for a service pressure (bar absolute): as stamped, or 110 % of it where
 * the class allows a plus rating and the latest test carries the `+`.
 */
export function pressureLimitBar(
  servicePressureBar: number,
  cylinder: CylinderRules,
  latestTest?: TestStamp,
): number {
  const plus = cylinder.plusAllowed === true && latestTest?.plus === true;
  return (servicePressureBar - ATMOSPHERE_BAR) * (plus ? PLUS_FACTOR : 1) + ATMOSPHERE_BAR;
}
