import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { drainTo } from "../../src/blending/drainTo";
import { mixAfter } from "../../src/blending/mixAfter";
import { mixOf } from "../../src/blending/mixOf";
import { planFill, type FillOrder, type FillPlan } from "../../src/blending/planFill";
import { settled } from "../../src/blending/settled";
import { topWith } from "../../src/blending/topWith";
import { added, drained, pressureOf } from "../../src/gas/content";
import { idealGas, realGas } from "../../src/gas/equationOfState";
import { AIR, HELIUM, mixture, nitrogenOf, OXYGEN } from "../../src/gas/mixture";
import { Refusal } from "../../src/gas/refusal";
import { anyEquation, anyMix, anyOrder, anyTemperatureK, ordered } from "./orders";

/** The plan, or nothing where it is refused in words; anything else thrown is a crash. */
function planned(order: FillOrder): FillPlan | undefined {
  return answered(() => planFill(order));
}

function answered<T>(ask: () => T): T | undefined {
  try {
    return ask();
  } catch (error) {
    if (
      error instanceof Refusal &&
      error.message.length > 20 &&
      !/NaN|undefined|Infinity/.test(error.message)
    )
      return undefined;
    throw error;
  }
}

const share = fc.double({ min: 0, max: 1, noNaN: true });
const often = { numRuns: 1500 };

