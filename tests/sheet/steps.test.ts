import { expect, test } from "vitest";
import { readLog, readLogSteps } from "../../src/log/readLog";
import { allAtOnce, inSteps, part, type Steps } from "../../src/sheet/steps";
import type { Sheet } from "../../src/sheet/sheet";

const LOG: Sheet = {
  name: "Fill log",
  hidden: false,
  dateSystem: 1900,
  merges: [],
  rows: [
    { values: ["Date", "Serial", "Start psi", "End psi"] },
    ...Array.from({ length: 1000 }, (_, at) => ({
      values: [`2026-10-${String(1 + (at % 28)).padStart(2, "0")}`, `GP${at % 40}`, 500, 3000],
    })),
  ],
};

/** The shares that steps tell, and their result. */
function sharesOf<Result>(steps: Steps<Result>): { shares: number[]; result: Result } {
  const shares: number[] = [];
  for (;;) {
    const step = steps.next();
    if (step.done) return { shares, result: step.value };
    shares.push(step.value);
  }
}

test("a log that is read in steps is the same log, and the steps tell how far it is", () => {
  const { shares, result } = sharesOf(readLogSteps([LOG, { ...LOG, name: "More fills" }], { units: "us" }));
  expect(result).toEqual(readLog([LOG, { ...LOG, name: "More fills" }], { units: "us" }));
  expect(result.rows.fills).toBe(2000);
  // No step reads more than 200 rows.
  expect(shares.length).toBeGreaterThanOrEqual(2002 / 200);
  expect(shares).toEqual(shares.toSorted((one, other) => one - other));
  expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...shares)).toBeLessThanOrEqual(1);
});

test("an empty workbook is read in steps too", () => {
  expect(allAtOnce(readLogSteps([]))).toEqual(readLog([]));
  expect(allAtOnce(readLogSteps([{ ...LOG, rows: [] }])).rows.total).toBe(0);
});

test("every item comes once and in its order, however many steps it takes", () => {
  const seen: number[] = [];
  const { shares } = sharesOf(
    inSteps(
      Array.from({ length: 250 }, (_, at) => at),
      250,
      (item) => seen.push(item),
    ),
  );
  expect(seen).toEqual(Array.from({ length: 250 }, (_, at) => at));
  expect(shares).toEqual([0, 0.4, 0.8]);
});

test("part of a work counts between its shares of the whole", () => {
  const { shares } = sharesOf(
    part(
      0.5,
      1,
      inSteps(Array.from({ length: 200 }), 200, () => undefined),
    ),
  );
  expect(shares).toEqual([0.5, 0.75]);
});
