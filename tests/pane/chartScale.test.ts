import * as fc from "fast-check";
import { expect, test } from "vitest";
import { scaleFor } from "../../src/pane/kit/chart/scale";

test("an axis holds every figure between its ends, with few round ticks in order", () => {
  const figures = fc.array(
    fc.integer({ min: 0, max: 5000 }).map((n) => n / 10),
    { minLength: 1, maxLength: 50 },
  );
  fc.assert(
    fc.property(figures, fc.boolean(), (given, fromZero) => {
      const { at, ticks } = scaleFor(given, fromZero);
      for (const figure of given) {
        expect(at(figure)).toBeGreaterThanOrEqual(-1e-6);
        expect(at(figure)).toBeLessThanOrEqual(1 + 1e-6);
      }
      expect(at(ticks[0]!)).toBeCloseTo(0);
      expect(at(ticks.at(-1)!)).toBeCloseTo(1);
      expect(ticks.length).toBeGreaterThan(1);
      expect(ticks.length).toBeLessThan(9);
      if (fromZero) expect(ticks[0]).toBe(0);
    }),
  );
});

test("0 to 47 fills are marked by tens", () => {
  expect(scaleFor([3, 47, 20], true).ticks).toEqual([0, 10, 20, 30, 40, 50]);
});
