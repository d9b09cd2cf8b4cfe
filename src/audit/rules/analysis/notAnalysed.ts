import { nameMix } from "../../../gas/nameMix";
import { lacking } from "../../judge/lacks";
import { filledEnriched } from "../../record/enriched";
import { isLack } from "../../record/readField";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";

/** Nitrox, trimix or oxygen that left without an analysis: 29 CFR 1910 Subpart T Appendix C para. 6(b), (c). */
export const notAnalysed: Rule = {
  id: "G01",
  rank: 8,
  title: "Nitrox, trimix or oxygen not analysed",
  needs: [["analysedMix"]],
  judge({ fill }) {
    const { analysedMix, orderedMix } = fill.fields;
    const at = { field: "analysedMix" } as const;
    if (analysedMix.kind === "value") return PASS;
    const enriched = filledEnriched(fill);
    if (enriched === false) return DOES_NOT_APPLY;
    if (analysedMix.kind !== "blank") return lacking(analysedMix, at);
    if (isLack(enriched)) return enriched;
    const what = orderedMix.kind === "value" ? nameMix(orderedMix.value) : "Mixed gas";
    return {
      kind: "fault",
      blank: at,
      severity: "stop",
      basis: "practice",
      source: "29 CFR 1910 Subpart T Appendix C para. 6(b), (c)",
      message: `${what} was handed over and no analysis is written down.`,
      todo: "Call the cylinder back and analyse it before anybody breathes it.",
      at,
    };
  },
};
