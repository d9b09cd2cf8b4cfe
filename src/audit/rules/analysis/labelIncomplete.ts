import { filledEnriched } from "../../record/enriched";
import { isLack } from "../../record/readField";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";
import { lacking } from "../../judge/lacks";

/** A label without its MOD: Queensland guidance on enriched air; Tukes. Date and serial, where blank, stop other rules. */
export const labelIncomplete: Rule = {
  id: "G11",
  rank: 41,
  title: "MOD not on the label",
  needs: [["modOnLabelM"]],
  judge({ fill }) {
    const { modOnLabelM } = fill.fields;
    const at = { field: "modOnLabelM" } as const;
    if (modOnLabelM.kind === "value") return PASS;
    const enriched = filledEnriched(fill);
    if (enriched === false) return DOES_NOT_APPLY;
    if (modOnLabelM.kind !== "blank") return lacking(modOnLabelM, at);
    if (isLack(enriched)) return enriched;
    return {
      kind: "fault",
      blank: at,
      severity: "warn",
      basis: "practice",
      source: "Queensland guidance on enriched air; Tukes",
      message: "No MOD is written for this mix.",
      todo: "Work it out from the analysis, and write it on the label and here.",
      at,
    };
  },
};
