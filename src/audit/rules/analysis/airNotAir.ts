import { lacking } from "../../judge/lacks";
import { isAir, isEnriched } from "../../record/enriched";
import { DOES_NOT_APPLY, PASS, type FilledCylinder, type Rule } from "../../judge/rule";
import { percentText } from "../../../words/inSentences";
import { exceeds } from "../../record/oxygen";

/** What was ordered as air and is none: EN 12021; CGA G-7.1. On a residue of nitrox it is O10. */
export const airNotAir: Rule = {
  id: "G04",
  rank: 37,
  title: "Air that is not air",
  needs: [["analysedMix"], ["orderedMix"]],
  judge(filled, { figures }) {
    const { orderedMix, analysedMix } = filled.fill.fields;
    if (orderedMix.kind !== "value" || !isAir(orderedMix.value)) return DOES_NOT_APPLY;
    if (analysedMix.kind === "blank") return DOES_NOT_APPLY;
    if (analysedMix.kind !== "value") return lacking(analysedMix, { field: "analysedMix" });
    const { oxygen } = analysedMix.value;
    const within =
      !exceeds(oxygen, figures.airMostPercent / 100) && !exceeds(figures.airLeastPercent / 100, oxygen);
    if (within) return PASS;
    if (onResidue(filled)) return DOES_NOT_APPLY;
    return {
      kind: "fault",
      severity: "stop",
      basis: "practice",
      source: "EN 12021; CGA G-7.1",
      message: `Ordered air, analysed ${percentText(oxygen)} oxygen: air has ${figures.airLeastPercent} to ${figures.airMostPercent} %.`,
      todo: "Do not hand it over: find out whether the bank, the cylinder or the analyser is wrong.",
      at: { field: "analysedMix" },
    };
  },
};

/** Nitrox or trimix was in it when the air came: as the row says, else as its last fill left it. */
function onResidue({ fill, past }: FilledCylinder): boolean {
  const { startMix } = fill.fields;
  if (startMix.kind === "value") return isEnriched(startMix.value);
  return past.last?.mix !== undefined && isEnriched(past.last.mix);
}
