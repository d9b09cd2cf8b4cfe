import { dayOfTest, lastDayOfTest, lastTestBy, testsBySource, testsFor } from "../../shop/airTests";
import { lacking } from "../../judge/lacks";
import { onItsDay } from "../../judge/eitherReading";
import { basisHere } from "../../shop/citation";
import { airTestSource } from "../../shop/figureProse";
import { notJudged, PASS, type FilledCylinder, type Rule, type Verdict } from "../../judge/rule";
import type { AirTest, Shop } from "../../shop/shop";
import { dateText } from "../../../words/inSentences";

/** Air that nobody has tested for too long: carbon monoxide is not noticed. 29 CFR 1910.430(b)(4), and the like elsewhere. */
export const airTestDue: Rule = {
  id: "A01",
  rank: 24,
  title: "Air test out of date",
  needs: [["date"]],
  unable: ({ airTests }) => ((airTests ?? []).length > 0 ? undefined : "no air test is on record"),
  judge: (filled, shop) => onItsDay(filled, judgeOn, shop),
};

/** A fill without a source may have come from any that was tested: where they differ, nobody knows. */
function judgeOn(day: number, { fill }: FilledCylinder, shop: Shop): Verdict {
  const { source } = fill.fields;
  if (source.kind === "value") return judgeTests(day, testsFor(source.value, shop), shop);
  const [first, ...others] = testsBySource(shop).map((tests) => judgeTests(day, tests, shop));
  return others.some(({ kind }) => kind !== first?.kind) ? lacking(source, { field: "source" }) : first!;
}

function judgeTests(day: number, tests: readonly AirTest[], shop: Shop): Verdict {
  const last = lastTestBy(day, tests);
  if (last === undefined) return notJudged("no air test before the fill is on record", { field: "date" });
  const until = lastDayOfTest(last, shop.figures.airTestMonths);
  if (day <= until) return PASS;
  return {
    kind: "fault",
    severity: "breach",
    basis: basisHere(shop.rules, airTestSource(shop.rules)),
    source: airTestSource(shop.rules),
    message: `The last air test was on ${dateText(dayOfTest(last))}: the next was due by ${dateText(until)}.`,
    todo: "Have the air tested, and enter the result under Rules & shop in the pane.",
    at: { field: "date" },
  };
}
