import { gasDensity, HIGHEST_DENSITY, RECOMMENDED_DENSITY } from "../../depth/gasDensity";
import { minDepth } from "../../depth/minDepth";
import { mod } from "../../depth/mod";
import { roundDepthDown } from "../../depth/roundDown";
import type { Mixture } from "../../gas/mixture";
import { Refusal } from "../../gas/refusal";
import type { Units } from "../../gas/units";
import { depthText } from "../words";

/** Depths of a mix, in feet or metres, as labels have them. */
export interface Depths {
  readonly mod: number | undefined;
  readonly problem: string | undefined;
  /** Rounded up; 0 where the mix can be breathed at the surface. */
  readonly shallowest: number;
  readonly density: number | undefined;
  readonly dense: "above" | "far above" | undefined;
}

export function depthsOf(mix: Mixture, units: Units, maxPpO2: number): Depths {
  try {
    const deepest = mod(mix, units, maxPpO2);
    const density = gasDensity(deepest, mix, units);
    return {
      mod: roundDepthDown(deepest),
      problem: undefined,
      shallowest: shallowestOf(mix, units),
      density,
      dense: density > HIGHEST_DENSITY ? "far above" : density > RECOMMENDED_DENSITY ? "above" : undefined,
    };
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    return { mod: undefined, problem: thrown.message, shallowest: 0, density: undefined, dense: undefined };
  }
}

function shallowestOf(mix: Mixture, units: Units): number {
  return mix.oxygen > 0 ? 0 - roundDepthDown(-minDepth(mix, units)) : 0;
}

/** MOD, and what else a diver has to know of the mix; sentences. */
export function depthWarnings(
  { problem, shallowest, density, dense, mod }: Depths,
  units: Units,
): readonly string[] {
  return [
    ...(problem === undefined ? [] : [problem]),
    ...(shallowest > 0
      ? [`Hypoxic: not to be breathed above ${depthText(shallowest, units)}.`]
      : []),
    ...(dense === undefined || density === undefined || mod === undefined
      ? []
      : [
          `At its MOD the gas weighs ${density.toFixed(2)} g/L, ${
            dense === "far above" ? "above the 6.2 not to be exceeded" : "above the recommended 5.2"
          }.`,
        ]),
  ]; // prettier-ignore
}
