import type { MixOfStep } from "../../blending/mixOf";
import { stopInPlan } from "../../blending/planReadings";
import { planFill, type FillOrder, type FillPlan } from "../../blending/planFill";
import { idealGas } from "../../gas/equationOfState";
import { nameMix } from "../../gas/nameMix";
import { Refusal } from "../../gas/refusal";
import type { Units } from "../../gas/units";
import type { StartPressure } from "../../typed/readers";
import { reachInWords } from "./reachInWords";
import { slipInWords } from "./slips";
import { startInWords } from "../../typed/startMix";
import { capital, degrees, gauge, gaugeChange, mixInWords, partsInWords, percent } from "../../words/figures";

export const NOT_A_MEASUREMENT = "A plan is not a measurement: analyse the gas.";

/** How a fill plan came about: what was ordered, the steps, what was assumed, and how far it can be off. */
export function planInWords(order: FillOrder, startPressure: StartPressure, units: Units): readonly string[] {
  const plan = planFill(order);
  return [
    `From ${startInWords(startPressure, order.startMix, units)} to ${gauge(order.endPressureBar, units)} of ${mixInWords(order.endMix)}.`,
    stepsInWords(plan, order, units),
    ...topAloneInWords(plan, order),
    ...nearlyPureInWords(plan),
    assumptionsInWords(plan, order, units),
    ...reachOfStops(plan, order),
    ...idealStopsInWords(plan, order, units),
    ...slipsInWords(plan, order),
    NOT_A_MEASUREMENT,
  ];
}

function stepsInWords(plan: FillPlan, order: FillOrder, units: Units): string {
  let before = order.startPressureBar;
  const steps = plan.steps.map(({ step, gas, stopBar }) => {
    const change = gaugeChange(stopBar - before, units);
    before = stopBar;
    return `${step === "top" ? `top with ${nameMix(gas)}` : step} to ${gauge(stopBar, units)} (${change})`;
  });
  return steps.length > 0
    ? `Steps: ${steps.join("; ")}.`
    : "The order is in the cylinder already: nothing to add.";
}

function topAloneInWords({ topAlone, steps, result }: FillPlan, { topMix }: FillOrder): readonly string[] {
  if (!topAlone || steps.at(-1)?.step !== "top") return [];
  return [
    `${nameMix(topMix)} alone comes within 0.1 of the order (${partsInWords(result.mix)}), so no pure gas is added.`,
  ];
}

function nearlyPureInWords({ nearlyPure, result }: FillPlan): readonly string[] {
  if (!nearlyPure) return [];
  return [
    `The last atmosphere stays in the cylinder: it comes to ${percent(result.mix.oxygen)} oxygen, not 100 %.`,
  ];
}

function assumptionsInWords(plan: FillPlan, order: FillOrder, units: Units): string {
  const uses = (gas: "oxygen" | "top") => plan.steps.some(({ step }) => step === gas);
  return `Assumed: ${[
    ...(uses("top") ? [`${mixInWords(order.topMix)} on top`] : []),
    ...(uses("oxygen") ? [`an oxygen supply of ${percent(order.oxygenSupply.oxygen)}`] : []),
    `every reading settled at ${degrees(order.temperatureK, units)}`,
    "one atmosphere in the cylinder at 0 on the gauge",
  ].join(", ")}.`;
}

/** The last sentence holds for the mix ordered; a stop on helium and oxygen alone is known less well. */
function reachOfStops({ steps }: FillPlan, order: FillOrder): readonly string[] {
  const reached = reachInWords(order.equation, order.endMix, order.endPressureBar);
  const weaker = steps.slice(0, -1).find(({ mixAfter, stopBar }) => {
    return (
      mixAfter.helium > 0 &&
      mixAfter.oxygen > 0 &&
      reachInWords(order.equation, mixAfter, stopBar) !== reached
    );
  });
  if (!weaker) return [reached];
  return [
    reached,
    `At the ${weaker.step} stop: ${reachInWords(order.equation, weaker.mixAfter, weaker.stopBar)}`,
  ];
}

/** What becomes of the mix when a stop is read high, or on gas that is still warm. */
function slipsInWords(plan: FillPlan, order: FillOrder): readonly string[] {
  const start: MixOfStep = {
    gas: order.startMix,
    pressureBar: order.startPressureBar,
    temperatureK: order.temperatureK,
  };
  const done = plan.steps.map(({ step, gas, stopBar }): MixOfStep => ({
    gas: step === "drain" ? "drain" : gas,
    pressureBar: stopBar,
    temperatureK: order.temperatureK,
  }));
  return plan.steps.flatMap(({ step }, index) => {
    if (step !== "helium" && step !== "oxygen") return [];
    const slip = slipInWords(order.equation, [start, ...done], index + 1);
    return slip === "" ? [] : [`${capital(step)} stop ${slip}.`];
  });
}

/** What people remember from charts made with Boyle's law. */
function idealStopsInWords(plan: FillPlan, order: FillOrder, units: Units): readonly string[] {
  if (order.equation === idealGas) return [];
  const pure = plan.steps.filter(({ step }) => step === "helium" || step === "oxygen");
  const ideal = planOrNothing({ ...order, equation: idealGas });
  if (!ideal || pure.length === 0) return [];
  const stops = pure.map(({ step }) => `${step} at ${gauge(stopInPlan(ideal, order, step), units)}`);
  return [`As an ideal gas it would stop ${stops.join(", ")}.`];
}

function planOrNothing(order: FillOrder): FillPlan | undefined {
  try {
    return planFill(order);
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}
