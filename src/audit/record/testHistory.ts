import type { TestStamp } from "../../cylinders/testStamp";
import type { Reading } from "../../log/reading";
import type { Place } from "../judge/verdict";

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

/** What a test proves on a day: the latest one made by then, or why nothing can be said. */
export type TestState =
  | { readonly kind: "in date"; readonly last: Test }
  | { readonly kind: "past due"; readonly last: Test }
  | { readonly kind: "in doubt"; readonly doubt: DoubtfulTest }
  | { readonly kind: "only later" }
  | { readonly kind: "none" };

/**
 * All tests of one kind that the log knows of a cylinder, over time, with the doubts beside them. Tests count as they
 * were on a day: a later one proves nothing about it, and contradicts nothing.
 */
export class TestHistory {
  /** As last asked for, and the days for which it is so: fills follow one another, and mostly under one test. */
  #state: TestState | undefined;
  #from = 0;
  #until = 0;

  constructor(
    readonly tests: readonly Test[],
    readonly doubts: readonly DoubtfulTest[] = [],
    /** Where a date would stand, when there is none of this kind. */
    readonly blankAt?: Place,
  ) {}

  get isEmpty(): boolean {
    return this.tests.length + this.doubts.length === 0;
  }

  /** What the tests prove on a day, by its number. */
  stateOn(day: number): TestState {
    if (this.#state === undefined || day < this.#from || day > this.#until) this.#state = this.#stateOn(day);
    return this.#state;
  }

  #stateOn(day: number): TestState {
    let last: Test | undefined;
    let nextFrom = FAR_FUTURE;
    for (const test of this.tests) {
      if (test.from > day) nextFrom = Math.min(nextFrom, test.from);
      else if (last === undefined || test.from >= last.from) last = test;
    }
    const isInDate = last !== undefined && last.until >= day;
    this.#from = last === undefined ? FAR_PAST : isInDate ? last.from : Math.max(last.from, last.until + 1);
    this.#until = isInDate ? Math.min(nextFrom - 1, last!.until) : nextFrom - 1;
    if (last !== undefined && isInDate) return { kind: "in date", last };
    const [doubt] = this.doubts;
    if (doubt !== undefined) return { kind: "in doubt", doubt };
    if (last !== undefined) return { kind: "past due", last };
    return { kind: this.tests.length > 0 ? "only later" : "none" };
  }
}

/** Day numbers beyond all that a log can hold. */
const FAR_FUTURE = 2 ** 30;
const FAR_PAST = -FAR_FUTURE;

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
  const readings = history.doubts.reduce<readonly (readonly Test[])[]>(
    (read, { choices }) => read.flatMap((tests) => choices.map((test) => [...tests, test])),
    [history.tests],
  );
  return readings.map((tests) => new TestHistory(tests, [], history.blankAt));
}

/** Of tests in doubt, the one that held longest where by every reading they are past due; else undefined. */
export function lateByEveryReading(day: number, history: TestHistory): Test | undefined {
  const states = everyReading(history).map((read) => read.stateOn(day));
  const late = states.flatMap((state) => (state.kind === "past due" ? [state.last] : []));
  if (late.length < states.length) return undefined;
  return late.sort((one, other) => other.until - one.until)[0];
}
