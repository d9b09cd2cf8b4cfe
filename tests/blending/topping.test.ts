import { describe, expect, it } from "vitest";
import { drainTo } from "../../src/blending/drainTo";
import { mixAfter } from "../../src/blending/mixAfter";
import { mixOf } from "../../src/blending/mixOf";
import { planFill } from "../../src/blending/planFill";
import { topWith } from "../../src/blending/topWith";
import { idealGas, realGas, type EquationOfState } from "../../src/gas/equationOfState";
import { AIR, HELIUM, mixture, OXYGEN } from "../../src/gas/mixture";
import { readMix } from "../../src/gas/readMix";
import { absoluteBar } from "../../src/gas/units";
import { bar, ordered, ROOM_K } from "./orders";

const gauge = (reading: number) => absoluteBar(reading, "metric");

describe("the mix after a top-off", () => {
  const after = (
    start: number,
    mix: string,
    end: number,
    more: { equation?: EquationOfState; endTemperatureK?: number } = {},
  ) =>
    100 *
    mixAfter({
      startPressureBar: gauge(start),
      startMix: readMix(mix),
      endPressureBar: gauge(end),
      topMix: AIR,
      startTemperatureK: ROOM_K,
      endTemperatureK: ROOM_K,
      equation: realGas,
      ...more,
    }).oxygen;

  it("80 bar of EAN32 with air to 200 bar: 25.59 %, ideal 25.41 %", () => {
    expect(after(80, "EAN32", 200)).toBeCloseTo(25.59, 2);
    expect(after(80, "EAN32", 200, { equation: idealGas })).toBeCloseTo(25.41, 2);
  });
  it("nothing added gives what is there", () => expect(after(80, "EAN32", 80)).toBe(32));
  it("a vented cylinder still holds an atmosphere of its last gas", () => {
    expect(after(0, "EAN50", 200)).toBeGreaterThan(100 * AIR.oxygen + 0.1);
  });
  it("a reading taken hot counts less gas", () => {
    expect(after(80, "EAN32", 200, { endTemperatureK: 323.15 })).toBeGreaterThan(25.59 + 0.3);
  });
  it("an end below the start is judged by the gas, not the readings", () => {
    expect(() => after(80, "EAN32", 79)).toThrow(/holds more than that before anything is added: 80 bar/);
    expect(() => after(80, "EAN32", 85, { endTemperatureK: 343.15 })).toThrow(/holds more/);
    expect(after(80, "EAN32", 79, { endTemperatureK: 273.15 })).toBeLessThan(32);
  });
});

describe("the single gas to top with", () => {
  const top = (start: number, mix: string, end: number, order: string, equation = realGas) =>
    topWith({
      startPressureBar: gauge(start),
      startMix: readMix(mix),
      endPressureBar: gauge(end),
      endMix: readMix(order),
      temperatureK: ROOM_K,
      equation,
    });

  it("50 bar of EAN32 to 200 bar of EAN36: 37.41 %, ideal 37.36 %", () => {
    expect(100 * top(50, "EAN32", 200, "EAN36").oxygen).toBeCloseTo(37.41, 2);
    expect(100 * top(50, "EAN32", 200, "EAN36", idealGas).oxygen).toBeCloseTo(37.36, 2);
  });
  it("may be a trimix", () => {
    const gas = top(60, "18/45", 200, "21/35");
    expect(gas.oxygen).toBeGreaterThan(0.21);
    expect(gas.helium).toBeLessThan(0.35);
  });
  it.each<[string, [number, string, number, string], RegExp]>([
    ["more oxygen than ordered", [150, "EAN50", 200, "EAN25"], /more oxygen than ordered\. Drain first/],
    ["more helium than ordered", [150, "18/45", 200, "21/10"], /more helium than ordered/],
    ["more nitrogen than ordered", [150, "air", 200, "EAN80"], /more nitrogen than ordered/],
    ["less pressure than there is", [200, "EAN32", 150, "EAN36"], /more gas in the cylinder than ordered/],
    ["no room", [200, "EAN32", 200, "EAN32"], /no room/],
  ])("refuses %s", (_name, args, sentence) => expect(() => top(...args)).toThrow(sentence));
});

describe("what to drain to, to top alone", () => {
  it("EAN36 to be EAN28 with air: the drain of the plan", () => {
    const order = ordered(100, 36, 200, 28);
    expect(bar(drainTo(order))).toBeCloseTo(89.49, 2);
    expect(drainTo(order)).toBeCloseTo(planFill(order).steps[0]!.stopBar, 6);
  });
  it("a trimix, where it lies between residue and air", () => {
    const order = ordered(150, "18/45", 200, "19.5/22.5");
    const to = drainTo(order);
    expect(bar(to)).toBeGreaterThan(85);
    expect(bar(to)).toBeLessThan(100);
  });
  it("0 for air after EAN32, which comes within 0.1", () =>
    expect(bar(drainTo(ordered(100, 32, 200, "air")))).toBe(0));
  it("stays where any reading will do", () => {
    expect(bar(drainTo(ordered(100, 32, 200, 32, { topMix: mixture(0.32) })))).toBeCloseTo(100, 9);
    expect(bar(drainTo(ordered(230, 32, 200, 32, { topMix: mixture(0.32) })))).toBeCloseTo(200, 9);
  });
  it("drains to the end pressure what is the order already", () => {
    expect(bar(drainTo(ordered(230, 32, 200, 32)))).toBeCloseTo(200, 9);
  });
  it.each<[string, ReturnType<typeof ordered>, RegExp]>([
    ["richer than both", ordered(100, 32, 200, 36), /never gives EAN36: it does not lie between/],
    ["off the line", ordered(100, "18/45", 200, "30/20"), /does not lie between/],
    [
      "more residue than there is",
      ordered(50, 36, 200, 32),
      /It would take \d.* of EAN36 to top from, more than there is/,
    ],
    ["less residue than an atmosphere", ordered(100, "18/45", 200, "air"), /Even drained to 0/],
  ])("refuses an order %s", (_name, order, sentence) => expect(() => drainTo(order)).toThrow(sentence));
});

