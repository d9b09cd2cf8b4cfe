import { nameMix } from "../../../gas/nameMix";
import { lacking } from "../../judge/lacks";
import { exceeds, filledMix } from "../../record/oxygen";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";

/** Rich gas through a compressor burns it: 29 CFR 1910 Subpart T Appendix C para. 6(d), (e); the maker's figure where lower. */
export const continuousTooRich: Rule = {
  id: "O07",
  rank: 20,
  title: "Continuous blend richer than the compressor may take",
  needs: [["method"], ["orderedMix", "analysedMix"]],
  judge({ fill }, { figures }) {
    const { method } = fill.fields;
    if (method.kind !== "value") return lacking(method, { field: "method" });
    if (method.value !== "continuous") return DOES_NOT_APPLY;
    const filled = filledMix(fill);
    if (!("mix" in filled)) return filled;
    const margin = filled.isAnalysed ? figures.analyserMarginPoints : 0;
    if (!exceeds(filled.mix.oxygen, (figures.continuousMaxPercent + margin) / 100)) return PASS;
    return {
      kind: "fault",
      severity: "stop",
      basis: "practice",
      source: "29 CFR 1910 Subpart T Appendix C para. 6(d), (e)",
      message: `${nameMix(filled.mix)} went through the compressor, which may take ${figures.continuousMaxPercent} % oxygen.`,
      todo: "Stop blending so: mix richer gas by partial pressure, and have the compressor's oil looked at.",
      at: filled.at,
    };
  },
};
