import { dayNumber, firstDayOf, monthNumber } from "../../cylinders/calendar";
import type { CountryRules, CylinderRules, Interval } from "../../cylinders/countryRules";
import { lastDayAllowed, whenTested } from "../../cylinders/dueDates";
import { isExternalOnly, isInspection } from "../../cylinders/inspectionMarks";
import { stampText, type TestStamp } from "../../cylinders/testStamp";
import type { Cylinder, TestField } from "../../log/log";
import type { Reading } from "../../log/reading";
import { testsOf, type RecordedTest } from "../../log/register";
import type { Place } from "../judge/verdict";
import { TestHistory, type DoubtfulTest, type Test } from "./testHistory";

/** Hydros, judged by the given interval; a cylinder without any counts from its manufacture. */
export function hydros(records: readonly Cylinder[], interval: Interval, rules: CountryRules): TestHistory {
  return hydroHistory(testsOf(records, "hydro"), records, interval, rules);
}

function hydroHistory(
  recorded: readonly RecordedTest[],
  records: readonly Cylinder[],
  interval: Interval,
  rules: CountryRules,
): TestHistory {
  const history = historyOf("hydro", recorded, interval, (stamp) => !isInspection(stamp, rules));
  if (!history.isEmpty || records.length === 0) return history;
  const made = records
    .filter(({ fields }) => fields.made.kind !== "blank")
    .map((record) => ({ record, field: "made" as const, reading: record.fields.made }));
  const { tests, doubts } = historyOf("made", made, interval);
  return new TestHistory(tests, doubts, blankIn(records, "hydro"));
}

/**
 * Visuals, and hydros where those include one: also a hydro that can be read in two ways, since one of them may clear
 * the cylinder. Of a hydro that is written as its due date, the look inside was when that hydro was made.
 */
export function visuals(
  records: readonly Cylinder[],
  cylinder: CylinderRules,
  interval: Interval,
  rules: CountryRules,
): TestHistory {
  const own = historyOf("visual", testsOf(records, "visual"), interval, (stamp) => !isExternalOnly(stamp));
  const blankAt = own.isEmpty ? blankIn(records, "visual") : undefined;
  if (!cylinder.hydroCountsAsVisual) return new TestHistory(own.tests, own.doubts, blankAt);
  const recorded = testsOf(records, "hydro").map((test) => ({
    ...test,
    reading: withStamps(test.reading, (stamp) => whenTested(stamp, cylinder.hydro)),
  }));
  const byHydro = hydroHistory(recorded, records, interval, rules);
  const inspections = testsOf(records, "hydro").filter(
    ({ reading }) =>
      reading.kind === "value" && isInspection(reading.value, rules) && !isExternalOnly(reading.value),
  );
  return new TestHistory(
    [...own.tests, ...byHydro.tests, ...historyOf("visual", inspections, interval).tests],
    [...own.doubts, ...byHydro.doubts.filter(({ reading }) => reading.kind === "ambiguous")],
    blankAt,
  );
}

function withStamps(
  reading: Reading<TestStamp>,
  change: (stamp: TestStamp) => TestStamp,
): Reading<TestStamp> {
  if (reading.kind === "value") return { ...reading, value: change(reading.value) };
  return reading.kind === "ambiguous" ? { ...reading, choices: reading.choices.map(change) } : reading;
}

/** Oxygen cleanings, which hold to the end of the month like tests. */
export function cleanings(records: readonly Cylinder[], months: number): TestHistory {
  const interval: Interval = { months, due: "end of month", basis: "practice", source: "" };
  return historyOf("oxygenCleaned", testsOf(records, "oxygenCleaned"), interval);
}

/** Of these recorded tests, those that count, with the days on which each holds. */
export function historyOf(
  as: TestField | "made",
  recorded: readonly RecordedTest[],
  interval: Interval,
  counts: (stamp: TestStamp) => boolean = () => true,
): TestHistory {
  const tests: Test[] = [];
  const doubts: DoubtfulTest[] = [];
  for (const { record, field, reading: written, column } of recorded) {
    const at: Place = { record, field, ...(column !== undefined && { column }) };
    const reading = withoutImpossibleStamp(written, record);
    const asTest = (stamp: TestStamp): Test => ({
      kind: KINDS[as],
      stamp,
      at,
      ...daysOf(stamp, monthsFor(as, stamp, record, interval), interval),
    });
    if (reading.kind === "value") {
      if (counts(reading.value)) tests.push(asTest(reading.value));
      else doubts.push({ reading: noSuchTest(reading.value, as), choices: [], at });
    } else if (reading.kind !== "blank") {
      const choices = reading.kind === "ambiguous" && reading.choices.every(counts) ? reading.choices : [];
      doubts.push({ reading, choices: choices.map(asTest), at });
    }
  }
  return new TestHistory(tests, doubts);
}

const KINDS: Readonly<Record<TestField | "made", Test["kind"]>> = {
  hydro: "hydro",
  visual: "visual",
  made: "manufacture",
  oxygenCleaned: "oxygen cleaning",
  eddyCurrent: "eddy current",
};

function noSuchTest(stamp: TestStamp, as: TestField | "made"): DoubtfulTest["reading"] {
  const written = `${stampText(stamp)} ${stamp.marks.join(" ")}`;
  return {
    kind: "unreadable",
    why:
      as === "visual"
        ? `${written} is a look at the outside, not a visual. Write the date of the last visual.`
        : `${written} is an inspection, not a hydro. Write the date of the last hydro.`,
  };
}

/** The register's row, as it comes last, else the fill's own. */
function blankIn(records: readonly Cylinder[], field: TestField): Place {
  const record = records.at(-1);
  return { field, ...(record && { record }) };
}

/** No cylinder is tested before it is made: a date that could only then be a swallowed stamp is a date. */
export function withoutImpossibleStamp(
  reading: Reading<TestStamp>,
  { fields }: Cylinder,
): Reading<TestStamp> {
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
