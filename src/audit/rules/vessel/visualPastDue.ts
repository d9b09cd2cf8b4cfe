import type { Rule } from "../../judge/rule";
import { judgePastDue, type RecurringTest } from "./pastDue";

const VISUAL: RecurringTest = {
  field: "visual",
  intervalOf: (rules) => rules.visual,
  historyOf: (cylinder) => cylinder.visuals,
  todo: "Do not fill it again before a visual.",
};

/** Filled after the visual fell due. A hydro includes a visual (49 CFR 180.205(f)), so the later of both counts. */
export const visualPastDue: Rule = {
  id: "V06",
  rank: 13,
  title: "Filled past its visual date",
  needs: [["date"], ["visual", "hydro"]],
  judge: (filled, shop) => judgePastDue(filled, shop, VISUAL),
};
