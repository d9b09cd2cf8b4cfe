import { describe, expect, it } from "vitest";
import { gasUsed } from "../../src/blending/gasUsed";
import { planFill, type FillOrder } from "../../src/blending/planFill";
import { fillCost } from "../../src/costs/fillCost";
import { realGas } from "../../src/gas/equationOfState";
import { AIR, mixture, OXYGEN } from "../../src/gas/mixture";
import type { Refusal } from "../../src/gas/refusal";
import { absoluteBar } from "../../src/gas/units";

const ORDER: FillOrder = {
  startPressureBar: absoluteBar(50, "metric"),
  startMix: mixture(0.32),
  endPressureBar: absoluteBar(232, "metric"),
  endMix: mixture(0.18, 0.45),
  topMix: AIR,
  oxygenSupply: OXYGEN,
  temperatureK: 293.15,
  order: "helium first",
  equation: realGas,
};
const PRICES = { helium: 0.05, oxygen: 0.01, top: 0.001, perFill: 5 };

describe("the cost of a fill", () => {
  it("is a line for each gas that goes in, and what every fill costs", () => {
    const plan = planFill(ORDER);
    const { lines, perFill, total } = fillCost(plan, ORDER, 24, PRICES);
    expect(lines.map(({ gas }) => gas)).toEqual(["oxygen", "helium", "top"]);
    for (const { gas, volumeL, cost } of lines) {
      expect(volumeL).toBe(gasUsed(plan, ORDER, gas, 24));
      expect(cost).toBeCloseTo(volumeL * PRICES[gas], 9);
    }
    expect(perFill).toBe(5);
    expect(total).toBeCloseTo(
      lines.reduce((sum, { cost }) => sum + cost, 5),
      9,
    );
  });

  it("doubles with the cylinder, but for what every fill costs", () => {
    const plan = planFill(ORDER);
    const single = fillCost(plan, ORDER, 12, PRICES).total - 5;
    expect(fillCost(plan, ORDER, 24, PRICES).total - 5).toBeCloseTo(2 * single, 9);
  });

  it("is unknown where a gas that goes in has no price; a gas that does not needs none", () => {
    const plan = planFill(ORDER);
    expect(() => fillCost(plan, ORDER, 12, { oxygen: 1, top: 1, perFill: 0 })).toThrow(
      expect.objectContaining({ kind: "unknown" }) as Refusal,
    );
    const air: FillOrder = { ...ORDER, startMix: AIR, endMix: AIR };
    expect(fillCost(planFill(air), air, 12, { top: 0.001, perFill: 0 }).lines).toHaveLength(1);
  });

  it("leaves out the gas that a drain lets go", () => {
    const rich: FillOrder = {
      ...ORDER,
      startPressureBar: absoluteBar(150, "metric"),
      startMix: mixture(0.5),
      endMix: mixture(0.32),
    };
    const plan = planFill(rich);
    expect(plan.steps[0]?.step).toBe("drain");
    expect(fillCost(plan, rich, 12, PRICES).lines.every(({ volumeL }) => volumeL > 0)).toBe(true);
  });
});
