import { mod } from "../../../depth/mod";
import { oxygenPartialPressure } from "../../../depth/oxygenPartialPressure";
import { roundDown } from "../../../depth/roundDown";
import { nameMix } from "../../../gas/nameMix";
import type { Units } from "../../../gas/units";
import { lacking } from "../../judge/lacks";
import { filledMix } from "../../record/oxygen";
import { DOES_NOT_APPLY, notJudged, PASS, type Rule } from "../../judge/rule";

const METRES_PER_FOOT = 0.3048;
/** Labels carry whole feet or metres: what is within this of the depth itself is that depth. */
const ROUNDING = 0.05;
/** A label rounded up instead of down is off by at most so much, and by 0.01 to 0.02 of ppO2. Common practice, no source. */
const ROUNDED_UP = { us: 1, metric: 0.3 };

/**
 * A label that sends the diver too deep: 29 CFR 1910 Subpart T Appendix C para. 3. Rounded up, it is a slip of a foot
 * or less; deeper, it is of another mix or another limit.
 */
export const modTooDeep: Rule = {
  id: "G02",
  rank: 9,
  title: "MOD on the label too deep",
  needs: [["modOnLabelM"], ["analysedMix", "orderedMix"]],
  judge({ fill }, { figures }) {
    const { modOnLabelM } = fill.fields;
    const at = { field: "modOnLabelM" } as const;
    if (modOnLabelM.kind === "blank") return DOES_NOT_APPLY;
    if (modOnLabelM.kind !== "value") return lacking(modOnLabelM, at);
    const filled = filledMix(fill);
    if (!("mix" in filled)) return filled;
    const { oxygen } = filled.mix;
    if (oxygen === 0) return notJudged("a mix without oxygen has no MOD", filled.at);
    const { label, units, unit } = asLabelled(modOnLabelM.value);
    const deepest = oxygen >= figures.maxPpO2 ? 0 : mod(filled.mix, units, figures.maxPpO2);
    if (label <= deepest + ROUNDING) return PASS;
    const isRoundedUp = label <= deepest + ROUNDED_UP[units] + ROUNDING;
    const right = roundDown(deepest);
    const ends = `${filled.isAnalysed ? "analysed " : ""}${nameMix(filled.mix)} ends at ${isRoundedUp ? Number(deepest.toFixed(1)) : right} ${unit} (ppO2 ${figures.maxPpO2})`;
    const reached = oxygenPartialPressure(label, filled.mix, units).toFixed(2);
    return {
      kind: "fault",
      severity: isRoundedUp ? "warn" : "stop",
      basis: "practice",
      source: "29 CFR 1910 Subpart T Appendix C para. 3",
      message: isRoundedUp
        ? `The label says ${label} ${unit}, rounded up: ${ends}; at ${label} ${unit} it has ${reached}.`
        : `The label says ${label} ${unit}, ${Number((label - right).toFixed(1))} ${unit} too deep: ${ends}; at ${label} ${unit} it has ${reached}.`,
      todo: isRoundedUp
        ? `Round depths on labels down: ${right} ${unit}.`
        : "Call the diver at once, and put a right label on the cylinder.",
      at,
    };
  },
};

/** Depths are kept in metres; a label in feet is a whole number of feet, which no whole number of metres is. */
function asLabelled(metres: number): {
  readonly label: number;
  readonly units: Units;
  readonly unit: string;
} {
  const feet = metres / METRES_PER_FOOT;
  const inFeet = Math.abs(feet - Math.round(feet)) < 1e-6 && !Number.isInteger(metres);
  return inFeet
    ? { label: Math.round(feet), units: "us", unit: "ft" }
    : { label: metres, units: "metric", unit: "m" };
}