describe("what to drain to for a low oxygen bank", () => {
  const order = ordered(100, 32, 200, 50);
  it("the start, if the oxygen stop is within the bank", () => {
    const stop = planFill(order).steps[0]!.stopBar;
    expect(drainTo(order, stop + 0.001)).toBe(order.startPressureBar);
  });
  it("just so far that the oxygen stops at the bank's pressure", () => {
    const to = drainTo(order, gauge(120));
    expect(to).toBeLessThan(order.startPressureBar);
    const plan = planFill({ ...order, startPressureBar: to });
    expect(plan.steps.map(({ step }) => step)).toEqual(["oxygen", "top"]);
    expect(bar(plan.steps[0]!.stopBar)).toBeCloseTo(120, 5);
  });
  it("where a drain is needed anyway, no further than for the bank", () => {
    const rich = ordered(210, 32, 200, 50);
    expect(drainTo(rich, gauge(250))).toBeCloseTo(planFill(rich).steps[0]!.stopBar, 9);
    expect(drainTo(rich, gauge(120))).toBeLessThan(planFill(rich).steps[0]!.stopBar);
  });
  it("no oxygen needs no bank", () => {
    expect(drainTo(ordered(80, 32, 200, 25.6), gauge(1))).toBe(gauge(80));
  });
  it("is refused when even the lowest start is too high", () => {
    expect(() => drainTo(order, gauge(20))).toThrow(
      /oxygen stops at .* above the bank \(20 bar \(290 psi\)\)/,
    );
  });
});

describe("the mix of any sequence", () => {
  const step = (gas: string, reading: number, temperatureK = ROOM_K) => ({
    gas: gas === "drain" ? ("drain" as const) : readMix(gas),
    pressureBar: gauge(reading),
    temperatureK,
  });

  it("of the stops of a plan is the order", () => {
    const mix = mixOf(realGas, [
      step("air", 0),
      step("helium", 96.9728),
      step("oxygen", 116.5456),
      step("air", 232),
    ]);
    expect(100 * mix.oxygen).toBeCloseTo(18, 3);
    expect(100 * mix.helium).toBeCloseTo(45, 3);
  });
  it("is lean when the oxygen was read hot", () => {
    const cold = mixOf(realGas, [step("air", 0), step("oxygen", 28), step("air", 200)]);
    const hot = mixOf(realGas, [step("air", 0), step("oxygen", 28, 318.15), step("air", 200)]);
    expect(cold.oxygen - hot.oxygen).toBeGreaterThan(0.008);
  });
  it("one row is what it says", () => expect(mixOf(realGas, [step("oxygen", 100)])).toEqual(OXYGEN));
  it("draining keeps the mix", () => {
    expect(mixOf(realGas, [step("EAN36", 100), step("drain", 40)]).oxygen).toBe(0.36);
  });
  it("a vented cylinder of oxygen may be filled", () => {
    expect(mixOf(realGas, [step("oxygen", 0), step("air", 200)]).oxygen).toBeGreaterThan(AIR.oxygen);
  });
  it("a warm cylinder that cools is no drain", () => {
    expect(mixOf(realGas, [step("EAN32", 200, 318.15), step("air", 190, 293.15)]).oxygen).toBeLessThan(0.32);
  });

  it.each<[string, Parameters<typeof mixOf>[1], RegExp]>([
    ["no rows", [], /first row is what is in the cylinder/],
    ["drain first", [step("drain", 0), step("air", 200)], /Row 1 .* write its mix, not drain/],
    [
      "oxygen first",
      [step("oxygen", 30), step("air", 200)],
      /Row 1 .* oxygen there would stand for.*Start with air at 0/,
    ],
    ["helium first", [step("helium", 30), step("air", 200)], /Row 1/],
    [
      "a fall without a drain",
      [step("air", 100), step("oxygen", 90)],
      /Row 2: the reading is below.*Write drain/,
    ],
    ["a drain that rises", [step("air", 100), step("drain", 110)], /Row 2: drain, yet the reading is above/],
    ["a reading beyond the limit", [step("air", 0), step("air", 500)], /above 450 bar/],
    [
      "a reading that is none",
      [step("air", 0), { gas: HELIUM, pressureBar: Number.NaN, temperatureK: ROOM_K }],
      /Row 2: the reading is not a number/,
    ],
  ])("refuses %s", (_name, steps, sentence) => expect(() => mixOf(realGas, steps)).toThrow(sentence));
});
