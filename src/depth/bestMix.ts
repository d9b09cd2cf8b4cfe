import { refuse } from "../gas/refusal";
import type { Units } from "../gas/units";
import { roundDown } from "./roundDown";
import { checkedPartialPressure, pressureAtDepth, type Water } from "./waterColumn";

/**
 * The richest whole per cent of oxygen within the limit at a depth, at most 100. 33 m: 32; 25 m: 40.
 * @throws Refusal when not even 1 per cent is within it.
 */
export function bestMix(depth: number, units: Units, maxPpO2 = 1.4, water: Water = "salt"): number {
  const limit = checkedPartialPressure(maxPpO2);
  const percent = roundDown((100 * limit) / pressureAtDepth(depth, units, water));
  if (percent < 1) refuse(`At ${depth} no whole per cent of oxygen is within a ppO2 of ${limit}.`);
  return Math.min(100, percent);
}
