import { refuse } from "../gas/refusal";
import { LEAST_OXYGEN_PERCENT } from "../gas/readMix";
import { UNIT_NAMES, type Units } from "../gas/units";
import { roundDown } from "./roundDown";
import { checkedPartialPressure, pressureAtDepth, type Water } from "./waterColumn";

/**
 * The richest whole per cent of oxygen within the limit at a depth, at most 100. 33 m: 32; 25 m: 40.
 * @throws Refusal when only less than 5 per cent is within it: such a figure is no mix to any function.
 */
export function bestMix(depth: number, units: Units, maxPpO2 = 1.4, water: Water = "salt"): number {
  const limit = checkedPartialPressure(maxPpO2);
  const percent = roundDown((100 * limit) / pressureAtDepth(depth, units, water));
  if (percent < LEAST_OXYGEN_PERCENT)
    refuse(
      `At ${depth} ${UNIT_NAMES[units].depth} no whole per cent of oxygen from ${LEAST_OXYGEN_PERCENT} on is within a ppO2 of ${limit}: check depth and units.`,
    );
  return Math.min(100, percent);
}
