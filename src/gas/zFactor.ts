import { compressibility, type EquationOfState } from "./equationOfState";
import { checkedPressure, checkedTemperature } from "./limits";
import type { Mixture } from "./mixture";

/** Compressibility factor Z of a mix at a pressure (bar absolute) and temperature (K): 1 for an ideal gas. */
export function zFactor(
  equation: EquationOfState,
  mix: Mixture,
  pressureBar: number,
  temperatureK: number,
): number {
  return compressibility(equation, mix, checkedPressure(pressureBar), checkedTemperature(temperatureK));
}
