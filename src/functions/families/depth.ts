import { bestMix } from "../../depth/bestMix";
import { ead } from "../../depth/ead";
import { end } from "../../depth/end";
import { gasDensity, HIGHEST_DENSITY, RECOMMENDED_DENSITY } from "../../depth/gasDensity";
import { minDepth } from "../../depth/minDepth";
import { mod } from "../../depth/mod";
import { oxygenPartialPressure } from "../../depth/oxygenPartialPressure";
import { pressureAtDepth, waterColumn, type Water } from "../../depth/waterColumn";
import { AIR, nitrogenOf, type Mixture } from "../../gas/mixture";
import { UNIT_NAMES, type Units } from "../../gas/units";
import { defineFunction } from "../define";
import { depth, mix, partialPressure, units, water, yesOrNo } from "../../typed/readers";
import { depthInWords, figure, mixInWords, percent } from "../../words/figures";

const NOT_ROUNDED = "Not rounded: round down for a label.";

export const MOD = defineFunction({
  id: "MOD",
  says: "Maximum operating depth: the deepest the mix may be breathed. Not rounded; for a label round down.",
  arguments: {
    mix: mix(),
    units: units(),
    maxPpO2: partialPressure("Highest oxygen partial pressure.").or(1.4),
    water: water(),
  },
  quantity: "depth",
  answer: ({ mix, units, maxPpO2, water }) => mod(mix, units, maxPpO2, water),
  why: ({ mix, units, maxPpO2, water }) => [
    `${mixInWords(mix)} reaches a ppO2 of ${maxPpO2} where the pressure is ${maxPpO2} / ${figure(mix.oxygen)} = ${figure(maxPpO2 / mix.oxygen)}.`,
    ...hypoxicInWords(mix, units, water),
    columnInWords(units, water),
    NOT_ROUNDED,
  ],
});

export const MINDEPTH = defineFunction({
  id: "MINDEPTH",
  says: "Shallowest depth at which the mix can be breathed; 0 for anything not hypoxic.",
  arguments: {
    mix: mix(),
    units: units(),
    minPpO2: partialPressure("Lowest oxygen partial pressure.").or(0.18),
    water: water(),
  },
  quantity: "depth",
  answer: ({ mix, units, minPpO2, water }) => minDepth(mix, units, minPpO2, water),
  why: ({ mix, units, minPpO2, water }) => [
    `${mixInWords(mix)} has a ppO2 of ${figure(mix.oxygen)} at the surface; ${minPpO2} is wanted.`,
    columnInWords(units, water),
    "Round up for a label.",
  ],
});

export const OXYGENPP = defineFunction({
  id: "OXYGENPP",
  says: "Oxygen partial pressure (ppO2) at a depth.",
  arguments: { depth: depth(), mix: mix(), units: units(), water: water() },
  quantity: "partial pressure",
  answer: ({ depth, mix, units, water }) => oxygenPartialPressure(depth, mix, units, water),
  why: ({ depth, mix, units, water }) => [
    `${pressureInWords(depth, units, water)}, times ${percent(mix.oxygen)} oxygen.`,
    columnInWords(units, water),
  ],
});

export const BESTMIX = defineFunction({
  id: "BESTMIX",
  says: "Richest mix for a depth, in whole per cent of oxygen.",
  arguments: {
    depth: depth(),
    units: units(),
    maxPpO2: partialPressure("Highest oxygen partial pressure.").or(1.4),
    water: water(),
  },
  quantity: "per cent",
  answer: ({ depth, units, maxPpO2, water }) => bestMix(depth, units, maxPpO2, water),
  why: ({ depth, units, maxPpO2, water }) => [
    `${pressureInWords(depth, units, water)}; ${maxPpO2} of that may be oxygen, rounded down to a whole per cent.`,
    ...leanInWords(bestMix(depth, units, maxPpO2, water) / 100),
    columnInWords(units, water),
  ],
});

