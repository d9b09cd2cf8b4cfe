import type { Mixture } from "../gas/mixture";
import type { Units } from "../gas/units";
import { ead } from "./ead";
import { checkedDepth, waterColumn, type Water } from "./waterColumn";

/**
 * Equivalent narcotic depth, in feet or metres, never below 0. With oxygen counted as narcotic everything but helium
 * counts: 18/45 at 60 m is 28.5 m. Without, nitrogen alone against the 79 % of air, which is the equivalent air depth.
 */
export function end(
  depth: number,
  mix: Mixture,
  units: Units,
  oxygenNarcotic = true,
  water: Water = "salt",
): number {
  if (!oxygenNarcotic) return ead(depth, mix, units, water);
  const column = waterColumn(units, water);
  return Math.max(0, (checkedDepth(depth) + column) * (1 - mix.helium) - column);
}
