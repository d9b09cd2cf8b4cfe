import { nameMix } from "../../../gas/nameMix";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";
import { lacking } from "../../judge/lacks";

/** Trimix of which only the oxygen was analysed: from memory, no source. */
export const heliumNotAnalysed: Rule = {
  id: "G06",
  rank: 40,
  title: "Trimix without a helium analysis",
  needs: [["analysedMix"], ["orderedMix"]],
  judge({ fill }) {
    const { orderedMix, analysedMix, analysedHelium } = fill.fields;
    // Without any analysis it is G01.
    if (orderedMix.kind !== "value" || orderedMix.value.helium === 0 || analysedMix.kind === "blank")
      return DOES_NOT_APPLY;
    const at = { field: "analysedHelium" } as const;
    if (analysedHelium.kind === "value" || (analysedMix.kind === "value" && analysedMix.value.helium > 0))
      return PASS;
    if (analysedHelium.kind !== "blank") return lacking(analysedHelium, at);
    if (analysedMix.kind !== "value") return lacking(analysedMix, { field: "analysedMix" });
    return {
      kind: "fault",
      blank: at,
      severity: "breach",
      basis: "practice",
      source: "common practice, no source",
      message: `${nameMix(orderedMix.value)} was analysed for oxygen only: how much helium is in it is not known.`,
      todo: "Analyse the helium before it is dived.",
      at,
    };
  },
};