export const EAD = defineFunction({
  id: "EAD",
  says: "Equivalent air depth: where air, taken as 79 % nitrogen, has the mix's nitrogen pressure.",
  arguments: { depth: depth(), mix: mix(), units: units(), water: water() },
  quantity: "depth",
  answer: ({ depth, mix, units, water }) => ead(depth, mix, units, water),
  why: ({ mix, units, water }) => [
    `${mixInWords(mix)} holds ${percent(nitrogenOf(mix))} nitrogen; air is taken as 79 %, as the tables do. Never less than 0.`,
    columnInWords(units, water),
  ],
});

export const END = defineFunction({
  id: "END",
  says: "Equivalent narcotic depth: where air is as narcotic as the mix.",
  arguments: {
    depth: depth(),
    mix: mix(),
    units: units(),
    oxygenNarcotic: yesOrNo("Count oxygen as narcotic? TRUE or FALSE.").orElseButZeroCounts(
      () => true,
      "TRUE",
    ),
    water: water(),
  },
  quantity: "depth",
  answer: ({ depth, mix, units, oxygenNarcotic, water }) => end(depth, mix, units, oxygenNarcotic, water),
  why: ({ mix, units, oxygenNarcotic, water }) => [
    oxygenNarcotic
      ? `Everything but helium counts as narcotic: ${percent(1 - mix.helium)} of the gas.`
      : `Nitrogen alone counts: ${percent(nitrogenOf(mix))}, against the 79 % of air.`,
    columnInWords(units, water),
  ],
});

export const GASDENSITY = defineFunction({
  id: "GASDENSITY",
  says: "Density of the gas as breathed at depth, in g/L: 5.2 is the recommended limit, 6.2 the highest.",
  arguments: { depth: depth(), mix: mix(), units: units(), water: water() },
  quantity: "density",
  answer: ({ depth, mix, units, water }) => gasDensity(depth, mix, units, water),
  why: ({ depth, mix, units, water }) => [
    `${densityVerdict(gasDensity(depth, mix, units, water))} Ideal gas at 0 °C, the convention of these limits.`,
    columnInWords(units, water),
  ],
});

/** The deepest depth says nothing of the shallowest. */
function hypoxicInWords(mix: Mixture, units: Units, water: Water): readonly string[] {
  const shallowest = minDepth(mix, units, LEAST_PPO2, water);
  return shallowest > 0
    ? [
        `It is hypoxic at the surface: do not breathe it above ${depthInWords(shallowest, units)} (ppO2 ${LEAST_PPO2}).`,
      ]
    : [];
}

/** A figure below air is no nitrox to blend. */
function leanInWords(oxygen: number): readonly string[] {
  if (oxygen < LEAST_PPO2) {
    return [
      "That is hypoxic at the surface: only a trimix or heliox is made so lean, for a travel gas to start on.",
    ];
  }
  return oxygen < AIR.oxygen - 0.001
    ? ["That is leaner than air: only a trimix or heliox is made so lean."]
    : [];
}

/** Below this ppO2 a mix is hypoxic (common practice, no source). */
const LEAST_PPO2 = 0.18;

function densityVerdict(density: number): string {
  if (density > HIGHEST_DENSITY) return `Above ${HIGHEST_DENSITY} g/L: do not breathe it there.`;
  if (density > RECOMMENDED_DENSITY) return `Above the recommended ${RECOMMENDED_DENSITY} g/L.`;
  return `Within the recommended ${RECOMMENDED_DENSITY} g/L.`;
}

function pressureInWords(depth: number, units: Units, water: Water): string {
  const unit = units === "us" ? "ata" : "bar";
  return `At ${depthInWords(depth, units)} the pressure is ${figure(pressureAtDepth(depth, units, water))} ${unit}`;
}

function columnInWords(units: Units, water: Water): string {
  const unit = units === "us" ? "ata" : "bar";
  return `Counted with ${waterColumn(units, water)} ${UNIT_NAMES[units].depth} of ${water} water to one ${unit}, 1 ${unit} at the surface.`;
}