describe("a plan", () => {
  it("gives the ordered mix to 1e-9; within 0.1 per cent points by the top gas alone, 0.5 of pure oxygen on a last atmosphere", () => {
    let plans = 0;
    fc.assert(
      fc.property(anyOrder, (order) => {
        const plan = planned(order);
        if (!plan) return;
        plans++;
        const last = plan.steps.at(-1)?.mixAfter ?? order.startMix;
        const tolerance = plan.topAlone ? 0.001 + 2e-9 : plan.nearlyPure ? 0.005 + 2e-9 : 1e-9;
        expect(Math.abs(last.oxygen - order.endMix.oxygen)).toBeLessThan(tolerance);
        expect(Math.abs(last.helium - order.endMix.helium)).toBeLessThan(tolerance);
      }),
      often,
    );
    expect(plans).toBeGreaterThan(100);
  });

  it("read back from its gauge stops gives the same mix", () => {
    fc.assert(
      fc.property(anyOrder, (order) => {
        const plan = planned(order);
        const startsPure = order.startMix.oxygen === 1 || order.startMix.helium === 1;
        if (!plan || startsPure) return;
        const { equation, temperatureK } = order;
        const read = mixOf(equation, [
          { gas: order.startMix, pressureBar: order.startPressureBar, temperatureK },
          ...plan.steps.map(({ step, gas, stopBar }) => ({
            gas: step === "drain" ? step : gas,
            pressureBar: stopBar,
            temperatureK,
          })),
        ]);
        expect(Math.abs(read.oxygen - plan.result.mix.oxygen)).toBeLessThan(1e-8);
        expect(Math.abs(read.helium - plan.result.mix.helium)).toBeLessThan(1e-8);
      }),
      often,
    );
  });

  it("balances oxygen, helium and nitrogen", () => {
    fc.assert(
      fc.property(anyOrder, (order) => {
        const plan = planned(order);
        if (!plan) return;
        for (const partOf of [(m = AIR) => m.oxygen, (m = AIR) => m.helium, (m = AIR) => nitrogenOf(m)]) {
          const inAll = plan.steps.reduce(
            (sum, { gas, molPerLitre }) => sum + partOf(gas) * molPerLitre,
            partOf(plan.start.mix) * plan.start.molPerLitre,
          );
          expect(inAll).toBeCloseTo(partOf(plan.result.mix) * plan.result.molPerLitre, 8);
        }
        expect(
          pressureOf(order.equation, plan.result, order.temperatureK) / order.endPressureBar,
        ).toBeCloseTo(1, 9);
      }),
      often,
    );
  });

  it("adds gas in every step but the drain, and its gauge stops rise", () => {
    fc.assert(
      fc.property(anyOrder, (order) => {
        const plan = planned(order);
        if (!plan) return;
        let before = order.startPressureBar;
        plan.steps.forEach(({ step, molPerLitre, stopBar }, index) => {
          if (step === "drain") expect(index).toBe(0);
          expect(Math.sign(molPerLitre)).toBe(step === "drain" ? -1 : 1);
          if (step === "drain") expect(stopBar).toBeLessThan(before);
          else expect(stopBar).toBeGreaterThan(before - 1e-9);
          before = stopBar;
        });
        if (plan.steps[0]?.step === "drain") expect(plan.steps[0].stopBar).toBeGreaterThan(1.01325 - 1e-9);
      }),
      often,
    );
  });

  it("is found for everything that could have been made, and drains no further than that did", () => {
    fc.assert(
      fc.property(anyOrder, share, share, share, share, (order, kept, helium, oxygen, top) => {
        const { equation, temperatureK } = order;
        const start = {
          mix: order.startMix,
          molPerLitre: equation.density(order.startMix, order.startPressureBar, temperatureK),
        };
        const vented = equation.density(order.startMix, 1.01325, temperatureK);
        const left = drained(start, vented + (start.molPerLitre - vented) * kept);
        let made = added(left, HELIUM, 4 * helium);
        made = added(made, order.oxygenSupply, 4 * oxygen);
        made = added(made, order.topMix, 4 * top);
        const endPressureBar = pressureOf(equation, made, temperatureK);
        if (endPressureBar > 450 || endPressureBar < 1.1) return;
        const plan = planFill({ ...order, endMix: made.mix, endPressureBar });
        const [first] = plan.steps;
        if (first?.step === "drain" && !plan.topAlone)
          expect(first.stopBar).toBeGreaterThan(pressureOf(equation, left, temperatureK) * (1 - 1e-6));
      }),
      often,
    );
  });

  it("once drained needs no draining", () => {
    fc.assert(
      fc.property(anyOrder, (order) => {
        const plan = planned(order);
        const [first] = plan?.steps ?? [];
        if (first?.step !== "drain") return;
        const again = planFill({ ...order, startPressureBar: first.stopBar });
        expect(again.steps[0]?.step).not.toBe("drain");
      }),
      often,
    );
  });

  it("never adds less oxygen when more is ordered", () => {
    const oxygenIn = (plan: FillPlan) => plan.steps.find(({ step }) => step === "oxygen")?.molPerLitre ?? 0;
    let compared = 0;
    fc.assert(
      fc.property(anyOrder, share, (order, more) => {
        if (order.topMix.oxygen >= order.oxygenSupply.oxygen) return;
        const richer = mixture(
          order.endMix.oxygen + (1 - order.endMix.oxygen - order.endMix.helium) * more,
          order.endMix.helium,
        );
        const plan = planned(order);
        const richerPlan = planned({ ...order, endMix: richer });
        if (!plan || !richerPlan) return;
        compared++;
        expect(oxygenIn(richerPlan)).toBeGreaterThanOrEqual(oxygenIn(plan) - 1e-9);
      }),
      often,
    );
    expect(compared).toBeGreaterThan(50);
  });

  it("is the same for the ideal gas as pressure goes to zero", () => {
    for (const endPressureBar of [3, 2, 1.5]) {
      const order = ordered(0, "air", 0, "18/45", { startPressureBar: 0, endPressureBar });
      const real = planFill({ ...order, equation: realGas });
      const ideal = planFill({ ...order, equation: idealGas });
      real.steps.forEach(({ stopBar }, index) =>
        expect(Math.abs(stopBar / ideal.steps[index]!.stopBar - 1)).toBeLessThan(0.0005 * endPressureBar),
      );
    }
  });
});

