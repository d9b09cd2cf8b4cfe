import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bestRowOrder, cascade, fillsLeft, type RowOrder } from "../../src/blending/cascade";
import { decant } from "../../src/blending/decant";
import { idealGas, realGas } from "../../src/gas/equationOfState";
import { AIR, mixture } from "../../src/gas/mixture";
import { absoluteBar } from "../../src/gas/units";
import { bar, ROOM_K } from "./orders";

const gauge = (reading: number) => absoluteBar(reading, "metric");
const bottle = (name: string, pressure: number) => ({ name, waterVolumeL: 50, pressureBar: gauge(pressure) });
const tank = (name: string, pressure: number, mix = AIR) => ({
  name,
  waterVolumeL: 12,
  pressureBar: gauge(pressure),
  mix,
});

function row(more: Partial<RowOrder> = {}): RowOrder {
  return {
    equation: realGas,
    temperatureK: ROOM_K,
    gas: AIR,
    targetBar: gauge(200),
    bank: [bottle("low", 150), bottle("middle", 200), bottle("high", 250)],
    cylinders: [tank("one", 50)],
    ...more,
  };
}

describe("filling a row from a bank", () => {
  it("opens the lowest bottle above the cylinder first, and the fullest last", () => {
    const { openings, cylinders } = cascade(row());
    expect(openings.map((opening) => opening.bottle)).toEqual(["low", "middle", "high"]);
    expect(bar(cylinders[0]!.pressureBar)).toBeCloseTo(200, 6);
    expect(cylinders[0]!.full).toBe(true);
  });
  it("one bottle and one cylinder come to stand as DECANT says", () => {
    const order = row({ bank: [bottle("one", 180)], cylinders: [tank("a", 60)] });
    const equal = decant(realGas, AIR, order.bank[0]!, order.cylinders[0]!, ROOM_K);
    expect(bar(cascade(order).cylinders[0]!.pressureBar)).toBeCloseTo(bar(equal), 5);
  });
  it("skips a bottle below the cylinder, so that no gas runs backwards", () => {
    const { openings } = cascade(row({ cylinders: [tank("a", 160)] }));
    expect(openings.map((opening) => opening.bottle)).toEqual(["middle", "high"]);
  });
  it("never makes or loses gas, and no bottle ends above where it stood", () => {
    const pressures = fc.integer({ min: 1, max: 250 });
    fc.assert(
      fc.property(fc.array(pressures, { minLength: 1, maxLength: 4 }), fc.array(pressures, { maxLength: 5 }), (bank, tanks) => {
        const order = row({
          equation: idealGas,
          bank: bank.map((pressure, index) => bottle(`b${index}`, pressure)),
          cylinders: tanks.map((pressure, index) => tank(`c${index}`, pressure)),
        });
        const filled = cascade(order);
        const gas = (all: readonly { waterVolumeL: number; pressureBar: number }[]) =>
          all.reduce((sum, { waterVolumeL, pressureBar }) => sum + waterVolumeL * pressureBar, 0);
        expect(gas([...filled.bank, ...filled.cylinders])).toBeCloseTo(gas([...order.bank, ...order.cylinders]), 4);
        filled.bank.forEach((after, index) => {
          expect(after.pressureBar).toBeLessThanOrEqual(order.bank[index]!.pressureBar + 1e-9);
        });
        for (const each of filled.cylinders) expect(each.pressureBar).toBeLessThan(gauge(251));
      }),
      { numRuns: 40 },
    ); // prettier-ignore
  });
  it("keeps track of the mix where the cylinder holds another", () => {
    const { cylinders } = cascade(row({ gas: mixture(0.32), cylinders: [tank("a", 50)] }));
    expect(cylinders[0]!.mix.oxygen).toBeGreaterThan(0.28);
    expect(cylinders[0]!.mix.oxygen).toBeLessThan(0.32);
  });
  it("counts the fills that are left, and each of them comes out full", () => {
    const order = row();
    const left = fillsLeft(order, tank("a", 50));
    expect(left).toBeGreaterThan(0);
    const all = cascade({
      ...order,
      cylinders: Array.from({ length: left + 1 }, (_, n) => tank(`c${n}`, 50)),
    });
    expect(all.cylinders.map(({ full }) => full)).toEqual([...Array<boolean>(left).fill(true), false]);
  });
  it("finds an order of filling that leaves no fewer full than the one given", () => {
    const order = row({ cylinders: [tank("a", 10), tank("b", 180), tank("c", 120), tank("d", 190)] });
    const full = (filled: ReturnType<typeof cascade>) => filled.cylinders.filter((each) => each.full).length;
    expect(full(bestRowOrder(order).filled)).toBeGreaterThanOrEqual(full(cascade(order)));
  });
  it("asks for a bank", () => {
    expect(() => cascade(row({ bank: [] }))).toThrow(/no bottle/);
  });
});
