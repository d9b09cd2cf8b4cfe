import { lacking } from "../../judge/lacks";
import { filledEnriched } from "../../record/enriched";
import { isLack } from "../../record/readField";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";

/** Who analysed, and that the diver took the mix over, is not written: training agencies' practice. */
export function notSigned(field: "analysedBy" | "receivedBy"): Rule {
  const at = { field } as const;
  return {
    id: "G09",
    rank: 22,
    title: field === "analysedBy" ? "Analyst not named" : "Diver's signature missing",
    needs: [[field]],
    judge({ fill }) {
      const reading = fill.fields[field];
      if (reading.kind === "value") return PASS;
      // Where nothing was analysed, there is no analyst: that is G01.
      if (field === "analysedBy" && fill.fields.analysedMix.kind === "blank") return DOES_NOT_APPLY;
      const enriched = filledEnriched(fill);
      if (enriched === false) return DOES_NOT_APPLY;
      if (reading.kind !== "blank") return lacking(reading, at);
      if (isLack(enriched)) return enriched;
      return {
        kind: "fault",
        blank: at,
        severity: "breach",
        basis: "practice",
        source: "training agencies' practice",
        message:
          field === "analysedBy"
            ? "Nobody is named who analysed the mix."
            : "No signature shows that the diver knew the mix.",
        todo:
          field === "analysedBy"
            ? "Have whoever analyses write their name or initials."
            : "Have the diver analyse and sign before the cylinder leaves.",
        at,
      };
    },
  };
}
