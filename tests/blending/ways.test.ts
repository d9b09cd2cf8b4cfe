import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { continuousFill } from "../../src/blending/continuousFill";
import { topOffFound, warmStops } from "../../src/blending/coolAndTop";
import { inject } from "../../src/blending/inject";
import { leastEndByAdding } from "../../src/blending/leastEnd";
import { mixAfter } from "../../src/blending/mixAfter";
import { mixOf, type MixOfStep } from "../../src/blending/mixOf";
import { planFill, type FillOrder, type FillPlan } from "../../src/blending/planFill";
import { settled } from "../../src/blending/settled";
import { topWith } from "../../src/blending/topWith";
import { waysToFill, type Supplies } from "../../src/blending/waysToFill";
import { idealGas, realGas } from "../../src/gas/equationOfState";
import { AIR, mixture } from "../../src/gas/mixture";
import { absoluteBar } from "../../src/gas/units";
import { bar, ordered, ROOM_K } from "./orders";

const gauge = (reading: number) => absoluteBar(reading, "metric");

const STATION: Supplies = {
  tops: [
    { name: "compressor", mix: AIR },
    { name: "EAN32 bank", mix: mixture(0.32), pressureBar: gauge(220) },
  ],
  oxygen: { pressureBar: gauge(150) },
  helium: { pressureBar: gauge(180) },
  continuous: { name: "compressor", maxOxygen: 0.4 },
};

/** What the readings of a plan make, by the worksheet's own MIXOF. */
function made(order: FillOrder, plan: FillPlan) {
  const steps: MixOfStep[] = [
    { gas: order.startMix, pressureBar: order.startPressureBar, temperatureK: order.temperatureK },
    ...plan.steps.map(({ step, gas, stopBar }): MixOfStep => ({
      gas: step === "drain" ? "drain" : gas,
      pressureBar: stopBar,
      temperatureK: order.temperatureK,
    })),
  ];
  return mixOf(order.equation, steps);
}

