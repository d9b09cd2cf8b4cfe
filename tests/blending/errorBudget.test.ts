import { describe, expect, it } from "vitest";
import { coarsestGaugeBar, errorBudget, type ReadingErrors } from "../../src/blending/errorBudget";
import { planFill } from "../../src/blending/planFill";
import { idealGas } from "../../src/gas/equationOfState";
import { ordered } from "./orders";

const NONE: ReadingErrors = { gaugeBar: 0, temperatureK: 0, startMix: 0 };

describe("how exact a fill must be read", () => {
  const order = ordered(0, "air", 200, "EAN32", { equation: idealGas });
  const plan = planFill(order);
  it("readings without error make the mix without error", () => {
    expect(errorBudget(order, plan, NONE)).toMatchObject({ shares: [], oxygen: 0, helium: 0 });
  });
  it("1 bar at the oxygen stop is 0.4 points, as the ideal gas law has it by hand", () => {
    // Of 201.01 bar, 1 bar is oxygen instead of air: (1 - 0.2095) / 201.01 = 0.393 points.
    const { shares } = errorBudget(order, plan, { ...NONE, gaugeBar: 1 });
    const stop = shares.find(({ of, at }) => of === "gauge" && at === "oxygen")!;
    expect(stop.oxygen * 100).toBeCloseTo(0.393, 3);
    expect(stop.helium).toBe(0);
  });
  it("the end reading counts little, and a vented start not at all", () => {
    const { shares } = errorBudget(order, plan, { ...NONE, gaugeBar: 1 });
    expect(shares.map(({ at }) => at)).toEqual(["oxygen", "top"]);
    expect(shares[1]!.oxygen).toBeLessThan(shares[0]!.oxygen / 5);
  });
  it("errors add up as the root of squares, never below the greatest nor above the sum", () => {
    const budget = errorBudget(order, plan, { gaugeBar: 2, temperatureK: 3, startMix: 0.01 });
    const each = budget.shares.map(({ oxygen }) => oxygen);
    expect(budget.oxygen).toBeGreaterThanOrEqual(Math.max(...each));
    expect(budget.oxygen).toBeLessThanOrEqual(each.reduce((sum, share) => sum + share));
  });
  it("the analysis of what was in the cylinder counts as much as there is of it", () => {
    const half = ordered(100, "EAN32", 200, "EAN32", { equation: idealGas });
    const { shares } = errorBudget(half, planFill(half), { ...NONE, startMix: 0.01 });
    expect(shares).toHaveLength(1);
    expect(shares[0]!.oxygen).toBeCloseTo((0.01 * 101.01325) / 201.01325, 6);
  });
  it("the coarsest gauge is the one that uses the tolerance up", () => {
    const errors = { gaugeBar: 5, temperatureK: 3, startMix: 0 };
    const gaugeBar = coarsestGaugeBar(order, plan, errors, 0.01)!;
    expect(errorBudget(order, plan, { ...errors, gaugeBar }).oxygen).toBeCloseTo(0.01, 4);
  });
  it("no gauge is good enough where the start mix alone is out of tolerance", () => {
    const topped = ordered(150, "EAN32", 200, "EAN32");
    const errors = { gaugeBar: 1, temperatureK: 0, startMix: 0.02 };
    expect(coarsestGaugeBar(topped, planFill(topped), errors, 0.01)).toBeUndefined();
  });
});
