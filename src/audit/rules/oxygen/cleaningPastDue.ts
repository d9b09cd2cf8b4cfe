import { read } from "../../record/readField";
import { BLANK } from "../../../log/reading";
import { stampText } from "../../../cylinders/testStamp";
import { lackingOnRecord, onlyLater, twoCylinders } from "../../judge/lacks";
import { byEveryHistory, onItsDay } from "../../judge/eitherReading";
import { possibleServices, richInflow, type RichInflow } from "../../record/oxygen";
import { DOES_NOT_APPLY, PASS, type FilledCylinder, type Rule, type Verdict } from "../../judge/rule";
import type { Shop } from "../../shop/shop";
import type { Test, TestHistory } from "../../record/testHistory";
import { dateText } from "../../../words/inSentences";

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
    const { cleanings } = filled.cylinder;
    return onItsDay(filled, judgeOn, cleanings, inflow, shop);
  },
};

function judgeOn(
  day: number,
  filled: FilledCylinder,
  cleanings: TestHistory,
  inflow: RichInflow,
  shop: Shop,
): Verdict {
  const state = cleanings.stateOn(day);
  switch (state.kind) {
    case "in date":
      return PASS;
    case "in doubt":
      return byEveryHistory(cleanings, state.doubt, (read) => judgeOn(day, filled, read, inflow, shop));
    case "only later":
      return onlyLater("oxygenCleaned", cleanings);
    case "none":
      return lackingOnRecord(filled, BLANK, read(filled.cylinder, "oxygenCleaned").at);
    case "past due":
      return fault(state.last, inflow, shop);
  }
}

function fault({ stamp, until }: Test, { how, at }: RichInflow, { rules }: Shop): Verdict {
  return {
    kind: "fault",
    severity: "stop",
    basis: "practice",
    source: rules.oxygen.cleanMonthsSource,
    message: `${how} into a cylinder whose oxygen cleaning of ${stampText(stamp)} held until ${dateText(until)}.`,
    todo: "Put no more oxygen on it before it is cleaned again.",
    at,
  };
}
