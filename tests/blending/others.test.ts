import { describe, expect, it } from "vitest";
import { decant } from "../../src/blending/decant";
import { gasUsed } from "../../src/blending/gasUsed";
import { inject } from "../../src/blending/inject";
import { planFill } from "../../src/blending/planFill";
import { settled } from "../../src/blending/settled";
import { idealGas, realGas } from "../../src/gas/equationOfState";
import { AIR, mixture } from "../../src/gas/mixture";
import { absoluteBar, kelvin } from "../../src/gas/units";
import { bar, ordered, psi, ROOM_K } from "./orders";

const gauge = (reading: number) => absoluteBar(reading, "metric");

describe("settling", () => {
  const cooled = (equation = realGas) =>
    psi(settled(equation, AIR, absoluteBar(3300, "us"), kelvin(120, "us"), kelvin(70, "us")));
  it("air at 3300 psi and 120 °F reads about 2906 psi at 70 °F, ideal 3014", () => {
    expect(Math.abs(cooled() - 2906)).toBeLessThan(1);
    expect(Math.abs(cooled(idealGas) - 3014)).toBeLessThan(1);
  });
  it("is refused outside the limits", () => {
    expect(() => settled(realGas, AIR, gauge(200), ROOM_K, 400)).toThrow(/outside/);
  });
});

describe("decanting", () => {
  const equal = (equation = realGas) =>
    bar(
      decant(
        equation,
        AIR,
        { waterVolumeL: 15, pressureBar: gauge(230) },
        { waterVolumeL: 3, pressureBar: gauge(100) },
        ROOM_K,
      ),
    );
  it("15 L at 230 bar into 3 L at 100 bar stands at about 206.1 bar, ideal 208.33", () => {
    expect(equal()).toBeCloseTo(206.1, 1);
    expect(equal(idealGas)).toBeCloseTo(208.333, 3);
  });
  it("from a donor below the receiver is refused", () => {
    const low = { waterVolumeL: 50, pressureBar: gauge(90) };
    const high = { waterVolumeL: 3, pressureBar: gauge(100) };
    expect(() => decant(realGas, AIR, low, high, ROOM_K)).toThrow(/donor stands below the receiver/);
  });
  it("into no volume is refused", () => {
    const none = { waterVolumeL: 0, pressureBar: gauge(0) };
    expect(() => decant(realGas, AIR, { waterVolumeL: 50, pressureBar: gauge(90) }, none, ROOM_K)).toThrow(
      /water volume/,
    );
  });
});

describe("continuous blending", () => {
  it("EAN32 of 300 L/min drawn in takes 41.9 L/min of oxygen", () => {
    expect(inject(mixture(0.32), 300)).toBeCloseTo((300 * (0.32 - AIR.oxygen)) / (1 - AIR.oxygen), 12);
    expect(inject(mixture(0.32), 300)).toBeCloseTo(41.92, 2);
  });
  it("more of a leaner supply", () => {
    expect(inject(mixture(0.32), 300, mixture(0.93))).toBeGreaterThan(inject(mixture(0.32), 300));
  });
  it("40 % itself is allowed", () => expect(inject(mixture(0.4), 10)).toBeGreaterThan(0));
  it("air takes none, also written as 20.9 %", () => {
    expect(inject(AIR, 300)).toBe(0);
    expect(inject(mixture(0.209), 300)).toBe(0);
  });
  it.each<[string, () => number, RegExp]>([
    ["above 40 %", () => inject(mixture(0.401), 300), /above 40 %.*fire.*partial pressure/],
    ["below air", () => inject(mixture(0.2), 300), /leaner than air/],
    ["helium", () => inject(mixture(0.3, 0.3), 300), /helium/],
    ["a supply no richer than air", () => inject(AIR, 300, AIR), /not rich enough/],
    ["a supply leaner than the mix", () => inject(mixture(0.4), 300, mixture(0.36)), /not rich enough/],
    ["no flow", () => inject(mixture(0.32), 0), /flow must be a number above 0/],
    ["a flow that is none", () => inject(mixture(0.32), Number.NaN), /flow must be/],
  ])("refuses %s", (_name, ask, sentence) => expect(ask).toThrow(sentence));
});

describe("gas that goes in", () => {
  it("a 12 L cylinder of EAN32 to 200 bar takes about 330 L of oxygen and 2000 L of air", () => {
    const order = ordered(0, "air", 200, 32);
    const plan = planFill(order);
    expect(gasUsed(plan, order, "oxygen", 12)).toBeGreaterThan(320);
    expect(gasUsed(plan, order, "oxygen", 12)).toBeLessThan(340);
    expect(gasUsed(plan, order, "top", 12)).toBeGreaterThan(1950);
    expect(gasUsed(plan, order, "top", 12)).toBeLessThan(2050);
    expect(gasUsed(plan, order, "helium", 12)).toBe(0);
  });
  it("ideal, in proportion to pressure", () => {
    const order = ordered(0, "air", 200, 32, { equation: idealGas });
    const plan = planFill(order);
    const total = gasUsed(plan, order, "oxygen", 10) + gasUsed(plan, order, "top", 10);
    expect(total).toBeCloseTo((10 * 200) / 1.01325, 9);
  });
  it("does not count what was let out", () => {
    const order = ordered(100, 36, 200, 28);
    expect(gasUsed(planFill(order), order, "top", 12)).toBeGreaterThan(1200);
  });
});
