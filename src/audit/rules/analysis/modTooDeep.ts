import { mod } from "../../../depth/mod";
import { oxygenPartialPressure } from "../../../depth/oxygenPartialPressure";
import { roundDown } from "../../../depth/roundDown";
import type { Mixture } from "../../../gas/mixture";
import { nameMix } from "../../../gas/nameMix";
import type { Units } from "../../../gas/units";
import { lacking } from "../../judge/lacks";
import { isDecoGas } from "../../record/enriched";
import { filledMix, type FilledMix } from "../../record/oxygen";
import type { Shop } from "../../shop/shop";
import { DOES_NOT_APPLY, notJudged, PASS, type Rule, type Verdict } from "../../judge/rule";

const METRES_PER_FOOT = 0.3048;
/** Labels carry whole feet or metres: what is within this of the depth itself is that depth. */
const ROUNDING = 0.05;
/** A label rounded up instead of down is off by at most so much, and by 0.01 to 0.02 of ppO2. Common practice, no source. */
const ROUNDED_UP = { us: 1, metric: 0.3 };

/**
 * A label that sends the diver too deep: 29 CFR 1910 Subpart T Appendix C para. 3. Rounded up, it is a slip of a foot
 * or less; deeper, it is of another mix or another limit. A gas that is richer than basic nitrox is breathed on deco
 * stops, and may carry the depth of their limit: which of the two a label keeps is noted.
 */
export const modTooDeep: Rule = {
  id: "G02",
  rank: 9,
  title: "MOD on the label too deep",
  needs: [["modOnLabelM"], ["analysedMix", "orderedMix"]],
  judge({ fill }, shop) {
    const { modOnLabelM } = fill.fields;
    const at = { field: "modOnLabelM" } as const;
    if (modOnLabelM.kind === "blank") return DOES_NOT_APPLY;
    if (modOnLabelM.kind !== "value") return lacking(modOnLabelM, at);
    const filled = filledMix(fill);
    if (!("mix" in filled)) return filled;
    if (filled.mix.oxygen === 0) return notJudged("a mix without oxygen has no MOD", filled.at);
    const { maxPpO2, mostPpO2 } = shop.figures;
    const label = asLabelled(modOnLabelM.value);
    if (keeps(label, filled.mix, maxPpO2) === "yes") return PASS;
    if (isDecoGas(filled.mix, shop)) {
      const kept = keeps(label, filled.mix, mostPpO2);
      return kept === "no" ? fault(label, filled, mostPpO2, "stop") : decoDepth(label, filled, shop);
    }
    const kept = keeps(label, filled.mix, maxPpO2);
    return fault(label, filled, maxPpO2, kept === "rounded up" ? "warn" : "stop");
  },
};

function deepest(mix: Mixture, units: Units, ppO2: number): number {
  return mix.oxygen >= ppO2 ? 0 : mod(mix, units, ppO2);
}

function keeps({ depth, units }: Label, mix: Mixture, ppO2: number): "yes" | "rounded up" | "no" {
  const most = deepest(mix, units, ppO2) + ROUNDING;
  if (depth <= most) return "yes";
  return depth <= most + ROUNDED_UP[units] ? "rounded up" : "no";
}

const AT = { field: "modOnLabelM" } as const;
const SAYS = { kind: "fault", basis: "practice", at: AT } as const;

function fault(label: Label, filled: FilledMix, ppO2: number, severity: "warn" | "stop"): Verdict {
  const { depth, units, unit } = label;
  const isRoundedUp = severity === "warn";
  const most = deepest(filled.mix, units, ppO2);
  const right = roundDown(most);
  const ends = `${named(filled)} ends at ${isRoundedUp ? Number(most.toFixed(1)) : right} ${unit} (ppO2 ${ppO2})`;
  const reached = `at ${depth} ${unit} it has ${reachedAt(label, filled)}`;
  return {
    ...SAYS,
    severity,
    source: "29 CFR 1910 Subpart T Appendix C para. 3",
    message: isRoundedUp
      ? `The label says ${depth} ${unit}, rounded up: ${ends}; ${reached}.`
      : `The label says ${depth} ${unit}, ${Number((depth - right).toFixed(1))} ${unit} too deep: ${ends}; ${reached}.`,
    todo: isRoundedUp
      ? `Round depths on labels down: ${right} ${unit}.`
      : "Call the diver at once, and put a right label on the cylinder.",
  };
}

/** Right for a deco stop, and for nothing else. */
function decoDepth(label: Label, filled: FilledMix, { figures }: Shop): Verdict {
  const { depth, units, unit } = label;
  const bottom = roundDown(deepest(filled.mix, units, figures.maxPpO2));
  return {
    ...SAYS,
    severity: "note",
    source: "common practice, no source",
    message: `The label's ${depth} ${unit} keeps the deco limit (ppO2 ${figures.mostPpO2}), not the bottom limit: at ppO2 ${figures.maxPpO2} ${named(filled)} ends at ${bottom} ${unit}.`,
    todo: "Make sure that the label says it is deco gas.",
  };
}

function named({ mix, isAnalysed }: FilledMix): string {
  return `${isAnalysed ? "analysed " : ""}${nameMix(mix)}`;
}

function reachedAt({ depth, units }: Label, { mix }: FilledMix): string {
  return oxygenPartialPressure(depth, mix, units).toFixed(2);
}

interface Label {
  readonly depth: number;
  readonly units: Units;
  readonly unit: string;
}

/** Depths are kept in metres; a label in feet is a whole number of feet, which no whole number of metres is. */
function asLabelled(metres: number): Label {
  const feet = metres / METRES_PER_FOOT;
  const inFeet = Math.abs(feet - Math.round(feet)) < 1e-6 && !Number.isInteger(metres);
  return inFeet
    ? { depth: Math.round(feet), units: "us", unit: "ft" }
    : { depth: metres, units: "metric", unit: "m" };
}
