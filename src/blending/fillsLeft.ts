import type { EquationOfState } from "../gas/equationOfState";
import { checkedVolume } from "../gas/freeGas";
import { checkedPressure, checkedTemperature } from "../gas/limits";
import type { Mixture } from "../gas/mixture";
import { refuse } from "../gas/refusal";

/** One bank, and cylinders that are all alike. Pressures bar absolute, volumes of water in litres. */
export interface EqualizingOrder {
  readonly bankVolumeL: number;
  readonly bankBar: number;
  readonly cylinderVolumeL: number;
  readonly startBar: number;
  readonly endBar: number;
  readonly mix: Mixture;
  readonly temperatureK: number;
}

/**
 * How many more such cylinders the bank fills by equalizing alone (transfilling, decanting): while it still stands at or
 * above the end pressure after a fill. Each takes the same amount of gas, so the bank's gas down to the end pressure is
 * divided by it.
 * @throws Refusal where there is nothing to fill: the start is not below the end.
 */
export function fillsLeft(equation: EquationOfState, order: EqualizingOrder): number {
  const { bankVolumeL, bankBar, cylinderVolumeL, startBar, endBar, mix, temperatureK } = order;
  for (const volumeL of [bankVolumeL, cylinderVolumeL]) checkedVolume(volumeL);
  for (const bar of [bankBar, startBar, endBar]) checkedPressure(bar);
  checkedTemperature(temperatureK);
  if (startBar >= endBar) refuse("The cylinder starts at its end pressure or above: nothing flows in.");
  const density = (bar: number) => equation.density(mix, bar, temperatureK);
  const toGive = (density(bankBar) - density(endBar)) * bankVolumeL;
  const taken = (density(endBar) - density(startBar)) * cylinderVolumeL;
  return Math.max(0, Math.floor(toGive / taken + NOISE));
}

const NOISE = 1e-9;
