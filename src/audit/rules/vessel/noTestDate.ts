import { lackingOnRecord, twoCylinders } from "../../judge/lacks";
import { BLANK } from "../../../log/reading";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";

/**
 * A cylinder with neither a hydro nor a manufacture date on record: nobody can show that it is in date.
 * New Brunswick Reg. 91-191 s. 339 and BS EN 1920 ask to check before filling; elsewhere common practice.
 */
export const noTestDate: Rule = {
  id: "V09",
  rank: 18,
  title: "No hydro and no manufacture date",
  needs: [["hydro", "made"]],
  judge(filled) {
    const { hydros } = filled.cylinder;
    if (hydros === undefined) return DOES_NOT_APPLY;
    if (!hydros.isEmpty) return PASS;
    const at = hydros.blankAt ?? { field: "hydro" };
    const doubt = twoCylinders(filled);
    if (doubt) return doubt;
    if (filled.register === "not found") return lackingOnRecord(filled, BLANK, at);
    return {
      kind: "fault",
      severity: "breach",
      basis: "practice",
      source: "New Brunswick Reg. 91-191 s. 339; BS EN 1920",
      message:
        "Neither a hydro nor a manufacture date is on record: nothing shows that the cylinder is in date.",
      todo: "Read the stamps on its shoulder and write them here; do not fill it before.",
      at,
    };
  },
};
