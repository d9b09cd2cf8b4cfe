import { dayOfTest, failedTestFor, testsBySource, testsFor, type FailedTest } from "../../shop/airTests";
import { lacking } from "../../judge/lacks";
import { onItsDay } from "../../judge/eitherReading";
import { notJudged, PASS, type FilledCylinder, type Rule, type Verdict } from "../../judge/rule";
import type { Shop } from "../../shop/shop";
import { dateText } from "../../../words/inSentences";

/**
 * Filled with air that failed its test, from the last good test on: 29 CFR 1910.430(b)(4); EN 12021. A fill without a
 * source may have come from the one that failed.
 */
export const suspectAir: Rule = {
  id: "A02",
  rank: 25,
  title: "Filled since the last good air test",
  needs: [["date"]],
  unable: ({ airTests }) => ((airTests ?? []).length > 0 ? undefined : "no air test is on record"),
  judge: (filled, shop) => onItsDay(filled, judgeOn, shop),
};

function judgeOn(day: number, { fill }: FilledCylinder, shop: Shop): Verdict {
  const { source } = fill.fields;
  if (source.kind !== "value") {
    const ofAll = (shop.airTests ?? []).filter((test) => test.source === undefined);
    const failed = failedTestFor(day, ofAll);
    if (failed) return fault("The air", failed);
    const mayBe = testsBySource(shop).some((tests) => failedTestFor(day, tests));
    return mayBe ? lacking(source, { field: "source" }) : PASS;
  }
  const tests = testsFor(source.value, shop);
  if (tests.length === 0) return notJudged("no air test of the source is on record", { field: "source" });
  const failed = failedTestFor(day, tests);
  return failed ? fault(`The air of ${source.value}`, failed) : PASS;
}

function fault(air: string, { failed, lastGood }: FailedTest): Verdict {
  const since = lastGood
    ? `the last good test was on ${dateText(dayOfTest(lastGood))}`
    : "no good test before is on record";
  return {
    kind: "fault",
    severity: "stop",
    basis: "practice",
    source: "29 CFR 1910.430(b)(4); EN 12021",
    message: `${air} failed its test on ${dateText(dayOfTest(failed))}; ${since}.`,
    todo: "Call the owner; the cylinder is to be emptied, looked into and filled with tested air.",
    at: { field: "date" },
  };
}
