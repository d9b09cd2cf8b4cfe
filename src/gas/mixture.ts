import { refuse } from "./refusal";

/**
 * A breathing gas by mole fractions of oxygen and helium; the rest is atmospheric nitrogen, that is
 * nitrogen with the share of argon that air has.
 */
export interface Mixture {
  readonly oxygen: number;
  readonly helium: number;
}

/** The gases an equation of state is told about, as mole fractions that add up to 1. */
export interface Composition {
  readonly nitrogen: number;
  readonly oxygen: number;
  readonly argon: number;
  readonly helium: number;
}

/** Dry air by volume; normalised below. Common handbook figures (N2 78.084, O2 20.946, Ar 0.934 %). */
const DRY_AIR = { nitrogen: 0.78084, oxygen: 0.20946, argon: 0.00934 };
const DRY_AIR_SUM = DRY_AIR.nitrogen + DRY_AIR.oxygen + DRY_AIR.argon;

/** Argon's share of what remains of dry air without its oxygen: 0.01182. */
export const ARGON_IN_ATMOSPHERIC_NITROGEN = DRY_AIR.argon / (DRY_AIR.nitrogen + DRY_AIR.argon);

/** Dry air: 20.9535 % oxygen. */
export const AIR: Mixture = { oxygen: DRY_AIR.oxygen / DRY_AIR_SUM, helium: 0 };
export const OXYGEN: Mixture = { oxygen: 1, helium: 0 };
export const HELIUM: Mixture = { oxygen: 0, helium: 1 };

/** A share this small is float noise of sums, not gas. */
const NOISE = 1e-9;

/**
 * The mixture with these mole fractions.
 * @throws Refusal when a fraction is not within 0 to 1, or both add up to more than 1.
 */
export function mixture(oxygen: number, helium = 0): Mixture {
  if (!(oxygen >= -NOISE && helium >= -NOISE && oxygen + helium <= 1 + NOISE)) {
    refuse(
      `Oxygen ${percent(oxygen)} and helium ${percent(helium)} cannot be a gas: each is at least 0, together at most 100 %.`,
    );
  }
  return { oxygen: clampFraction(oxygen), helium: clampFraction(helium) };
}

/** Mole fraction of atmospheric nitrogen (with argon): whatever is neither oxygen nor helium. */
export function nitrogenOf(mix: Mixture): number {
  return Math.max(0, 1 - mix.oxygen - mix.helium);
}

/** The mix of which this share is the second gas and the rest the first. */
export function mixBetween(first: Mixture, second: Mixture, shareOfSecond: number): Mixture {
  return {
    oxygen: first.oxygen + (second.oxygen - first.oxygen) * shareOfSecond,
    helium: first.helium + (second.helium - first.helium) * shareOfSecond,
  };
}

/** The mixture with its nitrogen told apart from argon. */
export function compositionOf(mix: Mixture): Composition {
  const rest = nitrogenOf(mix);
  const argon = rest * ARGON_IN_ATMOSPHERIC_NITROGEN;
  return { nitrogen: rest - argon, oxygen: mix.oxygen, argon, helium: mix.helium };
}

function clampFraction(fraction: number): number {
  return Math.min(1, Math.max(0, fraction));
}

function percent(fraction: number): string {
  return `${Number((fraction * 100).toFixed(2))} %`;
}
