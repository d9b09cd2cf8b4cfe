import { equationReach } from "../../gas/equationReach";
import type { EquationOfState } from "../../gas/equationOfState";
import type { Mixture } from "../../gas/mixture";

/** How far the gas model can be trusted for this mix at this pressure. */
export function reachInWords(equation: EquationOfState, mix: Mixture, pressureBar: number): string {
  return equation.name === "real"
    ? equationReach(mix, pressureBar)
    : "Ideal gas, which makes nothing of how gases really compress: for teaching and comparison, not for filling.";
}
