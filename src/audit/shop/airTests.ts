import { Temporal } from "temporal-polyfill";
import { dayNumber } from "../../cylinders/calendar";
import { isSameSource } from "./gasSources";
import type { AirTest, Shop } from "./shop";

/** Tests of this bank or compressor, and those of all the air of the shop. */
export function testsFor(source: string, { airTests = NO_TESTS }: Shop): readonly AirTest[] {
  let bySource = BY_SOURCE.get(airTests);
  if (bySource === undefined) BY_SOURCE.set(airTests, (bySource = new Map()));
  let found = bySource.get(source);
  if (found === undefined) {
    found = airTests.filter((test) => test.source === undefined || isSameSource(test.source, source));
    bySource.set(source, found);
  }
  return found;
}

/** The tests of each bank or compressor that was tested by name, and those of all the air where there are any. */
export function testsBySource(shop: Shop): readonly (readonly AirTest[])[] {
  const { airTests = NO_TESTS } = shop;
  let all = ALL_SOURCES.get(airTests);
  if (all === undefined) {
    const names = new Set(airTests.flatMap(({ source }) => source ?? []));
    const ofAll = airTests.filter(({ source }) => source === undefined);
    all = [...[...names].map((name) => testsFor(name, shop)), ...(ofAll.length > 0 ? [ofAll] : [])];
    ALL_SOURCES.set(airTests, all);
  }
  return all;
}

const NO_TESTS: readonly AirTest[] = [];
/** A log names few sources many times. */
const ALL_SOURCES = new WeakMap<readonly AirTest[], readonly (readonly AirTest[])[]>();
const BY_SOURCE = new WeakMap<readonly AirTest[], Map<string, readonly AirTest[]>>();

/** Day number of the sample. */
export function dayOfTest(test: AirTest): number {
  let day = DAYS.get(test);
  if (day === undefined) DAYS.set(test, (day = dayNumber(Temporal.PlainDate.from(test.date))));
  return day;
}

/** The last test made by this day; tests are in the order of their days. */
export function lastTestBy(day: number, tests: readonly AirTest[]): AirTest | undefined {
  return tests[madeBy(day, tests) - 1];
}

/** How many of these tests were made by this day. */
function madeBy(day: number, tests: readonly AirTest[]): number {
  let made = 0;
  while (made < tests.length && dayOfTest(tests[made]!) <= day) made++;
  return made;
}

/** Day number of the last day on which a test of so many months' worth still counts. */
export function lastDayOfTest(test: AirTest, months: number): number {
  const known = LAST_DAYS.get(test);
  if (known?.months === months) return known.day;
  const day = dayNumber(Temporal.PlainDate.from(test.date).add({ months }));
  LAST_DAYS.set(test, { months, day });
  return day;
}

/** Few tests are asked about for every fill. */
const DAYS = new WeakMap<AirTest, number>();
const LAST_DAYS = new WeakMap<AirTest, { readonly months: number; readonly day: number }>();

/** A test that failed, and the last good one before it: all air between the two, and after it, is suspect. */
export interface FailedTest {
  readonly failed: AirTest;
  readonly lastGood: AirTest | undefined;
}

/**
 * The failed test that makes the air of a day suspect: the first one after it, or the last one before it. Air filled on
 * the day of a good test came after it.
 */
export function failedTestFor(day: number, tests: readonly AirTest[]): FailedTest | undefined {
  const next = madeBy(day, tests);
  const at = tests[next - 1]?.passed === false ? next - 1 : next;
  const failed = tests[at];
  if (failed === undefined || failed.passed) return undefined;
  return { failed, lastGood: tests.slice(0, at).findLast(({ passed }) => passed) };
}
