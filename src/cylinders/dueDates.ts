import type { Temporal } from "temporal-polyfill";
import { refuse } from "../gas/refusal";
import { dateOf, dayNumber, firstDayOf, lastDayOf, monthNumber } from "./calendar";
import { countryInWords, type CountryRules, type CylinderRules, type Interval } from "./countryRules";
import { cylinderRules } from "./cylinderClass";
import { isExternalOnly, isInspection } from "./inspectionMarks";
import { stampText, type TestStamp } from "./testStamp";

/**
 * The last day on which a cylinder with this hydro may be filled: the end of the month that falls due, as marks carry
 * month and year only (49 CFR 180.205(c), 180.213(d)), unless the country counts to the day.
 *
 * @param cylinderClass as in the log (`3AL`, `DOT-3AA`); the country's usual cylinder where it is left out.
 * @throws Refusal where the class is not known, no hydro is asked for, or the stamp's marks are those of an inspection.
 */
export function hydroDue(
  lastTest: TestStamp,
  rules: CountryRules,
  cylinderClass?: string,
): Temporal.PlainDate {
  if (isInspection(lastTest, rules)) {
    refuse(
      `${stampText(lastTest)} ${lastTest.marks.join(" ")} is an inspection, not a hydro: write the date of the last hydro.`,
    );
  }
  return due(lastTest, cylinderRules(rules, { cylinderClass }), "hydro", rules);
}

/** The last day on which a cylinder with this visual may be filled; otherwise as `hydroDue`. */
export function visualDue(
  lastVisual: TestStamp,
  rules: CountryRules,
  cylinderClass?: string,
): Temporal.PlainDate {
  if (isExternalOnly(lastVisual)) {
    refuse(
      `${stampText(lastVisual)} ${lastVisual.marks.join(" ")} is a look at the outside, not a visual: write the date of the last visual.`,
    );
  }
  return due(lastVisual, cylinderRules(rules, { cylinderClass }), "visual", rules);
}

function due(
  stamp: TestStamp,
  cylinder: CylinderRules,
  test: "hydro" | "visual",
  rules: CountryRules,
): Temporal.PlainDate {
  const interval = cylinder[test];
  if (interval === null)
    return refuse(`The rules of ${countryInWords(rules)} ask for no ${test} of this cylinder.`);
  if (interval.months === 0)
    return refuse(`A cylinder of this kind may not be filled in ${countryInWords(rules)}: ${cylinder.name}.`);
  return dateOf(lastDayAllowed(stamp, interval));
}

/**
 * As `hydroDue`, as a day number and for any interval. `months` is the interval to use where it is not the usual one,
 * such as the first after manufacture.
 */
export function lastDayAllowed(stamp: TestStamp, interval: Interval, months = interval.months): number {
  const stamped = monthNumber(stamp.month);
  if (stamp.means === "due") return stamp.day ? dayNumber(stamp.day) : lastDayOf(stamped);
  if (interval.due === "exact date" && stamp.day) return sameDayOf(stamped + months, stamp.day.day);
  const dueMonth = stamped + months - (interval.countsFrom === "end of previous month" ? 1 : 0);
  return interval.due === "first of month" ? firstDayOf(dueMonth) - 1 : lastDayOf(dueMonth);
}

/** A stamp of the next test as the test it was counted from, by the longest interval it can have been counted with. */
export function whenTested(stamp: TestStamp, interval: Interval | null): TestStamp {
  if (stamp.means === "test" || interval === null) return stamp;
  const { plus, marks } = stamp;
  const months = Math.max(interval.months, interval.firstMonths ?? 0, interval.withoutVisualsMonths ?? 0);
  return { month: stamp.month.subtract({ months }), means: "test", plus, marks };
}

/** The day in that month, or its last: 29 February and 60 months is 28 February. */
function sameDayOf(month: number, day: number): number {
  return Math.min(firstDayOf(month) + day - 1, lastDayOf(month));
}
