import { nitrogenOf, type Mixture } from "../gas/mixture";
import type { Units } from "../gas/units";
import { checkedDepth, waterColumn, type Water } from "./waterColumn";

/** Air as the diving tables take it: 79 % nitrogen. */
export const TABLE_AIR_NITROGEN = 0.79;

/**
 * Equivalent air depth, in feet or metres, never below 0: the depth at which air, taken as 79 % nitrogen, has the
 * nitrogen pressure of this mix. Whatever is neither oxygen nor helium counts as nitrogen. EAN34 at 24 m: 18.4 m.
 */
export function ead(depth: number, mix: Mixture, units: Units, water: Water = "salt"): number {
  const column = waterColumn(units, water);
  return Math.max(0, ((checkedDepth(depth) + column) * nitrogenOf(mix)) / TABLE_AIR_NITROGEN - column);
}
