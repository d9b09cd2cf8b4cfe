import { contentAt, filledTo, pressureOf, type Content } from "../gas/content";
import { checkedPressure, checkedTemperature } from "../gas/limits";
import type { Mixture } from "../gas/mixture";
import { ATMOSPHERE_BAR } from "../gas/units";
import type { FillOrder, FillPlan } from "./planFill";

/** A gauge reading, bar absolute, and the temperature of the gas at it. */
export interface ReadingFound {
  readonly pressureBar: number;
  readonly temperatureK: number;
}

export interface TopOffFound {
  /** What the reading found becomes at the temperature that the plan's readings are settled at. */
  readonly settledBar: number;
  /** How far the settled reading still is below the ordered end; 0 where it is there or above. */
  readonly missingBar: number;
  readonly mixNow: Mixture;
  /** The mix once topped to the ordered end. */
  readonly mixAfter: Mixture;
  /** What the gauge shows at the ordered end while the gas is as warm as given. */
  warmStopBar(temperatureK: number): number;
}

/**
 * What is still to be topped after the cylinder has cooled, from the reading found. The pure gases are taken to have
 * stopped as planned; the last gas to have come as far as the reading says.
 */
export function topOffFound(order: FillOrder, plan: FillPlan, found: ReadingFound): TopOffFound {
  checkedPressure(found.pressureBar);
  checkedTemperature(found.temperatureK);
  const { equation, temperatureK } = order;
  const last = plan.steps.at(-1);
  const gas = last && last.step !== "drain" ? last.gas : order.topMix;
  const now = filledTo(equation, beforeLast(order, plan), gas, found.pressureBar, found.temperatureK);
  const full = filledTo(equation, now, gas, order.endPressureBar, temperatureK);
  const settledBar = pressureOf(equation, now, temperatureK);
  return {
    settledBar,
    missingBar: Math.max(0, order.endPressureBar - settledBar),
    mixNow: now.mix,
    mixAfter: full.mix,
    warmStopBar: (warmK) => pressureOf(equation, full, checkedTemperature(warmK)),
  };
}

/** What was in the cylinder when the last gas began to flow. */
function beforeLast(order: FillOrder, { steps, start }: FillPlan): Content {
  const before = steps.at(-2);
  if (!before) return start;
  return contentAt(order.equation, before.mixAfter, before.stopBar, order.temperatureK);
}

/**
 * What the gauge shows at each stop of a plan while the gas is warmer than the readings are meant for: the rise is that
 * of the gas in a closed cylinder, so that it settles to the stop.
 */
export function warmStops(order: FillOrder, plan: FillPlan, warmK: number): readonly number[] {
  checkedTemperature(warmK);
  return plan.steps.map(({ step, mixAfter, stopBar }) => {
    if (step === "drain" || stopBar <= ATMOSPHERE_BAR) return stopBar;
    const content = contentAt(order.equation, mixAfter, stopBar, order.temperatureK);
    return pressureOf(order.equation, content, warmK);
  });
}
