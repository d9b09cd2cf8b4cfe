import { checkedVolume, freeVolumeL } from "../gas/freeGas";
import type { FillOrder, FillPlan, StepName } from "./planFill";

/**
 * Volume of one gas that a plan lets into a cylinder, in litres at 1 atm and the temperature of the fill; 0 for a gas
 * that is not in the plan. Gas let out before is no part of it.
 */
export function gasUsed(
  plan: FillPlan,
  order: FillOrder,
  gas: Exclude<StepName, "drain">,
  waterVolumeL: number,
): number {
  checkedVolume(waterVolumeL);
  const step = plan.steps.find(({ step }) => step === gas);
  if (!step) return 0;
  return freeVolumeL(order.equation, step.gas, step.molPerLitre * waterVolumeL, order.temperatureK);
}
