import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { WORKSHEET_FUNCTIONS } from "../../src/functions/catalogue";
import type { Argument } from "../../src/typed/cells";
import { evaluate } from "../../src/functions/evaluate";
import { rowsFor } from "./arbitraries";
import { answers, cell, column, sentence } from "./calls";

describe("columns", () => {
  it("single values are repeated beside a column", () => {
    expect(answers("MOD", column("EAN32", 50, "18/45"), "m")).toEqual([
      33.75,
      18,
      expect.closeTo(67.7778, 4),
    ]);
  });

  it("columns go down side by side", () => {
    expect(answers("MOD", column("EAN32", "EAN32"), column("m", "ft"), column(1.4, 1.6))).toEqual([
      33.75, 132,
    ]);
  });

  it("a blank row stays blank, whether it arrives as null, empty text or 0", () => {
    expect(answers("MOD", column("EAN32", null, "", 0, " ", undefined), "m")).toEqual([
      33.75,
      "",
      "",
      "",
      "",
      "",
    ]);
    expect(answers("OXYGENPP", column(30, 0, null), column(32, 0, ""), "m")).toEqual([
      expect.closeTo(1.28, 9),
      "",
      "",
    ]);
  });

  it("a row in part blank is an error that names the argument", () => {
    expect(answers("OXYGENPP", column(30, 30, null, ""), column(32, null, 32, 36), "m")).toEqual([
      expect.closeTo(1.28, 9),
      expect.stringMatching(/^#VALUE! mix: blank or left out/),
      expect.stringMatching(/^#VALUE! depth: blank or left out/),
      expect.stringMatching(/^#VALUE! depth: blank or left out/),
    ]);
  });

  it("FILLCHECK says UNKNOWN for a row in part blank", () => {
    const [first, second, third] = answers(
      "FILLCHECK",
      column("2026-10-31", "2026-10-31", null),
      column("2022/10", null, null),
      column("2026/03", "2026/03", null),
      column(40, 0, null),
      column(32, 32, null),
      column("premix", "premix", null),
      "US",
    );
    expect(first).toBe("OK: hydro, visual, rating, method");
    expect(second).toMatch(/^UNKNOWN: .*hydro.*rating/);
    expect(third).toBe("");
  });

  it("a bad row gives its error in that row only", () => {
    expect(answers("MOD", column("EAN32", "argon", { error: "#N/A" }, "EAN50"), "m")).toEqual([
      33.75,
      expect.stringMatching(/^#VALUE! mix: "argon"/),
      expect.stringMatching(/^#N\/A mix: the cell holds the error #N\/A/),
      18,
    ]);
  });

  it("columns of different length are one error for the whole call", () => {
    expect(evaluate("OXYGENPP", [column(10, 20, 30), column(32, 32), "m"])).toEqual([
      [{ error: "#VALUE!", message: "mix has 2 rows and depth has 3: make the columns equally long." }],
    ]);
  });

  it("a mix argument two columns wide is refused, and says how to join oxygen and helium", () => {
    const wide = [
      [18, 45],
      [21, 35],
    ];
    expect(sentence("MOD", wide, "m")).toMatch(/^mix: 2 cells side by side.*BRIM\.MIX\(B2,C2\)/);
    expect(answers("MIX", column(18, 21), column(45, 35))).toEqual(["TX 18/45", "TX 21/35"]);
  });

  it("a row of cells is refused as well", () => {
    expect(sentence("OXYGENPP", [[10, 20, 30]], 32, "m")).toBe(
      "depth: 3 cells side by side. Give one cell or one column.",
    );
  });

  it("a range of one cell is a single value", () => {
    expect(cell("MOD", [["EAN32"]], [["m"]])).toBe(33.75);
  });

  it("tables are not lifted, other arguments beside them are", () => {
    const prices: Argument = [["top", 1], ["per fill", 2]]; // prettier-ignore
    const costs = answers("FILLCOST", 10, column(100, 150), "air", 200, "air", prices, "bar");
    expect(costs).toEqual([
      cell("FILLCOST", 10, 100, "air", 200, "air", prices, "bar"),
      cell("FILLCOST", 10, 150, "air", 200, "air", prices, "bar"),
    ]);
  });

  it("WHY explains a column row by row", () => {
    const [first, second, third] = answers("WHY", "MOD", column("EAN32", "argon", null), "m");
    expect(first).toMatch(/^MOD: 33\.75 m\./);
    expect(second).toMatch(/^mix: "argon" is not a breathing gas/);
    expect(third).toBe("");
  });
});

describe("a column gives what single calls give", () => {
  const lifted = WORKSHEET_FUNCTIONS.filter(({ id }) => id !== "WHY" && id !== "FILLSTEPS");
  it.each(lifted.map((entry) => [entry.id, entry] as const))("%s", (id, entry) => {
    fc.assert(
      fc.property(rowsFor(entry), ({ rows, columns }) => {
        const given = rows[0]!.map((single, index) =>
          columns[index] ? (rows.map((row) => [row[index]]) as Argument) : single,
        );
        const isBlank = (row: readonly Argument[]) =>
          row.every(
            (each, index) =>
              !columns[index] || each === 0 || each === null || each === undefined || each === "",
          );
        const answer = evaluate(id, given);
        if (!columns.includes(true)) {
          expect(answer).toEqual(evaluate(id, rows[0]!));
          return;
        }
        const singles = rows.map((row) => (isBlank(row) ? [""] : evaluate(id, row)[0]));
        expect(answer).toEqual(singles);
      }),
      { numRuns: 60 },
    );
  });
});
