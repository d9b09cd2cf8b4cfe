import { lastDayOf, monthNumber } from "../../../cylinders/calendar";
import { stampText } from "../../../cylinders/testStamp";
import { inFill, twoCylinders } from "../../judge/lacks";
import { byEveryHistory, onItsDay } from "../../judge/eitherReading";
import { possibleServices, richInflow, type RichInflow } from "../../record/oxygen";
import { DOES_NOT_APPLY, PASS, type FilledCylinder, type Rule, type Verdict } from "../../judge/rule";
import type { Test, TestHistory } from "../../record/testHistory";

/**
 * Oxygen on a cylinder that had its hydro after its oxygen cleaning: a hydro takes the valve off and fills the cylinder
 * with water. Common practice, no source. Who looked inside at a visual, and how, logs do not say.
 */
export const hydroSinceCleaning: Rule = {
  id: "O05",
  rank: 35,
  title: "Hydro since its oxygen cleaning",
  needs: [["oxygenCleaned"], ["hydro"], ["method", "oxygenAdded"], ["date"]],
  judge(filled, shop) {
    const inflow = richInflow(filled, shop);
    if (inflow === undefined) return DOES_NOT_APPLY;
    const doubt = twoCylinders(filled);
    if (doubt) return doubt;
    const { hydros, cleanings } = filled.cylinder;
    const isClean = possibleServices(filled).some(({ oxygenClean }) => oxygenClean);
    // O01 speaks of a cylinder that is not oxygen clean at all, O04 of one that was never cleaned.
    if (!isClean || hydros === undefined) return DOES_NOT_APPLY;
    return onItsDay(filled, judgeHydros, hydros, cleanings, inflow);
  },
};

function judgeHydros(
  day: number,
  filled: FilledCylinder,
  hydros: TestHistory,
  cleanings: TestHistory,
  inflow: RichInflow,
): Verdict {
  const [doubt] = cleanings.doubts;
  if (doubt)
    return byEveryHistory(cleanings, doubt, (read) => judgeHydros(day, filled, hydros, read, inflow));
  const cleaned = latest(cleanings.tests, day, "oxygen cleaning");
  if (cleaned === undefined) return DOES_NOT_APPLY;
  const hydro = latest(hydros.tests, day, "hydro");
  if (hydro && isAfter(hydro, cleaned)) return fault(filled, cleaned, hydro, inflow);
  const [unclear] = hydros.doubts;
  return unclear
    ? byEveryHistory(hydros, unclear, (read) => judgeHydros(day, filled, read, cleanings, inflow))
    : PASS;
}

function fault(filled: FilledCylinder, cleaned: Test, hydro: Test, { how, at }: RichInflow): Verdict {
  return {
    kind: "fault",
    severity: "breach",
    basis: "practice",
    source: "common practice, no source",
    message: `${how} into a cylinder cleaned for oxygen ${stampText(cleaned.stamp)}, and opened and filled with water for its hydro ${stampText(hydro.stamp)}.`,
    todo: "Put no more oxygen on it before it is cleaned again; if it was, write the date of that cleaning.",
    at: inFill(filled, at),
  };
}

function latest(tests: readonly Test[], day: number, kind: Test["kind"]): Test | undefined {
  let last: Test | undefined;
  for (const test of tests)
    if (test.kind === kind && test.from <= day && (last === undefined || test.from >= last.from)) last = test;
  return last;
}

/** Stamps of one month may be of one visit, and come in any order. */
function isAfter(hydro: Test, cleaned: Test): boolean {
  const bothHaveDays = hydro.stamp.day !== undefined && cleaned.stamp.day !== undefined;
  return hydro.from > (bothHaveDays ? cleaned.from : lastDayOf(monthNumber(cleaned.stamp.month)));
}
