import { gerg2008Density, gerg2008Pressure } from "./gerg2008";
import { compositionOf, type Mixture } from "./mixture";

/** How much gas a pressure stands for. Pressures are bar absolute, temperatures kelvin, densities mol per litre. */
export interface EquationOfState {
  readonly name: "real" | "ideal";
  density(mix: Mixture, pressureBar: number, temperatureK: number): number;
  pressure(mix: Mixture, densityMolPerLitre: number, temperatureK: number): number;
}

/** Litre bar per mole and kelvin (GERG-2008's own constant, so that both models meet at low pressure). */
const GAS_CONSTANT_BAR = 0.08314472;

/** GERG-2008 (Kunz & Wagner 2012). */
export const realGas: EquationOfState = {
  name: "real",
  density: (mix, pressureBar, temperatureK) => gerg2008Density(compositionOf(mix), pressureBar, temperatureK),
  pressure: (mix, densityMolPerLitre, temperatureK) =>
    gerg2008Pressure(compositionOf(mix), densityMolPerLitre, temperatureK),
};

/** Boyle and Charles: for teaching and comparison. */
export const idealGas: EquationOfState = {
  name: "ideal",
  density: (_mix, pressureBar, temperatureK) => pressureBar / (GAS_CONSTANT_BAR * temperatureK),
  pressure: (_mix, densityMolPerLitre, temperatureK) => densityMolPerLitre * GAS_CONSTANT_BAR * temperatureK,
};

/** Compressibility factor p / (density R T). */
export function compressibility(
  equation: EquationOfState,
  mix: Mixture,
  pressureBar: number,
  temperatureK: number,
): number {
  if (pressureBar <= 0) return 1;
  return pressureBar / (equation.density(mix, pressureBar, temperatureK) * GAS_CONSTANT_BAR * temperatureK);
}
