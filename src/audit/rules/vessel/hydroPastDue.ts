import type { Rule } from "../../judge/rule";
import { judgePastDue, type RecurringTest } from "./pastDue";

const HYDRO: RecurringTest = {
  field: "hydro",
  intervalOf: (rules) => rules.hydro,
  historyOf: (cylinder) => cylinder.hydros,
  todo: "Do not fill it again before a hydro, and tell the owner.",
};

/** Filled after the hydro fell due: 49 CFR 173.301(a)(6), and the like in nearly every country. */
export const hydroPastDue: Rule = {
  id: "V01",
  rank: 2,
  title: "Filled past its hydro date",
  needs: [["date"], ["hydro", "made"]],
  judge: (filled, shop) => judgePastDue(filled, shop, HYDRO),
};
