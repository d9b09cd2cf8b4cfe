import { lacking } from "../../judge/lacks";
import { DOES_NOT_APPLY, notJudged, PASS, type Rule } from "../../judge/rule";
import { isFilledElsewhere } from "../../walk/filledElsewhere";
import { dateText, pressureText } from "../../../words/inSentences";

/**
 * Back with more gas than the last fill of the log left in it: filled elsewhere in between, so that nobody here knows
 * what is in it. Gas does not become more; how far two readings may differ is reckoned from the shop's gauge and
 * temperature errors.
 */
export const filledElsewhere: Rule = {
  id: "R11",
  rank: 49,
  title: "Filled elsewhere in between",
  needs: [["startPressure"], ["endPressure", "settledPressure"], ["serial", "shopNumber"]],
  judge(filled, { figures }) {
    const { last, orderOnTrust } = filled.past;
    if (last === undefined) return DOES_NOT_APPLY;
    const { startPressure } = filled.fill.fields;
    const at = { field: "startPressure" } as const;
    if (startPressure.kind !== "value") return lacking(startPressure, at);
    if (last.pressureBar === undefined) return notJudged("what the fill before left is not known", at);
    if (isFilledElsewhere(filled, figures) !== true) return PASS;
    if (orderOnTrust !== undefined) return notJudged(orderOnTrust, at);
    const { unit } = startPressure.value.written;
    const left = `the ${pressureText(last.pressureBar, unit)} of its fill on ${last.day === undefined ? "an unknown day" : dateText(last.day)}`;
    return {
      kind: "fault",
      severity: "note",
      basis: "practice",
      source: "conservation of mass",
      message: `Came with ${pressureText(startPressure.value.bar, unit)}, more than ${left}: it was filled elsewhere in between.`,
      todo: "Analyse what is in it before anything goes on top.",
      at,
    };
  },
};