describe("ways to fill", () => {
  it("offers the bank, partial pressure and continuous for EAN32 on air", () => {
    const ways = waysToFill(ordered(50, "air", 200, "EAN32"), STATION);
    expect(ways.map(({ name, source }) => `${name}: ${source.name}`)).toEqual([
      "partial pressure: compressor",
      "partial pressure: EAN32 bank",
      "continuous: compressor",
    ]);
    const nitrox = topWith(ordered(50, "air", 200, "EAN32"));
    expect(ways[2]!.source.mix.oxygen).toBeCloseTo(nitrox.oxygen, 9);
  });

  it("tops EAN32 from the EAN32 bank alone, and says where the bank ends too low", () => {
    const [, bank] = waysToFill(ordered(50, "EAN32", 232, "EAN32"), STATION);
    expect(bank).toMatchObject({ name: "top off", shortfalls: [{ step: "top" }] });
    expect(bar(bank!.shortfalls[0]!.bankBar as number)).toBeCloseTo(220, 9);
  });

  it("says that there is no oxygen where there is none", () => {
    const [air] = waysToFill(ordered(0, "air", 200, "EAN32"), { ...STATION, oxygen: undefined });
    expect(air!.shortfalls).toMatchObject([{ step: "oxygen", bankBar: "none" }]);
  });

  it("drains further where the oxygen bank is low, so that the stop is within it", () => {
    const low = { ...STATION, oxygen: { pressureBar: gauge(60) } };
    const order = ordered(100, "EAN32", 200, "EAN36");
    const [asItIs, drained] = waysToFill(order, low);
    expect(asItIs!.shortfalls).toMatchObject([{ step: "oxygen" }]);
    expect(drained).toMatchObject({ name: "drain and partial pressure", shortfalls: [] });
    const oxygen = drained!.plan!.steps.find(({ step }) => step === "oxygen")!;
    expect(bar(oxygen.stopBar)).toBeLessThanOrEqual(60 + 1e-6);
    expect(made(order, drained!.plan!).oxygen).toBeCloseTo(0.36, 9);
  });

  it("refuses continuous blending above 40 %, naming the limit", () => {
    const ways = waysToFill(ordered(0, "air", 200, "EAN50"), STATION);
    expect(ways.at(-1)!.refused).toMatch(/above its limit of 40 %/);
  });

  it("every plan makes the order, whatever is in the cylinder", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 180 }),
        fc.constantFrom("air", "EAN28", "EAN32", "EAN36", "TX 21/35", "TX 18/45"),
        fc.constantFrom("EAN30", "EAN32", "EAN38", "TX 21/35", "TX 18/45"),
        (start, startMix, endMix) => {
          const order = ordered(start, startMix, 200, endMix, { equation: idealGas });
          for (const way of waysToFill(order, STATION)) {
            if (!way.plan || !way.order) continue;
            const mix = made(way.order, way.plan);
            expect(Math.abs(mix.oxygen - order.endMix.oxygen)).toBeLessThan(0.00101);
            expect(Math.abs(mix.helium - order.endMix.helium)).toBeLessThan(0.00101);
            expect(bar(way.plan.steps.at(-1)?.stopBar ?? gauge(200))).toBeCloseTo(200, 6);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe("continuous fills", () => {
  it("from a vented cylinder take the nitrox that INJECT makes: EAN32 at 5.3 L of oxygen in 38", () => {
    const { gas, plan } = continuousFill(ordered(0, "air", 200, "EAN32", { equation: idealGas }), 0.4);
    expect(gas.oxygen * 100).toBeCloseTo(32.06, 1);
    expect(plan.steps.map(({ step }) => step)).toEqual(["top"]);
    expect(inject(gas, 38)).toBeCloseTo((38 * (gas.oxygen - AIR.oxygen)) / (1 - AIR.oxygen), 9);
  });
  it("drain no further than the limit of 40 % asks", () => {
    const { gas, plan } = continuousFill(ordered(150, "air", 200, "EAN32"), 0.4);
    expect(gas.oxygen).toBeCloseTo(0.4, 6);
    expect(plan.steps.map(({ step }) => step)).toEqual(["drain", "top"]);
  });
  it("put helium in first for trimix", () => {
    const { plan } = continuousFill(ordered(0, "air", 200, "TX 18/45"), 0.4);
    expect(plan.steps.map(({ step }) => step)).toEqual(["helium", "top"]);
  });
});

describe("a mix that came out wrong", () => {
  it("30.5 % at 200 bar is made EAN32 by adding oxygen alone up to a little above 200 bar", () => {
    const order = ordered(200, 30.5, 200, "EAN32", { equation: idealGas });
    const end = leastEndByAdding(order)!;
    const plan = planFill({ ...order, endPressureBar: end });
    expect(plan.steps.map(({ step }) => step)).toEqual(["oxygen"]);
    // Ideal, by hand: 201.01 bar x 0.015 / 0.68 of oxygen on top.
    expect(bar(end)).toBeCloseTo(200 + (201.01325 * 0.015) / 0.68, 4);
    expect(made({ ...order, endPressureBar: end }, plan).oxygen).toBeCloseTo(0.32, 9);
  });
  it("33 % at 190 bar is brought down with air, which takes it beyond the ordered 200 bar", () => {
    const order = ordered(190, 33, 200, "EAN32");
    const end = leastEndByAdding(order)!;
    expect(bar(end)).toBeGreaterThan(200);
    expect(planFill({ ...order, endPressureBar: end }).steps.map(({ step }) => step)).toEqual(["top"]);
  });
  it("cannot be put right by adding where helium is in a cylinder ordered without", () => {
    expect(leastEndByAdding(ordered(100, "TX 21/35", 200, "EAN32"))).toBeUndefined();
  });
  it("never asks for less than was ordered", () => {
    expect(bar(leastEndByAdding(ordered(50, "air", 200, "EAN32"))!)).toBeCloseTo(200, 6);
  });
});

describe("heat", () => {
  const order = ordered(0, "air", 200, "EAN32");
  const plan = planFill(order);
  it("warm stops are those that settle to the cold ones", () => {
    const warm = warmStops(order, plan, ROOM_K + 20);
    plan.steps.forEach(({ mixAfter: mix, stopBar }, index) => {
      expect(settled(realGas, mix, warm[index]!, ROOM_K + 20, ROOM_K)).toBeCloseTo(stopBar, 6);
      expect(warm[index]!).toBeGreaterThan(stopBar);
    });
  });
  it("200 bar found at 40 °C settle as SETTLED says, further down than an ideal gas, and topped they are the order", () => {
    const found = topOffFound(order, plan, { pressureBar: gauge(200), temperatureK: ROOM_K + 20 });
    const cold = settled(realGas, found.mixNow, gauge(200), ROOM_K + 20, ROOM_K);
    expect(found.settledBar).toBeCloseTo(cold, 9);
    expect(found.settledBar).toBeLessThan((gauge(200) * ROOM_K) / (ROOM_K + 20));
    expect(found.missingBar).toBeCloseTo(order.endPressureBar - found.settledBar, 9);
    expect(found.mixAfter.oxygen).toBeCloseTo(0.32, 9);
    expect(found.mixNow.oxygen).toBeGreaterThan(0.32);
  });
  it("a top-off is what MIXAFTER says of it", () => {
    const topOff = ordered(80, "EAN32", 200, 25.59);
    const asTop = planFill(topOff);
    const found = topOffFound(topOff, asTop, { pressureBar: gauge(190), temperatureK: ROOM_K });
    const byFunction = mixAfter({
      startPressureBar: gauge(80),
      startMix: mixture(0.32),
      endPressureBar: gauge(190),
      topMix: AIR,
      startTemperatureK: ROOM_K,
      endTemperatureK: ROOM_K,
      equation: realGas,
    });
    if (asTop.steps.length === 1) expect(found.mixNow.oxygen).toBeCloseTo(byFunction.oxygen, 9);
    expect(asTop.steps.map(({ step }) => step)).toEqual(["top"]);
  });
});
