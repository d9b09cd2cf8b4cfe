import fc from "fast-check";
import { expect, test } from "vitest";
import { ITEMS_PER_MESSAGE, Pieces, takenApart } from "../../src/session/worker/pieces";

/** A value as it arrives, and how many items the longest message carried. */
function sent(value: unknown) {
  const pieces = new Pieces();
  let longest = 0;
  const rest = takenApart(value, (items) => {
    longest = Math.max(longest, items.length);
    pieces.add(structuredClone(items));
  });
  return { rest, longest, arrived: pieces.joined(structuredClone(rest)) };
}

test("a report of long lists arrives as it was sent, its lists a few items at a time", () => {
  const list = (length: number, name: string) => Array.from({ length }, (_, at) => ({ [name]: at }));
  const report = {
    findings: list(1234, "finding"),
    notChecked: list(3, "lack"),
    due: { asOf: "2026-10-31", outOfDate: list(ITEMS_PER_MESSAGE + 1, "due"), dueWithin: [] },
    drafts: [{ rows: list(5000, "row") }, { rows: list(2, "row") }],
    patterns: undefined,
    none: null,
  };
  const { rest, longest, arrived } = sent(report);
  expect(arrived).toEqual(report);
  expect(longest).toBe(ITEMS_PER_MESSAGE);
  expect(JSON.stringify(rest).length).toBeLessThan(400);
});

test("whatever is sent arrives", () => {
  const long = fc.array(fc.integer(), {
    minLength: ITEMS_PER_MESSAGE - 2,
    maxLength: 2 * ITEMS_PER_MESSAGE + 2,
  });
  const value = fc.letrec((tie) => ({
    value: fc.oneof(
      { maxDepth: 4 },
      fc.string(),
      fc.double({ noNaN: true }),
      fc.constantFrom(null, undefined, true),
      long,
      fc.array(tie("value"), { maxLength: 4 }),
      fc.dictionary(
        fc.string().filter((key) => key !== "__proto__"),
        tie("value"),
        { maxKeys: 4 },
      ),
    ),
  })).value;
  fc.assert(
    fc.property(value, (given) => {
      expect(sent(given).arrived).toEqual(given);
    }),
    { numRuns: 200 },
  );
});