describe("whatever is asked", () => {
  const wild = fc.oneof(
    fc.double({ min: -10, max: 500 }),
    fc.constantFrom(0, 1.01325, Number.NaN, Number.POSITIVE_INFINITY, 451, 1e-9),
  );
  const wildOrder: fc.Arbitrary<FillOrder> = fc.record({
    startPressureBar: wild,
    startMix: anyMix,
    endPressureBar: wild,
    endMix: anyMix,
    topMix: anyMix,
    oxygenSupply: anyMix,
    temperatureK: fc.oneof(anyTemperatureK, wild),
    order: fc.constantFrom("helium first" as const, "oxygen first" as const),
    equation: anyEquation,
  });

  it("the answer is finite or a refusal in words", () => {
    fc.assert(
      fc.property(fc.oneof(wildOrder, anyOrder), wild, (order, bank) => {
        const plan = planned(order);
        for (const { molPerLitre, stopBar, mixAfter } of plan?.steps ?? [])
          for (const number of [molPerLitre, stopBar, mixAfter.oxygen, mixAfter.helium])
            expect(number).toSatisfy(Number.isFinite);
        const numbers = [
          answered(() => drainTo(order)),
          answered(() => drainTo(order, bank)),
          answered(() => topWith(order).oxygen),
          answered(() =>
            settled(order.equation, order.startMix, order.startPressureBar, order.temperatureK, bank),
          ),
          answered(
            () =>
              mixAfter({
                ...order,
                startTemperatureK: order.temperatureK,
                endTemperatureK: order.temperatureK,
              }).oxygen,
          ),
        ];
        for (const number of numbers) if (number !== undefined) expect(number).toSatisfy(Number.isFinite);
      }),
      { numRuns: 3000 },
    );
  });
});

describe("topping", () => {
  it("with what TOPWITH says gives the order", () => {
    fc.assert(
      fc.property(anyOrder, (order) => {
        const gas = answered(() => topWith(order));
        if (!gas) return;
        const { temperatureK } = order;
        const after = mixAfter({
          ...order,
          topMix: gas,
          startTemperatureK: temperatureK,
          endTemperatureK: temperatureK,
        });
        expect(after.oxygen).toBeCloseTo(order.endMix.oxygen, 8);
        expect(after.helium).toBeCloseTo(order.endMix.helium, 8);
      }),
      often,
    );
  });

  it("from what DRAINTO says gives the order", () => {
    fc.assert(
      fc.property(anyOrder, share, (order, kept) => {
        // An order that lies between the residue and the top gas.
        const endMix = {
          oxygen: order.topMix.oxygen + (order.startMix.oxygen - order.topMix.oxygen) * kept,
          helium: order.topMix.helium + (order.startMix.helium - order.topMix.helium) * kept,
        };
        const drainedTo = answered(() => drainTo({ ...order, endMix }));
        if (drainedTo === undefined) return;
        expect(drainedTo).toBeLessThanOrEqual(order.startPressureBar * (1 + 1e-9));
        const { temperatureK } = order;
        const after = mixAfter({
          ...order,
          startPressureBar: Math.min(drainedTo, order.endPressureBar),
          startTemperatureK: temperatureK,
          endTemperatureK: temperatureK,
        });
        expect(Math.abs(after.oxygen - endMix.oxygen)).toBeLessThan(0.001 + 1e-8);
        expect(Math.abs(after.helium - endMix.helium)).toBeLessThan(0.001 + 1e-8);
      }),
      often,
    );
  });

  it("from what DRAINTO with a bank says keeps the oxygen stop within the bank", () => {
    let drainedForBank = 0;
    fc.assert(
      fc.property(anyOrder, fc.double({ min: 5, max: 200, noNaN: true }), (anything, bankBar) => {
        const order = { ...anything, oxygenSupply: OXYGEN, order: "helium first" as const };
        const drainedTo = answered(() => drainTo(order, bankBar));
        if (drainedTo === undefined) return;
        expect(drainedTo).toBeLessThanOrEqual(order.startPressureBar * (1 + 1e-9));
        const plan = planFill({ ...order, startPressureBar: drainedTo });
        expect(plan.steps[0]?.step).not.toBe("drain");
        const oxygen = plan.steps.find(({ step }) => step === "oxygen");
        if (!oxygen) return;
        expect(oxygen.stopBar).toBeLessThanOrEqual(bankBar * (1 + 1e-6));
        if (drainedTo > order.startPressureBar * 0.999) return;
        drainedForBank++;
      }),
      often,
    );
    expect(drainedForBank).toBeGreaterThan(10);
  });
});

describe("settling", () => {
  it("there and back gives what was", () => {
    fc.assert(
      fc.property(
        anyMix,
        fc.double({ min: 1, max: 300, noNaN: true }),
        anyTemperatureK,
        anyTemperatureK,
        anyEquation,
        (mix, pressureBar, from, to, equation) => {
          const there = settled(equation, mix, pressureBar, from, to);
          if (there > 450) return;
          expect(settled(equation, mix, there, to, from) / pressureBar).toBeCloseTo(1, 10);
        },
      ),
      often,
    );
  });
});
