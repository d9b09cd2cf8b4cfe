import { countryInWords, type CylinderRules, type Interval } from "../../../cylinders/countryRules";
import { lastDayAllowed } from "../../../cylinders/dueDates";
import { stampText } from "../../../cylinders/testStamp";
import { Refusal } from "../../../gas/refusal";
import { BLANK } from "../../../log/reading";
import { inFill, lackingOnRecord, onlyLater, twoCylinders, unknownClass } from "../../judge/lacks";
import type { CylinderOnRecord } from "../../record/cylinderOnRecord";
import { byEveryHistory, onItsDay } from "../../judge/eitherReading";
import {
  DOES_NOT_APPLY,
  notJudged,
  PASS,
  type Fault,
  type FilledCylinder,
  type Place,
  type Verdict,
} from "../../judge/rule";
import type { Shop } from "../../shop/shop";
import { TestHistory, type Test } from "../../record/testHistory";
import { dateText } from "../../../words/inSentences";

/** A test that falls due again and again. */
export interface RecurringTest {
  readonly field: "hydro" | "visual";
  intervalOf(rules: CylinderRules): Interval | null;
  historyOf(cylinder: CylinderOnRecord): TestHistory | undefined;
  readonly todo: string;
}

/** Whether the cylinder was filled while this test was in date, judged on the day of the fill. */
export function judgePastDue(filled: FilledCylinder, { rules }: Shop, test: RecurringTest): Verdict {
  const { cylinder } = filled;
  if (cylinder.rules instanceof Refusal) return unknownClass(filled, cylinder.rules);
  const interval = test.intervalOf(cylinder.rules);
  const history = test.historyOf(cylinder);
  if (interval === null || history === undefined) return DOES_NOT_APPLY;
  const doubt = twoCylinders(filled);
  if (doubt) return doubt;
  if (interval.months === 0) {
    const message = `A cylinder of this kind may not be filled at all in ${countryInWords(rules)}: ${cylinder.rules.name}.`;
    const says = { message, fault: message };
    return fault(interval, says, "Take it out of service, and tell the owner.", { field: "serial" });
  }
  return onItsDay(filled, judgeOn, interval, history, test);
}

function judgeOn(
  day: number,
  filled: FilledCylinder,
  interval: Interval,
  history: TestHistory,
  test: RecurringTest,
): Verdict {
  const state = history.stateOn(day);
  switch (state.kind) {
    case "in date":
      return inDate(filled, day, interval, state.last, test);
    case "in doubt":
      return byEveryHistory(history, state.doubt, (read) => judgeOn(day, filled, interval, read, test));
    case "only later":
      return onlyLater(test.field, history);
    case "none":
      return lackingOnRecord(filled, BLANK, history.blankAt ?? { field: test.field });
    case "past due":
      return pastDue(filled, day, interval, state.last, history, test);
  }
}

/** Some intervals hold only as long as the visuals are unbroken (France: 72 months, else 24). */
function inDate(
  filled: FilledCylinder,
  day: number,
  interval: Interval,
  last: Test,
  test: RecurringTest,
): Verdict {
  const { visuals } = filled.cylinder;
  if (interval.withoutVisualsMonths === undefined || visuals === undefined) return PASS;
  const until = lastDayAllowed(last.stamp, interval, interval.withoutVisualsMonths);
  const looked = visuals.stateOn(day);
  if (until >= day || looked.kind === "in date") return PASS;
  return looked.kind === "past due"
    ? fault(interval, said(pastDueText({ ...last, until }), day), test.todo, inFill(filled, last.at))
    : notJudged("whether the visuals are unbroken is not known", visuals.blankAt ?? { field: "visual" });
}

function pastDue(
  filled: FilledCylinder,
  day: number,
  interval: Interval,
  last: Test,
  history: TestHistory,
  test: RecurringTest,
): Verdict {
  if (test.field === "visual" && last.kind !== "visual") {
    if (history.blankAt !== undefined) return lackingOnRecord(filled, BLANK, history.blankAt);
    // The register keeps the last visual only, and it came after the fill: one before may have been overwritten.
    const later = history.tests.find(({ kind }) => kind === "visual");
    if (later !== undefined && !hasEarlierVisual(day, history))
      return onlyLater("visual", new TestHistory([later]));
  }
  const text = test.field === "visual" ? visualText(last) : pastDueText(last);
  return fault(whoSays(interval, last, day), said(text, day), test.todo, inFill(filled, last.at));
}

function hasEarlierVisual(day: number, { tests }: TestHistory): boolean {
  return tests.some(({ kind, from }) => kind === "visual" && from <= day);
}

/** A date that is past by the country's own interval is past by the country, whatever the shop has set. */
function whoSays(interval: Interval, { kind, stamp }: Test, day: number): Interval {
  const { own } = interval;
  if (own === undefined) return interval;
  const months = kind === "manufacture" ? (own.firstMonths ?? own.months) : own.months;
  return day > lastDayAllowed(stamp, own, months) ? own : interval;
}

function visualText(last: Test): string {
  if (last.kind === "visual") return pastDueText(last);
  const which =
    last.kind === "hydro"
      ? `the hydro of ${stampText(last.stamp)}`
      : `its making in ${stampText(last.stamp)}`;
  return `Visual: the last one on record is ${which}, good until ${dateText(last.until)}`;
}

function pastDueText({ kind, stamp, until }: Test): string {
  if (kind === "manufacture")
    return `No hydro on record since manufacture in ${stampText(stamp)}: the first was due by ${dateText(until)}`;
  const test = kind === "visual" ? "Visual" : "Hydro";
  return stamp.means === "due"
    ? `${test} was due by ${dateText(until)}, as stamped`
    : `${test} ${stampText(stamp)} was due by ${dateText(until)}`;
}

/** What is wrong with the cylinder, alone and with the day of this fill. */
function said(text: string, day: number): Pick<Fault, "message" | "fault"> {
  return { message: `${text}; filled ${dateText(day)}.`, fault: `${text}.` };
}

/** Past a date that is law the cylinder may not be filled at all; past one that is custom, a rule is broken. */
function fault(
  { basis, source }: Interval,
  says: Pick<Fault, "message" | "fault">,
  todo: string,
  at: Place,
): Verdict {
  return { kind: "fault", severity: basis === "law" ? "stop" : "breach", basis, source, ...says, todo, at };
}
