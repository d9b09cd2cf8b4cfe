import { dayNumber, firstDayOf, monthNumber } from "../cylinders/calendar";
import type { CountryRules, CylinderRules, Interval } from "../cylinders/countryRules";
import { lastDayAllowed } from "../cylinders/dueDates";
import { stampText, type TestStamp } from "../cylinders/testStamp";
import type { Cylinder, TestField } from "../log/log";
import type { Reading } from "../log/reading";
import { testsOf, type RecordedTest } from "../log/register";
import type { Place } from "./rule";

/** A test that is on record, and the days on which it proves that the cylinder may be filled. */
export interface Test {
  readonly kind: "hydro" | "visual" | "manufacture" | "oxygen cleaning" | "eddy current";
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
  /** Every test that it may be; none where it cannot be read. */
  readonly choices: readonly Test[];
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
  | { readonly kind: "in date"; readonly last: Test }
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
  if (last !== undefined && last.until >= day) return { kind: "in date", last };
  const [doubt] = history.doubts;
  if (doubt !== undefined) return { kind: "in doubt", doubt };
  if (last !== undefined) return { kind: "past due", last };
  return { kind: history.tests.length > 0 ? "only later" : "none" };
}

/** More ways to read a cylinder's tests than this are not gone through. */
const MOST_READINGS = 64;

/** The history by each way in which its doubts can be read; none where a date cannot be read at all. */
export function everyReading(history: TestHistory): readonly TestHistory[] {
  // A doubt with a single choice has another that nobody could read.
  const ways = history.doubts.reduce(
    (all, { choices }) => all * (choices.length < 2 ? 0 : choices.length),
    1,
  );
  if (ways === 0 || ways > MOST_READINGS) return [];
  return history.doubts.reduce<readonly TestHistory[]>(
    (read, { choices }) =>
      read.flatMap((each) => choices.map((test) => ({ ...each, tests: [...each.tests, test] }))),
    [{ ...history, doubts: [] }],
  );
}

/** Of tests in doubt, the one that held longest where by every reading they are past due; else undefined. */
export function lateByEveryReading(day: number, history: TestHistory): Test | undefined {
  const states = everyReading(history).map((read) => stateOn(day, read));
  const late = states.flatMap((state) => (state.kind === "past due" ? [state.last] : []));
  if (late.length < states.length) return undefined;
  return late.sort((one, other) => other.until - one.until)[0];
}

/** Hydros, judged by the given interval; a cylinder without any counts from its manufacture. */
export function hydros(records: readonly Cylinder[], interval: Interval, rules: CountryRules): TestHistory {
  const history = historyOf(
    "hydro",
    testsOf(records, "hydro"),
    interval,
    (stamp) => !isInspection(stamp, rules),
  );
  if (history.tests.length + history.doubts.length > 0 || records.length === 0) return history;
  const made = records
    .filter(({ fields }) => fields.made.kind !== "blank")
    .map((record) => ({ record, reading: record.fields.made }));
  return { ...historyOf("made", made, interval), blankAt: blankIn(records, "hydro") };
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
  const own = historyOf("visual", testsOf(records, "visual"), interval);
  const none = own.tests.length + own.doubts.length === 0;
  const history = { ...own, blankAt: none ? blankIn(records, "visual") : undefined };
  if (!cylinder.hydroCountsAsVisual) return history;
  const byHydro = hydros(records, interval, rules);
  const inspections = testsOf(records, "hydro").filter(
    ({ reading }) => reading.kind === "value" && isInspection(reading.value, rules),
  );
  return {
    ...history,
    tests: [...own.tests, ...byHydro.tests, ...historyOf("visual", inspections, interval).tests],
    doubts: [...own.doubts, ...byHydro.doubts.filter(({ reading }) => reading.kind === "ambiguous")],
  };
}

/** Oxygen cleanings, which hold to the end of the month like tests. */
export function cleanings(records: readonly Cylinder[], months: number): TestHistory {
  const interval: Interval = { months, due: "end of month", basis: "practice", source: "" };
  return historyOf("oxygenCleaned", testsOf(records, "oxygenCleaned"), interval);
}

