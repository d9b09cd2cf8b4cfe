import fc from "fast-check";
import { describe, expect, it } from "vitest";
import sizes from "#shared/cylinders/sizes.json";
import type { WaitingCylinder } from "../../../src/counter/receive/waitingRows";
import { readCylinderSize } from "../../../src/cylinders/readCylinderSize";
import { Refusal } from "../../../src/gas/refusal";
import { mixture } from "../../../src/gas/mixture";
import { absoluteBar } from "../../../src/gas/units";
import { newForm, shownIn, writeField, type FillForm } from "../../../src/counter/form";
import { rowModel } from "../../../src/counter/plan/rowList";
import { serialsIn, withWaiting } from "../../../src/counter/plan/rowLines";

const LIMITS = { cleanAbovePercent: 40, tolerancePoints: 1 };

function listed(row: string, units: "us" | "metric" = "us"): FillForm {
  const parts = { row, rowBank: "A, 50, 300 bar", rowTarget: units === "us" ? "3000" : "207" };
  return (Object.keys(parts) as (keyof typeof parts)[]).reduce(
    (form, name) => writeField(form, name, parts[name]),
    newForm(units),
  );
}

/** Sizes of the trade table that are told by name alone. */
const NAMED = sizes.cylinders
  .flatMap(({ names }) => names)
  .filter((name) => {
    try {
      return readCylinderSize(name).waterVolumeL > 0;
    } catch (thrown) {
      if (thrown instanceof Refusal) return false;
      throw thrown;
    }
  });

const waiting = fc.record({
  serial: fc.stringMatching(/^[A-Z]{1,3}\d{3,6}$/),
  row: fc.nat(500),
  size: fc.oneof(
    fc.constantFrom(...NAMED, "2x8,5", "2x1,5", "8,5").map(readCylinderSize),
    fc.integer({ min: 4, max: 39 }).map((litres) => ({ waterVolumeL: litres / 2, count: 1 })),
  ),
  left: fc.oneof(
    fc.integer({ min: 0, max: 2500 }).map((value) => ({ value, unit: "psi" as const })),
    fc.integer({ min: 0, max: 340 }).map((tenths) => ({ value: tenths / 2, unit: "bar" as const })),
  ),
  mix: fc
    .tuple(fc.integer({ min: 100, max: 400 }), fc.integer({ min: 0, max: 500 }))
    .map(([oxygen, helium]) => mixture(oxygen / 1000, helium / 1000)),
  ordered: fc.constant(undefined),
  lacks: fc.constant([]),
});

describe("cylinders that come into the list", () => {
  it("are read there as the log had them, in the shop's units or the other", () => {
    fc.assert(
      fc.property(waiting, fc.constantFrom("us" as const, "metric" as const), (cylinder, units) => {
        const { list } = withWaiting("", [cylinder]);
        const { banked, problems } = rowModel(listed(list, units), LIMITS);
        expect(problems).toEqual({});
        const [read] = banked!.order.cylinders;
        expect(read!.name).toBe(cylinder.serial);
        expect(read!.waterVolumeL).toBeCloseTo(cylinder.size.waterVolumeL, 9);
        const { value, unit } = cylinder.left;
        expect(read!.pressureBar).toBeCloseTo(absoluteBar(value, unit === "psi" ? "us" : "metric"), 9);
        expect(read!.mix.helium).toBeCloseTo(cylinder.mix.helium, 3);
        expect(Math.abs(read!.mix.oxygen - cylinder.mix.oxygen)).toBeLessThan(0.0006);
      }),
    );
  });

  it("stand below what was typed, which stays as it was, and never twice", () => {
    fc.assert(
      fc.property(
        fc.array(waiting, { maxLength: 8 }),
        fc.string(),
        (cylinders: readonly WaitingCylinder[], typed) => {
          const once = withWaiting(typed, cylinders);
          expect(typed.trim() === "" || once.list.startsWith(typed.trimEnd())).toBe(true);
          expect(once.added.length + once.known.length).toBe(cylinders.length);
          const again = withWaiting(once.list, cylinders);
          expect(again.added).toEqual([]);
          expect(again.list).toBe(once.list.trim() === "" ? "" : once.list.trimEnd());
        },
      ),
    );
  });
});

describe("the list", () => {
  it("whatever is typed, is worked out or says which line it cannot read", () => {
    const odd = fc.oneof(
      fc.string({ unit: "grapheme" }),
      fc.array(fc.constantFrom(",", ";", "\t", "\n", "AL80", "500", "psi", "empty", "air", "EAN32", "-", "1e9", "TX 99/99"), { maxLength: 14 }).map((parts) => parts.join("")),
    ); // prettier-ignore
    fc.assert(
      fc.property(odd, fc.constantFrom("bank", "continuous"), (text, way) => {
        const form = [["rowWay", way], ["rowMix", "EAN32"]].reduce((so, [name, written]) => writeField(so, name as "rowWay", written!), listed(text)); // prettier-ignore
        const { problems, banked, streamed } = rowModel(form, LIMITS);
        const { row } = problems;
        if (serialsIn(text).length > 0 && banked === undefined && streamed === undefined)
          expect(Object.keys(problems).length).toBeGreaterThan(0);
        if (row?.startsWith("Line ")) expect(row).toMatch(/^Line \d+: /);
      }),
      { numRuns: 300 },
    );
  });

  it("goes to the other units and back as it was meant, however often", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2900 }), (psi) => {
        const form = listed(`GP1, AL80, ${psi}, air`);
        const there = writeField(
          { ...form, units: "metric" },
          "row",
          shownIn({ ...form, units: "metric" }, "row"),
        );
        const back = writeField({ ...there, units: "us" }, "row", shownIn({ ...there, units: "us" }, "row"));
        for (const each of [form, there, back])
          expect(rowModel(each, LIMITS).banked!.order.cylinders[0]!.pressureBar).toBeCloseTo(
            absoluteBar(psi, "us"),
            9,
          );
      }),
      { numRuns: 30 },
    );
  });
});
