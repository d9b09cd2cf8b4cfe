import type { Mixture } from "../gas/mixture";
import { refuse } from "../gas/refusal";
import type { Units } from "../gas/units";

/*
 * Depths are in the units asked, pressures at depth in the unit that goes with them: ata with feet, bar with metres,
 * the surface being 1 of either. Converting between the two would move published tables by a per cent: "33 ft per ata"
 * and "10 m per bar" are two working rules, not one (33 fsw per atmosphere: U.S. Navy Diving Manual; 10 msw = 1 bar
 * by definition; the fresh water figures are common practice, no source).
 */
export type Water = "salt" | "fresh";

const DEPTH_PER_SURFACE_PRESSURE: Readonly<Record<Units, Readonly<Record<Water, number>>>> = {
  us: { salt: 33, fresh: 34 },
  metric: { salt: 10, fresh: 10.3 },
};

/** Feet of water to one ata, or metres to one bar. */
export function waterColumn(units: Units, water: Water): number {
  return DEPTH_PER_SURFACE_PRESSURE[units][water];
}

/** Reads "salt" or "fresh", in any case. */
export function readWater(text: string): Water {
  const word = text.trim().toLowerCase();
  if (word === "salt" || word === "fresh") return word;
  return refuse(`Water "${text.trim()}" is not known: write "salt" or "fresh".`);
}

/** Pressure at a depth, in ata (feet) or bar (metres). */
export function pressureAtDepth(depth: number, units: Units, water: Water): number {
  return checkedDepth(depth) / waterColumn(units, water) + 1;
}

/** @throws Refusal for what is no number, and above the surface. */
export function checkedDepth(depth: number): number {
  if (!Number.isFinite(depth)) refuse("The depth is not a number: write feet or metres.");
  if (depth < 0) refuse(`Depth ${depth} is above the surface: write 0 or more.`);
  return depth;
}

/** A limit of oxygen partial pressure. @throws Refusal unless above 0, at most 3. */
export function checkedPartialPressure(partialPressure: number): number {
  if (partialPressure > 0 && partialPressure <= 3) return partialPressure;
  return refuse(
    `A limit of ppO2 ${partialPressure} is not usable: write a figure above 0, at most 3, such as 1.4.`,
  );
}

/** The oxygen fraction. @throws Refusal for a gas without oxygen, which cannot be breathed at any depth. */
export function breathableOxygen(mix: Mixture): number {
  if (mix.oxygen > 0) return mix.oxygen;
  return refuse("This gas holds no oxygen: it cannot be breathed at any depth.");
}
