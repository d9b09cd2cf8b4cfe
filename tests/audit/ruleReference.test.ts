import { describe, expect, it } from "vitest";
import { ruleReference } from "../../scripts/rule-reference";
import { RULES } from "../../src/audit/rules/orderOfHarm";

/* That docs/rules.md is not stale is told with the other made files, in tests/functions/metadata.test.ts. */

describe("the rules", () => {
  it("are explained, each in a sentence at least", () => {
    const rows = ruleReference()
      .split("\n")
      .filter((line) => /^\| [A-Z]\d\d /.test(line));
    expect(rows).toHaveLength(RULES.length);
    for (const row of rows) expect(row.split(" | ").at(-1)!.length).toBeGreaterThan(40);
  });

  it("are in the order of harm: the first twenty-five ranks all there", () => {
    const ranks = RULES.map(({ rank }) => rank);
    expect([...ranks].sort((one, other) => one - other)).toEqual(ranks);
    for (let rank = 1; rank <= 25; rank++) expect(ranks).toContain(rank);
  });
});
