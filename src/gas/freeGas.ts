import type { EquationOfState } from "./equationOfState";
import { checkedPressure, checkedTemperature } from "./limits";
import type { Mixture } from "./mixture";
import { refuse } from "./refusal";
import { ATMOSPHERE_BAR } from "./units";

/** Volume (litres at 1 atm and this temperature) of an amount of gas. */
export function freeVolumeL(
  equation: EquationOfState,
  gas: Mixture,
  mol: number,
  temperatureK: number,
): number {
  return mol / equation.density(gas, ATMOSPHERE_BAR, temperatureK);
}

/**
 * Gas that comes out of a cylinder down to 0 gauge, in litres at 1 atm and the cylinder's temperature. The last
 * atmosphere stays in. AL80 (11.1 L) at 3000 psi of air and 70 °F: 2194 L, 77.5 cu ft.
 */
export function freeGas(
  equation: EquationOfState,
  mix: Mixture,
  waterVolumeL: number,
  pressureBar: number,
  temperatureK: number,
): number {
  checkedVolume(waterVolumeL);
  checkedPressure(pressureBar);
  checkedTemperature(temperatureK);
  const molPerLitre = equation.density(mix, pressureBar, temperatureK);
  const all = freeVolumeL(equation, mix, molPerLitre * waterVolumeL, temperatureK);
  return Math.max(0, all - waterVolumeL);
}

/** @throws Refusal for a water volume that is no number above 0. */
export function checkedVolume(waterVolumeL: number): number {
  if (Number.isFinite(waterVolumeL) && waterVolumeL > 0) return waterVolumeL;
  return refuse("The water volume must be above 0: write litres, or the cylinder's size such as AL80.");
}
