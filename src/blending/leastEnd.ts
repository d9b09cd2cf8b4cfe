import { contentAt, pressureOf } from "../gas/content";
import { balanceOf } from "./balance";
import { checkOrder, type FillOrder } from "./fillOrder";

/**
 * The lowest end pressure (bar absolute) at which the order can be made of what is in the cylinder by adding alone:
 * what a mix that came out wrong has to be filled up to if nothing is to be let out. Never below the ordered end.
 * Undefined where no amount of the gases does it.
 */
export function leastEndByAdding(order: FillOrder): number | undefined {
  checkOrder(order);
  const { equation, temperatureK, endMix } = order;
  const start = contentAt(equation, order.startMix, order.startPressureBar, temperatureK);
  const { wanted, there, gases } = balanceOf(order, start, { mix: endMix, molPerLitre: 1 });
  if (!gases.topIsOwnGas) return undefined;
  let total = equation.density(endMix, order.endPressureBar, temperatureK);
  for (const gas of ["helium", "oxygen", "top"] as const) {
    if (there[gas] <= SLACK * start.molPerLitre) continue;
    if (wanted[gas] <= SLACK) return undefined;
    total = Math.max(total, there[gas] / wanted[gas]);
  }
  return pressureOf(equation, { mix: endMix, molPerLitre: total }, temperatureK);
}

/** Amounts this small are float noise. */
const SLACK = 1e-9;
