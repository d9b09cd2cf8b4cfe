import type { EquationOfState } from "./equationOfState";
import { checkedPressure, checkedTemperature } from "./limits";
import { AIR, type Mixture } from "./mixture";
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

/**
 * Water volume (litres) of the cylinder that gives this much free gas (litres at 1 atm) from its service pressure (bar
 * absolute) down to 0 gauge; the inverse of `freeGas`, for air. 77.4 cu ft at 3000 psi and 70 °F: 11.1 L.
 * @throws Refusal for no gas, and for a pressure at which a cylinder gives none.
 */
export function waterVolume(
  equation: EquationOfState,
  freeGasL: number,
  servicePressureBar: number,
  temperatureK: number,
): number {
  if (!(Number.isFinite(freeGasL) && freeGasL > 0)) {
    refuse("The capacity must be above 0: write the cubic feet or litres of free gas it is named for.");
  }
  const fromEachLitre = freeGas(equation, AIR, 1, servicePressureBar, temperatureK);
  if (!(fromEachLitre > 0)) refuse("At 0 on the gauge a cylinder gives no gas: write its service pressure.");
  return freeGasL / fromEachLitre;
}

/** @throws Refusal for a water volume that is no number above 0. */
export function checkedVolume(waterVolumeL: number): number {
  if (Number.isFinite(waterVolumeL) && waterVolumeL > 0) return waterVolumeL;
  return refuse("The water volume must be above 0: write litres, or the cylinder's size such as AL80.");
}
