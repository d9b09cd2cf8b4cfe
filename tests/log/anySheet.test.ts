import fc from "fast-check";
import { describe, it } from "vitest";
import { anyContext, anySheet, anyTableInAnyOrder } from "./anySheet";
import { checkLaws, checkRowOrder } from "./lawsOfReading";

/** A short run with a fixed seed; `npx tsx scripts/fuzz-log.ts 600` goes on for ten minutes with another. */
const SHORT = { numRuns: 300, seed: 20261031 } as const;

describe("any sheets at all", () => {
  it("are read without a crash, with every row of one kind and every reading whole", () => {
    fc.assert(
      fc.property(fc.array(anySheet, { maxLength: 3 }), anyContext, (sheets, context) => {
        checkLaws(sheets, context);
      }),
      SHORT,
    );
  }, 120_000);

  it("are read the same in whatever order their rows stand", () => {
    fc.assert(
      fc.property(anyTableInAnyOrder, ([table, order]) => {
        checkRowOrder(table, order);
      }),
      SHORT,
    );
  }, 120_000);
});
