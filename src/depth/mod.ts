import type { Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { refuse } from "../gas/refusal";
import type { Units } from "../gas/units";
import { breathableOxygen, checkedPartialPressure, waterColumn, type Water } from "./waterColumn";

/**
 * Maximum operating depth, in feet or metres, not rounded: (maxPpO2 / oxygen - 1) x k.
 * EAN32 at 1.4: 111.375 ft, 33.75 m.
 * @throws Refusal when the mix is above the limit even at the surface.
 */
export function mod(mix: Mixture, units: Units, maxPpO2 = 1.4, water: Water = "salt"): number {
  const limit = checkedPartialPressure(maxPpO2);
  const oxygen = breathableOxygen(mix);
  if (oxygen > limit)
    refuse(`${nameMix(mix)} is above a ppO2 of ${limit} even at the surface: no depth is shallow enough.`);
  return (limit / oxygen - 1) * waterColumn(units, water);
}
