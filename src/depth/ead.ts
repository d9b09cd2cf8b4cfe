import { nitrogenOf, type Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { refuse } from "../gas/refusal";
import type { Units } from "../gas/units";
import { checkedDepth, waterColumn, type Water } from "./waterColumn";

/** Air as the diving tables take it: 79 % nitrogen. */
export const TABLE_AIR_NITROGEN = 0.79;

/**
 * Equivalent air depth, in feet or metres, never below 0: the depth at which air, taken as 79 % nitrogen, has the
 * nitrogen pressure of this nitrox. EAN34 at 24 m: 18.4 m.
 * @throws Refusal for a mix with helium: read on an air table it would promise time that nobody has.
 */
export function ead(depth: number, mix: Mixture, units: Units, water: Water = "salt"): number {
  if (mix.helium > 0) {
    refuse(
      `${nameMix(mix)} holds helium, which loads a diver as nitrogen does: no air table fits it. END tells how narcotic it is.`,
    );
  }
  return nitrogenDepth(depth, mix, units, water);
}

/** The depth at which air, taken as 79 % nitrogen, has the nitrogen pressure of this mix. Never below 0. */
export function nitrogenDepth(depth: number, mix: Mixture, units: Units, water: Water): number {
  const column = waterColumn(units, water);
  return Math.max(0, ((checkedDepth(depth) + column) * nitrogenOf(mix)) / TABLE_AIR_NITROGEN - column);
}
