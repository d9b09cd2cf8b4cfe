import { dayNumber, firstDayOf, monthNumber } from "../cylinders/calendar";
import type { CountryRules, CylinderRules, Interval } from "../cylinders/countryRules";
import { lastDayAllowed } from "../cylinders/dueDates";
import type { TestStamp } from "../cylinders/testStamp";
import type { Cylinder, TestField } from "../log/log";
import type { Reading } from "../log/reading";
import type { Place } from "./rule";

/** A test that is on record, and the days on which it proves that the cylinder may be filled. */
export interface Test {
  readonly kind: "hydro" | "visual" | "manufacture" | "oxygen cleaning";
  readonly stamp: TestStamp;
  /** Day number from which it can be counted on; a stamp without a day counts from the first of its month. */
  readonly from: number;
  /** Day number of the last day that it holds. */
  readonly until: number;
  readonly at: Place;
}

/** A test date that is in doubt. */
export interface DoubtfulTest {
  readonly reading: Exclude<Reading<TestStamp>, { kind: "value" | "blank" }>;
  readonly at: Place;
}

/** All tests of one kind that the log knows of a cylinder, over time, with the doubts beside them. */
export interface TestHistory {
  readonly tests: readonly Test[];
  readonly doubts: readonly DoubtfulTest[];
  /** Where a date would stand, when there is none of this kind. */
  readonly blankAt: Place | undefined;
}

/** What a test proves on a day: the latest one made by then, or why nothing can be said. */
export type TestState =
  | { readonly kind: "in date" }
  | { readonly kind: "past due"; readonly last: Test }
  | { readonly kind: "in doubt"; readonly doubt: DoubtfulTest }
  | { readonly kind: "only later" }
  | { readonly kind: "none" };

/** Tests count as they were on the day: a later one proves nothing about it, and contradicts nothing. */
export function stateOn(day: number, history: TestHistory): TestState {
  let last: Test | undefined;
  for (const test of history.tests) {
    if (test.from <= day && (last === undefined || test.from >= last.from)) last = test;
  }
  if (last !== undefined && last.until >= day) return { kind: "in date" };
  const [doubt] = history.doubts;
  if (doubt !== undefined) return { kind: "in doubt", doubt };
  if (last !== undefined) return { kind: "past due", last };
  return { kind: history.tests.length > 0 ? "only later" : "none" };
}

/** Hydros, judged by the given interval; a cylinder without any counts from its manufacture. */
export function hydros(records: readonly Cylinder[], interval: Interval, rules: CountryRules): TestHistory {
  const history = historyOf("hydro", "hydro", records, interval, (stamp) => !isInspection(stamp, rules));
  if (history.tests.length > 0 || history.doubts.length > 0) return history;
  const made = historyOf("made", "manufacture", records, interval);
  return { ...made, blankAt: history.blankAt ?? made.blankAt };
}

/**
 * Visuals, and hydros where those include one: also a hydro that can be read in two ways, since one of them may clear
 * the cylinder.
 */
export function visuals(
  records: readonly Cylinder[],
  cylinder: CylinderRules,
  interval: Interval,
  rules: CountryRules,
): TestHistory {
  const own = historyOf("visual", "visual", records, interval);
  if (!cylinder.hydroCountsAsVisual) return own;
  const byHydro = hydros(records, interval, rules);
  const inspections = historyOf("hydro", "visual", records, interval, (stamp) => isInspection(stamp, rules));
  return {
    tests: [...own.tests, ...byHydro.tests, ...inspections.tests],
    doubts: [...own.doubts, ...byHydro.doubts.filter(({ reading }) => reading.kind === "ambiguous")],
    blankAt: own.blankAt,
  };
}

/** Oxygen cleanings, which hold to the end of the month like tests. */
export function cleanings(records: readonly Cylinder[], months: number): TestHistory {
  const interval: Interval = { months, due: "end of month", basis: "practice", source: "" };
  return historyOf("oxygenCleaned", "oxygen cleaning", records, interval);
}

function isInspection(stamp: TestStamp, rules: CountryRules): boolean {
  return stamp.marks.some((mark) => rules.visualMarks.includes(mark));
}

function historyOf(
  field: TestField | "made",
  kind: Test["kind"],
  records: readonly Cylinder[],
  interval: Interval,
  counts: (stamp: TestStamp) => boolean = () => true,
): TestHistory {
  const tests: Test[] = [];
  const doubts: DoubtfulTest[] = [];
  let blankAt: Place | undefined;
  const take = (written: Reading<TestStamp>, at: Place, record: Cylinder): void => {
    const reading = withoutImpossibleStamp(written, record);
    if (reading.kind === "blank") blankAt ??= at;
    else if (reading.kind !== "value") doubts.push({ reading, at });
    else if (counts(reading.value)) {
      const isFirst = field === "made" || isOriginal(reading.value, record);
      const months = (isFirst ? interval.firstMonths : undefined) ?? interval.months;
      tests.push({ kind, stamp: reading.value, ...daysOf(reading.value, interval, months), at });
    }
  };
  for (const record of records) {
    take(record.fields[field], { record, field }, record);
    for (const further of record.furtherTests ?? []) {
      if (further.field === field) take(further.reading, { record, field, column: further.column }, record);
    }
  }
  return { tests, doubts, blankAt: tests.length + doubts.length === 0 ? blankAt : undefined };
}

/** No cylinder is tested before it is made: a date that could only then be a swallowed stamp is a date. */
function withoutImpossibleStamp(reading: Reading<TestStamp>, { fields }: Cylinder): Reading<TestStamp> {
  if (reading.kind !== "ambiguous" || reading.doubt !== "swallowed stamp" || fields.made.kind !== "value")
    return reading;
  const made = monthNumber(fields.made.value.month);
  const [only, other] = reading.choices.filter(({ month }) => monthNumber(month) >= made);
  return only !== undefined && other === undefined && only.day !== undefined
    ? { kind: "value", value: only }
    : reading;
}

/** The maker's own test, in the month of manufacture: what follows it is the first interval. */
function isOriginal(stamp: TestStamp, record: Cylinder): boolean {
  const made = record.fields.made;
  return made.kind === "value" && monthNumber(made.value.month) >= monthNumber(stamp.month);
}

function daysOf(stamp: TestStamp, interval: Interval, months: number): Pick<Test, "from" | "until"> {
  const until = lastDayAllowed(stamp, interval, months);
  if (stamp.means === "due") return { from: firstDayOf(monthNumber(stamp.month) - months), until };
  return { from: stamp.day ? dayNumber(stamp.day) : firstDayOf(monthNumber(stamp.month)), until };
}
