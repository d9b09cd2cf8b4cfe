import { contentAt, drained } from "../gas/content";
import type { FillOrder } from "./fillOrder";
import { planFill, type FillPlan } from "./planFill";

/** The plan of an order from a lower start than there is: what is above it is drained first (pressure bar absolute). */
export function drainFirst(order: FillOrder, drainBar: number): FillPlan {
  if (drainBar >= order.startPressureBar) return planFill(order);
  const start = contentAt(order.equation, order.startMix, order.startPressureBar, order.temperatureK);
  const left = contentAt(order.equation, order.startMix, drainBar, order.temperatureK);
  const plan = planFill({ ...order, startPressureBar: drainBar });
  const [first, ...later] = plan.steps;
  const stopBar = first?.step === "drain" ? first.stopBar : drainBar;
  const kept = drained(left, order.equation.density(order.startMix, stopBar, order.temperatureK));
  const drain = {
    step: "drain" as const,
    gas: order.startMix,
    molPerLitre: kept.molPerLitre - start.molPerLitre,
    stopBar,
    mixAfter: order.startMix,
  };
  return { ...plan, start, steps: [drain, ...(first?.step === "drain" ? later : plan.steps)] };
}
