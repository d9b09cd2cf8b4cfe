import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  TestHistory,
  type DoubtfulTest,
  type Test,
  type TestState,
} from "../../src/audit/record/testHistory";
import { readTestStamp } from "../../src/cylinders/readTestStamp";

const stamp = readTestStamp("2021/06");
const at = { field: "hydro" } as const;
const test = (from: number, until: number): Test => ({ kind: "hydro", stamp, from, until, at });
const doubt: DoubtfulTest = { reading: { kind: "unreadable", why: "a smudge" }, choices: [], at };

/** What a person would say who goes through the tests one by one. */
function plainly(day: number, tests: readonly Test[], doubts: readonly DoubtfulTest[]): TestState {
  const made = tests.filter(({ from }) => from <= day);
  const newest = Math.max(...made.map(({ from }) => from));
  const last = made.findLast(({ from }) => from === newest);
  if (last && day <= last.until) return { kind: "in date", last };
  if (doubts[0]) return { kind: "in doubt", doubt: doubts[0] };
  if (last) return { kind: "past due", last };
  return { kind: tests.length > 0 ? "only later" : "none" };
}

describe("what the tests of a cylinder prove on a day", () => {
  const history = new TestHistory([test(10, 20), test(30, 40)]);
  it.each([
    [9, "only later"],
    [10, "in date"],
    [20, "in date"],
    [21, "past due"],
    [29, "past due"],
    [30, "in date"],
    [40, "in date"],
    [41, "past due"],
  ])("on day %d, of tests from day 10 and 30 that hold ten days: %s", (day, kind) => {
    expect(history.stateOn(day).kind).toBe(kind);
  });

  it("is nothing without a test, and a doubt where a date cannot be read and no other holds", () => {
    expect(new TestHistory([]).stateOn(1)).toEqual({ kind: "none" });
    expect(new TestHistory([], [doubt]).stateOn(1)).toEqual({ kind: "in doubt", doubt });
    expect(new TestHistory([test(1, 5)], [doubt]).stateOn(5).kind).toBe("in date");
    expect(new TestHistory([test(1, 5)], [doubt]).stateOn(6)).toEqual({ kind: "in doubt", doubt });
  });

  it("is the same in whatever order the days are asked for", () => {
    const someTest = fc
      .tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: -2, max: 15 }))
      .map(([from, held]) => test(from, from + held));
    fc.assert(
      fc.property(
        fc.array(someTest, { maxLength: 5 }),
        fc.boolean(),
        fc.array(fc.integer({ min: -5, max: 50 }), { minLength: 1, maxLength: 30 }),
        (tests, isInDoubt, days) => {
          const doubts = isInDoubt ? [doubt] : [];
          const asked = new TestHistory(tests, doubts);
          for (const day of days) expect(asked.stateOn(day)).toEqual(plainly(day, tests, doubts));
        },
      ),
    );
  });
});

describe("whether a cylinder has any test on record", () => {
  it.each([
    [[], [], true],
    [[test(1, 2)], [], false],
    [[], [doubt], false],
  ])("is told by tests and doubts", (tests, doubts, isEmpty) => {
    expect(new TestHistory(tests, doubts).isEmpty).toBe(isEmpty);
  });
});
