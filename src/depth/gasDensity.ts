import { compositionOf, type Composition, type Mixture } from "../gas/mixture";
import { ATMOSPHERE_BAR, type Units } from "../gas/units";
import { pressureAtDepth, type Water } from "./waterColumn";

/** Grams per mole: IUPAC standard atomic weights, from memory. */
const MOLAR_MASS: Readonly<Record<keyof Composition, number>> = {
  nitrogen: 28.0134,
  oxygen: 31.9988,
  argon: 39.948,
  helium: 4.002602,
};

/** Litre bar per mole, at the 0 °C to which the recommended limits of 5.2 and 6.2 g/L fit (see docs/accuracy.md). */
const MOLAR_VOLUME_BAR = 0.08314472 * 273.15;
const SURFACE_BAR: Readonly<Record<Units, number>> = { us: ATMOSPHERE_BAR, metric: 1 };

/** Recommended, and not to be exceeded, g/L: Anthony & Mitchell 2016, from memory. */
export const RECOMMENDED_DENSITY = 5.2;
export const HIGHEST_DENSITY = 6.2;

/** Density of the mix as breathed at a depth, in g/L: ideal gas at 0 °C, the convention of the limits. */
export function gasDensity(depth: number, mix: Mixture, units: Units, water: Water = "salt"): number {
  const composition = compositionOf(mix);
  const gramsPerMole =
    composition.nitrogen * MOLAR_MASS.nitrogen +
    composition.oxygen * MOLAR_MASS.oxygen +
    composition.argon * MOLAR_MASS.argon +
    composition.helium * MOLAR_MASS.helium;
  const pressureBar = pressureAtDepth(depth, units, water) * SURFACE_BAR[units];
  return (pressureBar * gramsPerMole) / MOLAR_VOLUME_BAR;
}
