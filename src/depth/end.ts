import type { Mixture } from "../gas/mixture";
import type { Units } from "../gas/units";
import { nitrogenDepth } from "./ead";
import { checkedDepth, waterColumn, type Water } from "./waterColumn";

/**
 * Equivalent narcotic depth, in feet or metres, never below 0. With oxygen counted as narcotic everything but helium
 * counts: 18/45 at 60 m is 28.5 m. Without, nitrogen alone counts, against the 79 % of air.
 */
export function end(
  depth: number,
  mix: Mixture,
  units: Units,
  oxygenNarcotic = true,
  water: Water = "salt",
): number {
  if (!oxygenNarcotic) return nitrogenDepth(depth, mix, units, water);
  const column = waterColumn(units, water);
  return Math.max(0, (checkedDepth(depth) + column) * (1 - mix.helium) - column);
}
