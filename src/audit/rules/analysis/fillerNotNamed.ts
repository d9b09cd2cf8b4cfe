import { lacking } from "../../judge/lacks";
import { PASS, type Rule } from "../../judge/rule";

/** Who filled is trained and named: 49 CFR 172.704; WorkSafe New Zealand; Arbeidstilsynet regulation 25-16. */
export const fillerNotNamed: Rule = {
  id: "P01",
  rank: 43,
  title: "Filler not named",
  needs: [["filledBy"]],
  judge({ fill }) {
    const { filledBy } = fill.fields;
    const at = { field: "filledBy" } as const;
    if (filledBy.kind === "value") return PASS;
    if (filledBy.kind !== "blank") return lacking(filledBy, at);
    return {
      kind: "fault",
      blank: at,
      severity: "breach",
      basis: "practice",
      source: "49 CFR 172.704; WorkSafe New Zealand; Arbeidstilsynet regulation 25-16",
      message: "Nobody is named who made this fill.",
      todo: "Have whoever fills write their name or initials.",
      at,
    };
  },
};
