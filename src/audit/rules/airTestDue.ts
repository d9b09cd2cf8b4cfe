import { dayOfTest, lastDayOfTest, testsFor } from "../airTests";
import { dayOf } from "../asking";
import { notJudged, PASS, type Rule } from "../rule";
import { dateText } from "../words";

/** Air that nobody has tested for too long: carbon monoxide is not noticed. 29 CFR 1910.430(b)(4), and the like elsewhere. */
export const airTestDue: Rule = {
  id: "A01",
  rank: 24,
  title: "Air test out of date",
  needs: [["date"]],
  unable: ({ airTests }) => ((airTests ?? []).length > 0 ? undefined : "no air test is on record"),
  judge(filled, shop) {
    const day = dayOf(filled);
    if (typeof day !== "number") return day;
    const { source } = filled.fill.fields;
    const tests = testsFor(source.kind === "value" ? source.value : undefined, shop);
    const last = tests.findLast((test) => dayOfTest(test) <= day);
    if (last === undefined) return notJudged("no air test before the fill is on record", { field: "date" });
    const until = lastDayOfTest(last, shop.figures.airTestMonths);
    if (day <= until) return PASS;
    return {
      kind: "fault",
      severity: "breach",
      basis: shop.rules.country === "US" ? "law" : "practice",
      source: shop.rules.country === "US" ? "29 CFR 1910.430(b)(4)" : "EN 12021; national practice",
      message: `The last air test was on ${dateText(dayOfTest(last))}: the next was due by ${dateText(until)}.`,
      todo: "Have the air tested, and write the result under Rules & shop.",
      at: { field: "date" },
    };
  },
};
