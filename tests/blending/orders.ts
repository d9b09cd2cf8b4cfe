import fc from "fast-check";
import type { FillOrder } from "../../src/blending/planFill";
import { idealGas, realGas } from "../../src/gas/equationOfState";
import { AIR, mixture, OXYGEN, type Mixture } from "../../src/gas/mixture";
import { readMix } from "../../src/gas/readMix";
import { absoluteBar, gaugeReading, type Units } from "../../src/gas/units";

export const ROOM_K = 293.15;

/** An order in bar gauge and mixes as text, topped with air at 20 °C unless said. */
export function ordered(
  start: number,
  startMix: string | number,
  end: number,
  endMix: string | number,
  more: Partial<FillOrder> = {},
  units: Units = "metric",
): FillOrder {
  return {
    startPressureBar: absoluteBar(start, units),
    startMix: readMix(startMix),
    endPressureBar: absoluteBar(end, units),
    endMix: readMix(endMix),
    topMix: AIR,
    oxygenSupply: OXYGEN,
    temperatureK: ROOM_K,
    order: "helium first",
    equation: realGas,
    ...more,
  };
}

export const bar = (pressureBar: number) => gaugeReading(pressureBar, "metric");
export const psi = (pressureBar: number) => gaugeReading(pressureBar, "us");

const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export const anyMix: fc.Arbitrary<Mixture> = fc
  .tuple(double(0, 1), double(0, 1))
  .map(([oxygen, share]) => mixture(oxygen, (1 - oxygen) * share));

export const anyNitrox: fc.Arbitrary<Mixture> = double(0.05, 1).map((oxygen) => mixture(oxygen));

/** What shops have: mixes, and the gases to make them from, plain ones often. */
const shopMix = fc.oneof(
  {
    weight: 3,
    arbitrary: fc
      .constantFrom(
        "air",
        "EAN32",
        "EAN36",
        "EAN50",
        "TX 18/45",
        "TX 21/35",
        "TX 10/70",
        "heliox 21",
        "oxygen",
        "helium",
      )
      .map(readMix),
  },
  { weight: 2, arbitrary: anyMix },
  { weight: 1, arbitrary: anyNitrox },
);

export const anyEquation = fc.constantFrom(realGas, idealGas);
export const anyTemperatureK = double(253.15, 343.15);

export const anyOrder: fc.Arbitrary<FillOrder> = fc.record({
  startPressureBar: fc.oneof(fc.constant(1.01325), double(1.01325, 300)),
  startMix: shopMix,
  endPressureBar: double(20, 350),
  endMix: shopMix,
  topMix: fc.oneof(fc.constant(AIR), shopMix),
  oxygenSupply: fc.constantFrom(1, 0.995, 0.93).map((oxygen) => mixture(oxygen)),
  temperatureK: anyTemperatureK,
  order: fc.constantFrom("helium first" as const, "oxygen first" as const),
  equation: anyEquation,
});
