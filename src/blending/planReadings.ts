import { refuse } from "../gas/refusal";
import { gaugeInWords } from "../gas/units";
import type { FillOrder, FillPlan, StepName } from "./planFill";

/**
 * Pressure (bar absolute) at which a gas stops. A step that is not in the plan stops where the gauge stands anyway
 * when its turn comes.
 * @throws Refusal when the plan drains first and another step is asked for: its stop alone would hide the drain.
 */
export function stopOf(plan: FillPlan, order: FillOrder, step: StepName): number {
  if (step !== "drain") refuseBeforeDrain(plan);
  return stopInPlan(plan, order, step);
}

/** As `stopOf`, for whoever shows the drain beside it. */
export function stopInPlan(plan: FillPlan, order: FillOrder, step: StepName): number {
  const turn = turnOf(order, step);
  let stopBar = order.startPressureBar;
  for (const done of plan.steps) if (turnOf(order, done.step) <= turn) stopBar = done.stopBar;
  return stopBar;
}

/**
 * By how much (bar) the pressure rises while a gas goes in; 0 for a gas that is not in the plan.
 * @throws Refusal when the plan drains first: added to what the gauge shows now it would be wrong.
 */
export function riseOf(plan: FillPlan, order: FillOrder, step: Exclude<StepName, "drain">): number {
  refuseBeforeDrain(plan);
  let before = order.startPressureBar;
  for (const done of plan.steps) {
    if (done.step === step) return done.stopBar - before;
    before = done.stopBar;
  }
  return 0;
}

function refuseBeforeDrain({ steps: [first] }: FillPlan): void {
  if (first?.step === "drain") {
    refuse(
      `Drain to ${gaugeInWords(first.stopBar)} first, then ask again with that start pressure. FILLSTEPS shows all the steps.`,
    );
  }
}

function turnOf(order: FillOrder, step: StepName): number {
  if (step === "drain") return 0;
  if (step === "top") return 3;
  return order.order.startsWith(step) ? 1 : 2;
}
