import { describe, expect, test } from "vitest";
import { Sentences } from "../../src/page/functions/sentences";

const cell = { workbook: "w", sheet: "s", row: 4, column: 2, formula: "BRIM.MOD(A1:A3)" };
const problem = { error: "#VALUE!", message: "mix: argon cannot be breathed." } as const;

describe("sentences behind errors", () => {
  test("are found for the cell that shows the error, down the column too", () => {
    const sentences = new Sentences();
    sentences.keep(cell, [[33.75], [problem], [66.2]]);
    expect(sentences.behind("#VALUE!", cell, { row: 5, column: 2 })).toBe(problem.message);
    expect(sentences.behind("#VALUE!", cell, { row: 6, column: 2 })).toBeUndefined();
    expect(sentences.behind("#VALUE!", cell, { row: 5, column: 3 })).toBeUndefined();
  });

  test("are not told of another error, another formula or another sheet", () => {
    const sentences = new Sentences();
    sentences.keep(cell, [[problem]]);
    expect(sentences.behind("#VALUE!", cell, cell)).toBe(problem.message);
    expect(sentences.behind("#N/A", cell, cell)).toBeUndefined();
    expect(sentences.behind("#VALUE!", { ...cell, formula: "A1+1" }, cell)).toBeUndefined();
    expect(sentences.behind("#VALUE!", { ...cell, sheet: "other" }, cell)).toBeUndefined();
    sentences.clear();
    expect(sentences.behind("#VALUE!", cell, cell)).toBeUndefined();
  });
});
