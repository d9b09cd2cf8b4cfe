import { PASS, type Rule } from "../../judge/rule";
import { basisHere } from "../../shop/citation";
import { lacking } from "../../judge/lacks";

const SOURCE = "49 CFR 173.301(a)(2); Arbeidstilsynet regulation 25-15";

/** A look at the outside before every fill: 49 CFR 173.301(a)(2); Arbeidstilsynet regulation 25-15. */
export const notLookedOver: Rule = {
  id: "V18",
  rank: 33,
  title: "No look at the outside before the fill",
  needs: [["externalCheck"]],
  judge({ fill }, { rules }) {
    const { externalCheck } = fill.fields;
    const at = { field: "externalCheck" } as const;
    if (externalCheck.kind === "value") {
      if (externalCheck.value.passed) return PASS;
      return {
        kind: "fault",
        severity: "stop",
        basis: basisHere(rules, SOURCE),
        source: SOURCE,
        message: `The external check says “${externalCheck.value.written}”, and the cylinder was filled.`,
        todo: "Empty it, and have it tested before the next fill.",
        at,
      };
    }
    if (externalCheck.kind !== "blank") return lacking(externalCheck, at);
    return {
      kind: "fault",
      blank: at,
      severity: "warn",
      basis: basisHere(rules, SOURCE),
      source: SOURCE,
      message: "Nothing says that the cylinder was looked over before the fill.",
      todo: "Look it over before every fill, and tick it off.",
      at,
    };
  },
};
