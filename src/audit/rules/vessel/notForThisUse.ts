import { inFill } from "../../judge/lacks";
import { classRules, isLack, known } from "../../record/readField";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";

/** Composites that may not go under water, or only with the mark UW: 49 CFR 173.301b(g). */
export const notForWater: Rule = {
  id: "V12",
  rank: 29,
  title: "Composite that is not for under water",
  needs: [["cylinderClass"]],
  judge(filled) {
    const rules = classRules(filled);
    if (isLack(rules)) return rules;
    if (rules.underWater === undefined) return DOES_NOT_APPLY;
    const written = known(filled, "cylinderClass");
    if (isLack(written)) return written;
    if (rules.underWater === "only marked UW" && /\bUW\b/i.test(written.value)) return PASS;
    return {
      kind: "fault",
      severity: "stop",
      basis: "law",
      source: rules.underWaterSource ?? "",
      message:
        rules.underWater === "never"
          ? `${rules.name}: it is not made to go under water.`
          : `${written.value} carries no UW: without that mark it may not go under water.`,
      todo: "Do not fill it for diving; look for the mark UW on the cylinder, and write it behind the class.",
      at: inFill(filled, written.at),
    };
  },
};

/** Classes that have no place in a dive shop of the country: 49 CFR 173.302a(a)(2), 173.301(j). */
export const notAuthorised: Rule = {
  id: "V13",
  rank: 30,
  title: "Class that a dive shop may not fill",
  needs: [["cylinderClass"]],
  judge(filled) {
    const rules = classRules(filled);
    if (isLack(rules)) return rules;
    if (rules.notAuthorised === undefined) return DOES_NOT_APPLY;
    const written = known(filled, "cylinderClass");
    if (isLack(written)) return written;
    return {
      kind: "fault",
      severity: "breach",
      basis: "law",
      source: rules.notAuthorisedSource ?? "",
      message: `${rules.name}: ${rules.notAuthorised}.`,
      todo: "Do not fill it again; tell the owner why.",
      at: inFill(filled, written.at),
    };
  },
};
