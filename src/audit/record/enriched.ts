import type { Mixture } from "../../gas/mixture";
import type { Fill } from "../../log/log";
import { lacking } from "../judge/lacks";
import type { NotJudged } from "../judge/rule";
import type { Shop } from "../shop/shop";

/** Air has 20 to 22 % oxygen (EN 12021; CGA G-7.1); what has more, less, or helium has to be analysed. */
export function isEnriched({ oxygen, helium }: Mixture): boolean {
  return helium > 0 || oxygen > 0.22 || oxygen < 0.2;
}

/** A mix richer than basic nitrox is breathed on deco stops, where the oxygen limit is another (common practice). */
export function isDecoGas({ oxygen }: Mixture, { figures }: Shop): boolean {
  return oxygen > (figures.basicNitroxMaxPercent + figures.analyserMarginPoints) / 100;
}

/** Whether it is what a diver calls air: `air`, or 20.9 to 21.0 %, to one decimal. */
export function isAir({ oxygen, helium }: Mixture): boolean {
  return helium < 0.0005 && oxygen >= 0.2085 && oxygen < 0.2105;
}

/**
 * Whether nitrox, trimix or oxygen was filled: by the order; where none is written, by the analysis, else by the method,
 * as only one of them gives air.
 */
export function filledEnriched({ fields }: Fill): boolean | NotJudged {
  const { orderedMix, analysedMix, method } = fields;
  if (orderedMix.kind === "value") return isEnriched(orderedMix.value);
  if (analysedMix.kind === "value") return isEnriched(analysedMix.value);
  if (orderedMix.kind === "ambiguous" && orderedMix.choices.every(isEnriched)) return true;
  if (orderedMix.kind === "blank" && method.kind === "value") return method.value !== "air";
  return lacking(orderedMix, { field: "orderedMix" });
}
