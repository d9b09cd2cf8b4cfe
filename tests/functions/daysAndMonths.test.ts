import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { Temporal as Ours } from "../../src/functions/hosts/daysAndMonths";

/** What came of it: a text, or that it was refused. */
function outcome(work: () => { toString(): string }): string {
  try {
    return work().toString();
  } catch (thrown) {
    return thrown instanceof RangeError ? "refused" : String(thrown);
  }
}

const year = fc.oneof(fc.integer({ min: 1890, max: 2110 }), fc.integer({ min: -4000, max: 12_000 }));
const month = fc.integer({ min: -1, max: 14 });
const day = fc.integer({ min: -1, max: 33 });

describe("days and months without the polyfill", () => {
  it("are those of Temporal, refusals included", () => {
    fc.assert(
      fc.property(year, month, day, (y, m, d) => {
        const fields = { year: y, month: m, day: d };
        expect(outcome(() => new Ours.PlainDate(y, m, d))).toBe(
          outcome(() => new Temporal.PlainDate(y, m, d)),
        );
        expect(outcome(() => Ours.PlainDate.from(fields))).toBe(
          outcome(() => Temporal.PlainDate.from(fields)),
        );
        expect(outcome(() => new Ours.PlainYearMonth(y, m))).toBe(
          outcome(() => new Temporal.PlainYearMonth(y, m)),
        );
        expect(outcome(() => Ours.PlainYearMonth.from(fields))).toBe(
          outcome(() => Temporal.PlainYearMonth.from({ year: y, month: m })),
        );
      }),
      { numRuns: 2000 },
    );
  });

  it("count on and back alike", () => {
    const whole = fc.integer({ min: -80_000, max: 80_000 });
    fc.assert(
      fc.property(year, fc.integer({ min: 1, max: 12 }), whole, whole, year, (y, m, days, months, other) => {
        const [ours, theirs] = [new Ours.PlainDate(y, m, 1), new Temporal.PlainDate(y, m, 1)];
        expect(outcome(() => ours.add({ days }))).toBe(outcome(() => theirs.add({ days })));
        const [one, two] = [ours.add({ days }).toPlainYearMonth(), theirs.add({ days }).toPlainYearMonth()];
        expect(one.toString()).toBe(two.toString());
        expect(outcome(() => one.subtract({ months }))).toBe(outcome(() => two.subtract({ months })));
        expect(outcome(() => one.with({ year: other }))).toBe(outcome(() => two.with({ year: other })));
        expect(outcome(() => one.toPlainDate({ day: 31 }))).toBe(outcome(() => two.toPlainDate({ day: 31 })));
        const apart = Ours.PlainYearMonth.compare(one, new Ours.PlainYearMonth(other, m));
        expect(apart).toBe(Temporal.PlainYearMonth.compare(two, new Temporal.PlainYearMonth(other, m)));
      }),
      { numRuns: 2000 },
    );
  });

  it("read the days that sheets count from", () => {
    for (const text of ["1899-12-30", "1970-01-01", "2026-02-30", "1.1.2026"])
      expect(outcome(() => Ours.PlainDate.from(text))).toBe(outcome(() => Temporal.PlainDate.from(text)));
  });
});
