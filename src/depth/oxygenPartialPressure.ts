import type { Mixture } from "../gas/mixture";
import type { Units } from "../gas/units";
import { pressureAtDepth, type Water } from "./waterColumn";

/** Oxygen partial pressure (ppO2) at a depth: ata with feet, bar with metres. */
export function oxygenPartialPressure(
  depth: number,
  mix: Mixture,
  units: Units,
  water: Water = "salt",
): number {
  return mix.oxygen * pressureAtDepth(depth, units, water);
}
