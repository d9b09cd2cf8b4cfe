import type { Mixture } from "../gas/mixture";
import type { Units } from "../gas/units";
import { breathableOxygen, checkedPartialPressure, waterColumn, type Water } from "./waterColumn";

/** Shallowest depth, in feet or metres, at which the mix can be breathed: 0 for anything not hypoxic. */
export function minDepth(mix: Mixture, units: Units, minPpO2 = 0.18, water: Water = "salt"): number {
  const limit = checkedPartialPressure(minPpO2);
  return Math.max(0, (limit / breathableOxygen(mix) - 1) * waterColumn(units, water));
}
