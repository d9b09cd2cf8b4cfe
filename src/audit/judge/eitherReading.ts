import { dayNumber } from "../../cylinders/calendar";
import { stampText } from "../../cylinders/testStamp";
import type { Reading } from "../../log/reading";
import { dayOf, lacking } from "./lacks";
import { SEVERITIES } from "./finding";
import type { Fault, FilledCylinder, Place, Verdict } from "./rule";
import { everyReading, type DoubtfulTest, type Test, type TestHistory } from "../record/testHistory";
import { fieldName } from "../../words/fields";
import { dateText } from "../../words/inSentences";

/*
 * What can be read in two ways may be wrong in both. Such a fault is told, and says that it is one by either reading;
 * where one of the readings clears the fill, the doubt stands and the fill is not checked.
 */

/** A reading, and where it stands. */
interface Read<T> {
  readonly reading: Reading<T>;
  readonly at: Place;
}

/** A verdict on a day, by what the rule has found out of the fill before. */
type JudgeOn<Found extends readonly unknown[]> = (
  day: number,
  filled: FilledCylinder,
  ...found: Found
) => Verdict;

/** The verdict by the day of the fill; where its date is in doubt, a fault only if it is one on each of its days. */
export function onItsDay<Found extends readonly unknown[]>(
  filled: FilledCylinder,
  judgeOn: JudgeOn<Found>,
  ...found: Found
): Verdict {
  const day = dayOf(filled);
  return typeof day === "number" ? judgeOn(day, filled, ...found) : onEachDay(filled, judgeOn, found);
}

function onEachDay<Found extends readonly unknown[]>(
  filled: FilledCylinder,
  judgeOn: JudgeOn<Found>,
  found: Found,
): Verdict {
  const date = { reading: filled.fill.fields.date, at: { field: "date" } } as const;
  return byEveryReading(date, (day) => judgeOn(dayNumber(day), filled, ...found), dateText);
}

/** The verdict by a value; where it is in doubt, a fault only if it is one by each of the readings. */
export function byEveryReading<T>(
  { reading, at }: Read<T>,
  judge: (value: T) => Verdict,
  textOf: (value: T) => string,
): Verdict {
  if (reading.kind === "value") return judge(reading.value);
  if (reading.kind !== "ambiguous") return lacking(reading, at);
  const { choices } = reading;
  // A doubt with a single choice has another that nobody could read.
  const fault = choices.length > 1 ? mildestOf(choices.map(judge)) : undefined;
  return fault ? saying(fault, [readings(at, choices.map(textOf))]) : lacking(reading, at);
}

/** The verdict by the tests of a cylinder, some of them in doubt: a fault only if it is one however they are read. */
export function byEveryHistory(
  history: TestHistory,
  doubt: DoubtfulTest,
  judge: (history: TestHistory) => Verdict,
): Verdict {
  const fault = mildestOf(everyReading(history).map(judge));
  if (fault === undefined) return lacking(doubt.reading, doubt.at);
  return saying(
    fault,
    history.doubts.map(({ at, choices }) => readings(at, choices.map(textOfTest))),
  );
}

/** Of verdicts that are all faults, the one that does the least harm; undefined where one of them is no fault. */
function mildestOf(verdicts: readonly Verdict[]): Fault | undefined {
  const faults = verdicts.filter((verdict) => verdict.kind === "fault");
  if (faults.length < verdicts.length) return undefined;
  const harm = ({ severity }: Fault): number => SEVERITIES.indexOf(severity);
  return faults.sort((one, other) => harm(other) - harm(one))[0];
}

/** `2019-10 or 2026-10-19`: all that a test in doubt may be. */
export function readingsOf({ choices }: DoubtfulTest): string {
  return choices.map(textOfTest).join(" or ");
}

function textOfTest({ stamp }: Test): string {
  return stamp.means === "due" ? `due ${stampText(stamp)}` : stampText(stamp);
}

function readings({ field }: Place, texts: readonly string[]): string {
  return `${texts.length === 2 ? "either" : "every"} reading of the ${fieldName(field)}, ${texts.join(" or ")}`;
}

function saying(fault: Fault, doubts: readonly string[]): Fault {
  const bySay = `It is so by ${doubts.join(", and by ")}.`;
  return {
    ...fault,
    message: `${fault.message} ${bySay}`,
    ...(fault.fault !== undefined && { fault: `${fault.fault} ${bySay}` }),
  };
}
