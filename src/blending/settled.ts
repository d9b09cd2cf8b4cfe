import { contentAt, pressureOf } from "../gas/content";
import type { EquationOfState } from "../gas/equationOfState";
import { checkedPressure, checkedTemperature } from "../gas/limits";
import type { Mixture } from "../gas/mixture";

/**
 * Pressure (bar absolute) after warming or cooling in a closed cylinder. 3300 psi of air at 120 °F settles at about
 * 2906 psi at 70 °F. The cylinder itself is taken as rigid.
 */
export function settled(
  equation: EquationOfState,
  mix: Mixture,
  pressureBar: number,
  fromTemperatureK: number,
  toTemperatureK: number,
): number {
  checkedPressure(pressureBar);
  checkedTemperature(fromTemperatureK);
  checkedTemperature(toTemperatureK);
  const content = contentAt(equation, mix, pressureBar, fromTemperatureK);
  return pressureOf(equation, content, toTemperatureK);
}