/** Marks such as the US `E` and the European `V` stand for an inspection: no pressure was on it. */
function isInspection(stamp: TestStamp, rules: CountryRules): boolean {
  return stamp.marks.some((mark) => rules.visualMarks.includes(mark));
}

/** Of these recorded tests, those that count, with the days on which each holds. */
export function historyOf(
  field: TestField | "made",
  recorded: readonly RecordedTest[],
  interval: Interval,
  counts: (stamp: TestStamp) => boolean = () => true,
): TestHistory {
  const tests: Test[] = [];
  const doubts: DoubtfulTest[] = [];
  for (const { record, reading: written, column } of recorded) {
    const at: Place = { record, field, ...(column !== undefined && { column }) };
    const reading = withoutImpossibleStamp(written, record);
    const asTest = (stamp: TestStamp): Test => ({
      kind: KINDS[field],
      stamp,
      at,
      ...daysOf(stamp, monthsFor(field, stamp, record, interval), interval),
    });
    if (reading.kind === "value") {
      if (counts(reading.value)) tests.push(asTest(reading.value));
      else doubts.push({ reading: noPressureTest(reading.value), choices: [], at });
    } else if (reading.kind !== "blank") {
      const choices = reading.kind === "ambiguous" && reading.choices.every(counts) ? reading.choices : [];
      doubts.push({ reading, choices: choices.map(asTest), at });
    }
  }
  return { tests, doubts, blankAt: undefined };
}

const KINDS: Readonly<Record<TestField | "made", Test["kind"]>> = {
  hydro: "hydro",
  visual: "visual",
  made: "manufacture",
  oxygenCleaned: "oxygen cleaning",
  eddyCurrent: "eddy current",
};

function noPressureTest(stamp: TestStamp): DoubtfulTest["reading"] {
  return {
    kind: "unreadable",
    why: `${stampText(stamp)} ${stamp.marks.join(" ")} is an inspection, not a hydro. Write the date of the last hydro.`,
  };
}

/** The register's row, as it comes last, else the fill's own. */
function blankIn(records: readonly Cylinder[], field: TestField): Place {
  const record = records.at(-1);
  return { field, ...(record && { record }) };
}

/** No cylinder is tested before it is made: a date that could only then be a swallowed stamp is a date. */
function withoutImpossibleStamp(reading: Reading<TestStamp>, { fields }: Cylinder): Reading<TestStamp> {
  if (reading.kind !== "ambiguous" || reading.doubt !== "swallowed stamp" || fields.made.kind !== "value")
    return reading;
  const made = monthNumber(fields.made.value.month);
  const [only, other] = reading.choices.filter(({ month }) => monthNumber(month) >= made);
  return only?.day !== undefined && other === undefined ? { kind: "value", value: only } : reading;
}

/**
 * After manufacture, and the maker's own test in that month, the first interval holds; some countries test cylinders
 * of an older make more often.
 */
function monthsFor(
  field: TestField | "made",
  stamp: TestStamp,
  { fields }: Cylinder,
  { months, firstMonths, madeBefore }: Interval,
): number {
  const { made } = fields;
  if (made.kind !== "value") return field === "made" ? (firstMonths ?? months) : months;
  if (madeBefore && made.value.month.toString() < madeBefore.month) return madeBefore.months;
  const isFirst = field === "made" || monthNumber(made.value.month) >= monthNumber(stamp.month);
  return isFirst ? (firstMonths ?? months) : months;
}

function daysOf(stamp: TestStamp, months: number, interval: Interval): Pick<Test, "from" | "until"> {
  const until = lastDayAllowed(stamp, interval, months);
  if (stamp.means === "due") return { from: firstDayOf(monthNumber(stamp.month) - months), until };
  return { from: stamp.day ? dayNumber(stamp.day) : firstDayOf(monthNumber(stamp.month)), until };
}
