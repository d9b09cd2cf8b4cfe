import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { streamRow, type StreamRowOrder } from "../../src/blending/streamRow";
import { evaluate } from "../../src/functions/evaluate";
import { idealGas, realGas } from "../../src/gas/equationOfState";
import { AIR, mixture } from "../../src/gas/mixture";
import { Refusal } from "../../src/gas/refusal";
import { absoluteBar } from "../../src/gas/units";
import { ROOM_K } from "./orders";

const gauge = (reading: number) => absoluteBar(reading, "metric");
const tank = (name: string, pressure: number, mix = AIR) => ({
  name,
  waterVolumeL: 12,
  pressureBar: gauge(pressure),
  mix,
});

function row(more: Partial<StreamRowOrder> = {}): StreamRowOrder {
  return {
    equation: realGas,
    temperatureK: ROOM_K,
    wanted: mixture(0.32, 0),
    targetBar: gauge(200),
    maxOxygen: 0.4,
    tolerance: 0.01,
    cylinders: [tank("one", 50)],
    ...more,
  };
}

describe("a row by continuous blending", () => {
  it("each cylinder needs the stream that TOPWITH gives", () => {
    const { fills } = streamRow(row({ cylinders: [tank("one", 50), tank("two", 30, mixture(0.32, 0))] }));
    const [[one]] = evaluate("TOPWITH", [50, "air", 200, 32, "bar"]) as [[number]];
    expect(fills[0]!.stream!.oxygen * 100).toBeCloseTo(one, 6);
    expect(fills[1]!.stream!.oxygen).toBeCloseTo(0.32, 9);
  });
  it("ideal gas by hand: 1 bar of air to 5 bar of EAN32 takes (5 x 32 - 20.95) / 4 = 34.76 %", () => {
    const cylinders = [{ ...tank("one", 0), pressureBar: 1 }];
    const { fills } = streamRow(row({ equation: idealGas, cylinders, targetBar: 5 }));
    expect(fills[0]!.stream!.oxygen).toBeCloseTo((5 * 0.32 - AIR.oxygen) / 4, 9);
  });
  it("a residue that takes a stream above the limit is refused, and the others are not", () => {
    const { fills } = streamRow(row({ cylinders: [tank("full", 120), tank("low", 20)] }));
    expect(fills[0]!.stream).toBeUndefined();
    expect(fills[0]!.refused).toMatch(/above the compressor's limit of 40 %/);
    expect(fills[1]!.stream).toBeDefined();
  });
  it("an order, or a common stream, above the limit is refused", () => {
    expect(() => streamRow(row({ wanted: mixture(0.41, 0) }))).toThrow(Refusal);
    expect(() => streamRow(row({ common: mixture(0.41, 0) }))).toThrow(Refusal);
    expect(() => streamRow(row({ wanted: mixture(0.36, 0), maxOxygen: 0.35 }))).toThrow(/limit of 35 %/);
    expect(() => streamRow(row({ wanted: mixture(0.41, 0), maxOxygen: 0.5 }))).toThrow(Refusal);
  });
  it("one stream for all is no richer than a cylinder that is not clean may take, and says who holds it back", () => {
    // Two nearly empty ones want about 32.7 %; the third, nearly full, 36 % or more.
    const low = { mostStream: 0.34 };
    const cylinders = [tank("full", 60), tank("fuller", 65), { ...tank("low", 10), ...low }];
    const free = streamRow(
      row({
        cylinders: cylinders.map(({ name, ...rest }) => ({ name, ...rest, mostStream: undefined })),
        tolerance: 0.005,
      }),
    );
    expect(free.common!.oxygen).toBeGreaterThan(0.34);
    expect(free.fills.map(({ isRight }) => isRight)).toEqual([true, true, false]);
    expect(free.heldBack).toBeUndefined();
    const held = streamRow(row({ cylinders, tolerance: 0.005 }));
    expect(held.common!.oxygen).toBeLessThanOrEqual(0.34);
    expect(held.fills.map(({ isRight }) => isRight)).toEqual([false, false, true]);
    expect(held.heldBack).toEqual({ mostOxygen: 0.34, by: ["low"] });
  });
  it("a cylinder whose own stream is too rich for it holds nobody back", () => {
    const cylinders = [tank("full", 60), { ...tank("not clean", 65), mostStream: 0.34 }];
    expect(streamRow(row({ cylinders })).common!.oxygen).toBeGreaterThan(0.34);
  });
  it("a mix within tolerance, but richer than the cylinder may hold, is not right", () => {
    const cylinders = [{ ...tank("rated 32", 50), mostMix: 0.32 }];
    const rich = streamRow(row({ cylinders, common: mixture(0.367, 0) })).fills[0]!;
    expect(rich.byCommon!.oxygen).toBeGreaterThan(0.32);
    expect(rich.byCommon!.oxygen).toBeLessThan(0.33);
    expect(rich).toMatchObject({ isTooRich: true, isRight: false });
    const found = streamRow(row({ cylinders }));
    expect(found.fills[0]!.byCommon!.oxygen).toBeLessThanOrEqual(0.32 + 1e-9);
    expect(found.fills[0]!.isRight).toBe(true);
  });
  it("helium left in a cylinder, or more gas than ordered, is no stream at all", () => {
    const { fills, common } = streamRow(
      row({ cylinders: [tank("trimix", 60, mixture(0.18, 0.45)), tank("over", 210)] }),
    );
    expect(fills.map(({ stream, isRight }) => [stream, isRight])).toEqual([[undefined, false], [undefined, false]]); // prettier-ignore
    expect(fills[0]!.refused).toMatch(/more helium than ordered/);
    expect(common).toBeUndefined();
  });
  it("one stream can suit two cylinders though it is the own stream of neither", () => {
    const { common, fills } = streamRow(row({ cylinders: [tank("one", 20), tank("two", 45)] }));
    expect(fills.map(({ isRight }) => isRight)).toEqual([true, true]);
    expect(common!.oxygen).toBeGreaterThan(fills[0]!.stream!.oxygen);
    expect(common!.oxygen).toBeLessThan(fills[1]!.stream!.oxygen);
  });
  it("a stream that was given makes what TOPPED makes of it, and says which are out of tolerance", () => {
    const { fills } = streamRow(
      row({ common: mixture(0.33, 0), cylinders: [tank("one", 10), tank("two", 90)] }),
    );
    expect(fills.map(({ isRight }) => isRight)).toEqual([true, false]);
    expect(fills[1]!.byCommon!.oxygen).toBeLessThan(0.3);
  });
  it("no stream is ever above the limit or leaner than air, and a cylinder called right is right", () => {
    const part = fc.record({
      pressure: fc.integer({ min: 0, max: 220 }),
      oxygen: fc.integer({ min: 10, max: 50 }),
    });
    fc.assert(
      fc.property(
        fc.array(part, { maxLength: 6 }),
        fc.integer({ min: 21, max: 40 }),
        fc.integer({ min: 30, max: 40 }),
        (parts, wanted, most) => {
          if (wanted > most) return;
          const cylinders = parts.map(({ pressure, oxygen }, index) =>
            tank(`c${index}`, pressure, mixture(oxygen / 100, 0)),
          );
          const order = row({ wanted: mixture(wanted / 100, 0), maxOxygen: most / 100, cylinders });
          const { common, fills } = streamRow(order);
          for (const { oxygen } of [common, ...fills.map(({ stream }) => stream)].flatMap(
            (mix) => mix ?? [],
          )) {
            expect(oxygen).toBeLessThanOrEqual(order.maxOxygen + 1e-9);
            expect(oxygen).toBeGreaterThanOrEqual(0.209 - 1e-9);
          }
          for (const { isRight, byCommon } of fills)
            if (isRight)
              expect(Math.abs(byCommon!.oxygen - order.wanted.oxygen)).toBeLessThanOrEqual(0.01 + 1e-8);
          if (fills.some(({ stream }) => stream)) expect(fills.some(({ isRight }) => isRight)).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
});
