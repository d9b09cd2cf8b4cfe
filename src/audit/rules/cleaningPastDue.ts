import { read } from "../registered";
import { BLANK } from "../../log/reading";
import { stampText } from "../../cylinders/testStamp";
import { dayOf, lacking, lackingOnRecord, onlyLater, twoCylinders } from "../asking";
import { possibleServices, richInflow } from "../oxygen";
import { DOES_NOT_APPLY, PASS, type Rule } from "../rule";
import { stateOn } from "../tests";
import { dateText } from "../words";

/**
 * Oxygen put into a cylinder whose cleaning is too old: seals and film age (Tukes: 24 months; UK centres: 15; elsewhere
 * 12, common practice, no source).
 */
export const cleaningPastDue: Rule = {
  id: "O04",
  rank: 11,
  title: "Oxygen cleaning out of date",
  needs: [["oxygenCleaned"], ["method", "oxygenAdded"], ["date"]],
  judge(filled, shop) {
    const inflow = richInflow(filled, shop);
    if (inflow === undefined) return DOES_NOT_APPLY;
    const doubt = twoCylinders(filled);
    if (doubt) return doubt;
    const services = possibleServices(filled);
    // O01 speaks of a cylinder that is not oxygen clean at all.
    if (services.length > 0 && !services.some(({ oxygenClean }) => oxygenClean)) return DOES_NOT_APPLY;
    const day = dayOf(filled);
    if (typeof day !== "number") return day;
    const { cleanings } = filled.cylinder;
    const state = stateOn(day, cleanings);
    switch (state.kind) {
      case "in date":
        return PASS;
      case "in doubt":
        return lacking(state.doubt.reading, state.doubt.at);
      case "only later":
        return onlyLater("oxygenCleaned", cleanings);
      case "none":
        return lackingOnRecord(filled, BLANK, read(filled.cylinder, "oxygenCleaned").at);
      case "past due":
        return {
          kind: "fault",
          severity: "stop",
          basis: "practice",
          source: shop.rules.oxygen.cleanMonthsSource,
          message: `${inflow.how} into a cylinder whose oxygen cleaning of ${stampText(state.last.stamp)} held until ${dateText(state.last.until)}.`,
          todo: "Put no more oxygen on it before it is cleaned again.",
          at: inflow.at,
        };
    }
  },
};
