import { mixture, nitrogenOf, type Mixture } from "../../gas/mixture";
import { nameMix } from "../../gas/nameMix";
import { readMix } from "../../gas/readMix";
import { refuse } from "../../gas/refusal";
import { numberIn, type FilledCell } from "../../typed/cells";
import { defineFunction } from "../define";
import { asWritten, mix, oneOf } from "../../typed/readers";
import { figure, mixInWords, percent } from "../../words/figures";

const TREATED_AS_NITROGEN =
  "What is neither oxygen nor helium is atmospheric nitrogen, with the argon of air.";

export const MIX = defineFunction({
  id: "MIX",
  says: "The usual name of a gas from its oxygen and helium, both as fractions or both in per cent.",
  arguments: {
    oxygen: asWritten("Oxygen: 0.18 or 18, or the gas as text."),
    helium: asWritten("Helium, written as the oxygen is: 0.45 or 45.").or(0),
  },
  answer: ({ oxygen, helium }) => nameMix(mixFromParts(oxygen, helium)),
  why: ({ oxygen, helium }) => [`Read as ${mixInWords(mixFromParts(oxygen, helium))}.`, TREATED_AS_NITROGEN],
});

export const MIXPART = defineFunction({
  id: "MIXPART",
  says: "How much of one gas a mix holds, in per cent.",
  arguments: {
    mix: mix(),
    part: oneOf('"oxygen", "helium" or "nitrogen".', ["oxygen", "helium", "nitrogen"]),
  },
  quantity: "per cent",
  answer: ({ mix, part }) => 100 * (part === "nitrogen" ? nitrogenOf(mix) : mix[part]),
  why: ({ mix }) => [
    `Read as ${nameMix(mix)}: ${percent(mix.oxygen)} oxygen, ${percent(mix.helium)} helium, ${percent(nitrogenOf(mix))} nitrogen.`,
    TREATED_AS_NITROGEN,
  ],
});

/** Oxygen and helium from two cells: both fractions, or both per cent. Without helium, whatever says a mix. */
function mixFromParts(oxygen: FilledCell, helium: FilledCell): Mixture {
  const heliumPart = partIn(helium, "helium");
  if (heliumPart === 0) {
    return typeof oxygen === "boolean" ? refuse("oxygen: write 0.32, 32 or EAN32.") : readMix(oxygen);
  }
  const oxygenPart = partIn(oxygen, "oxygen");
  const fractions = oxygenPart <= 1 && heliumPart <= 1;
  const percents = oxygenPart > 1 && heliumPart >= 1;
  if (!fractions && !percents) {
    refuse(
      `Oxygen ${figure(oxygenPart)} and helium ${figure(heliumPart)}: write both as fractions (0.18, 0.45) or both in per cent (18, 45).`,
    );
  }
  return fractions ? mixture(oxygenPart, heliumPart) : mixture(oxygenPart / 100, heliumPart / 100);
}

function partIn(cell: FilledCell, name: string): number {
  const part = typeof cell === "string" ? numberIn(cell.replace(/%\s*$/, "")) : cell;
  if (typeof part !== "number" || part < 0 || part > 100) {
    return refuse(
      `${name}: "${String(cell).trim()}" is not a share of a mix: write a fraction or a per cent, such as 0.45 or 45.`,
    );
  }
  return part;
}
