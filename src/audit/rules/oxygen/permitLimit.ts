import { nameMix } from "../../../gas/nameMix";
import { exceeds, filledMix } from "../../record/oxygen";
import { classRules, isLack } from "../../record/readField";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";

/** Some special permits end at a mix, such as 39 % oxygen in permit 10915. */
export const permitLimit: Rule = {
  id: "O09",
  rank: 35,
  title: "Mix above what its permit allows",
  needs: [["cylinderClass"], ["analysedMix", "orderedMix"]],
  judge(filled, { figures }) {
    const rules = classRules(filled);
    if (isLack(rules)) return rules;
    const { oxygenMaxPercent, oxygenMaxSource = "" } = rules;
    if (oxygenMaxPercent === undefined) return DOES_NOT_APPLY;
    const mix = filledMix(filled.fill);
    if (!("mix" in mix)) return mix;
    const margin = mix.isAnalysed ? figures.analyserMarginPoints : 0;
    if (!exceeds(mix.mix.oxygen, (oxygenMaxPercent + margin) / 100)) return PASS;
    return {
      kind: "fault",
      severity: "breach",
      basis: "law",
      source: oxygenMaxSource,
      message: `${nameMix(mix.mix)} in a cylinder whose permit ends at ${oxygenMaxPercent} % oxygen.`,
      todo: "Empty it; fill it within its permit.",
      at: mix.at,
    };
  },
};
