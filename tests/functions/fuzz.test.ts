import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isProblem, type Answer } from "../../src/functions/answer";
import { WORKSHEET_FUNCTIONS } from "../../src/functions/catalogue";
import type { Argument } from "../../src/typed/cells";
import { evaluate } from "../../src/functions/evaluate";
import { ANYTHING, rowsFor } from "./arbitraries";

/** Rectangular, finite, and every error a sentence of the domain and not a fault of ours. */
function expectWellFormed(answer: Answer): void {
  expect(answer.length).toBeGreaterThan(0);
  for (const row of answer) {
    expect(row.length).toBe(answer[0]!.length);
    expect(row.length).toBeGreaterThan(0);
    for (const cell of row) {
      if (isProblem(cell)) {
        expect(["#VALUE!", "#N/A", "#DIV/0!", "#NAME?", "#NULL!", "#NUM!", "#REF!"]).toContain(cell.error);
        expect(cell.message).not.toMatch(/Brimbook failed|undefined|NaN|Infinity|\[object/);
        expect(cell.message.length).toBeGreaterThan(10);
      } else if (typeof cell === "number") {
        expect(Number.isFinite(cell)).toBe(true);
      } else {
        expect(cell).toBeTypeOf("string");
      }
    }
  }
}

describe("no input crashes, hangs, or answers NaN or a ragged range", () => {
  it.each(WORKSHEET_FUNCTIONS.map(({ id }) => id))("%s of anything", (id) => {
    fc.assert(
      fc.property(fc.array(ANYTHING, { maxLength: 13 }), (given) => {
        expectWellFormed(evaluate(id, given as Argument[]));
      }),
      { numRuns: 150 },
    );
  });

  it.each(WORKSHEET_FUNCTIONS.map((entry) => [entry.id, entry] as const))(
    "%s of likely arguments, and WHY of them",
    (id, entry) => {
      fc.assert(
        fc.property(rowsFor(entry), ({ rows }) => {
          for (const row of rows.slice(0, 2)) {
            expectWellFormed(evaluate(id, row));
            const [[why]] = evaluate("WHY", [id, ...row]) as [[string]];
            expect(why).toBeTypeOf("string");
            expect(why).not.toMatch(/Brimbook failed|undefined|NaN|Infinity|\[object/);
          }
        }),
        { numRuns: 60 },
      );
    },
  );

  it("WHY of anything answers text", () => {
    fc.assert(
      fc.property(ANYTHING, fc.array(ANYTHING, { maxLength: 6 }), (name, given) => {
        for (const row of evaluate("WHY", [name, ...given] as Argument[]))
          expect(row[0]).toBeTypeOf("string");
      }),
      { numRuns: 200 },
    );
  });

  it("any name at all", () => {
    fc.assert(
      fc.property(fc.string(), (name) => {
        expectWellFormed(evaluate(`no ${name}`, []));
      }),
    );
  });
});

describe("nothing in place of one argument", () => {
  const cases = WORKSHEET_FUNCTIONS.filter(({ id }) => id !== "WHY").flatMap((entry) =>
    entry.parameters.map(({ name, optional }, index) => ({ entry, name, optional, index })),
  );
  /** These say by themselves what a blank means for them. */
  const blankHasMeaning = (id: string, name: string) =>
    name === "startMix" ||
    id === "FILLCHECK" ||
    (id === "PRESSURELIMIT" && ["class", "servicePressure"].includes(name));

  it.each(cases.map((each) => [`${each.entry.id} without ${each.name}`, each] as const))(
    "%s",
    (_title, { entry, name, optional, index }) => {
      for (const nothing of [null, "", 0, undefined, [[null]], [[""]]] as const) {
        const given: Argument[] = entry.parameters.map((_, at) => entry.examples[0]![at]);
        given[index] = nothing;
        const answer = evaluate(entry.id, given);
        expectWellFormed(answer);
        const [[first]] = answer as [[Answer[number][number]]];
        if (nothing === 0 || optional || blankHasMeaning(entry.id, name)) continue;
        expect(isProblem(first) && first.message).toMatch(new RegExp(`^${name}: blank`));
      }
    },
  );
});
