import { added, contentAt, drained, filledTo, pressureOf, type Content } from "../gas/content";
import { HELIUM, type Mixture } from "../gas/mixture";
import { ATMOSPHERE_BAR } from "../gas/units";
import { amountsToAdd, balanceOf, NEGLIGIBLE, type GasAmounts } from "./balance";
import {
  checkOrder,
  isNear,
  NEARLY_PURE,
  shareAtZeroGauge,
  type FillOrder,
  type GasOrder,
} from "./fillOrder";
import { refuseUnreachable } from "./unreachable";

export type { FillOrder, GasOrder } from "./fillOrder";

export type StepName = "drain" | "helium" | "oxygen" | "top";

export interface FillStep {
  readonly step: StepName;
  readonly gas: Mixture;
  /** Gas that goes in for each litre of water volume; negative for what the drain lets out. */
  readonly molPerLitre: number;
  /** Pressure (bar absolute) at which this step stops. */
  readonly stopBar: number;
  /** What is in the cylinder after it. */
  readonly mixAfter: Mixture;
}

export interface FillPlan {
  /** In working order; a step that moves no gas is not there. */
  readonly steps: readonly FillStep[];
  readonly start: Content;
  readonly result: Content;
  /** The top gas alone comes near enough to the order: the result is that mix, not the order to the last digit. */
  readonly topAlone: boolean;
  /** Pure oxygen was ordered, and the last atmosphere keeps it a little below that: the result says how much. */
  readonly nearlyPure?: true;
}

/** Before the amount is known exactly: a mix further off than this stays further off than near enough. */
const OUT_OF_REACH = 0.0015;

const WORKING_ORDER: Readonly<Record<GasOrder, readonly (keyof GasAmounts)[]>> = {
  "helium first": ["helium", "oxygen", "top"],
  "oxygen first": ["oxygen", "helium", "top"],
};
const NOTHING: GasAmounts = { helium: 0, oxygen: 0, top: 0 };

/**
 * Plans a fill by partial pressure: drain if it must be, then helium and oxygen, then the top gas.
 *
 * - Where the top gas alone comes within 0.1 per cent points of the order, that is the plan.
 * - Drains only if it must, to the highest pressure from which no gas would have to be taken out, and never below
 *   0 gauge: the last atmosphere stays. (A start below one atmosphere, an evacuated cylinder, is taken as it is.)
 * - Where two gases could give the same, as much as possible comes from the top gas.
 * - Pure oxygen that the last atmosphere keeps at 99.5 % or more is filled so, and marked.
 *
 * @throws Refusal for what no step can reach, with the best that can be reached and the cause.
 */
export function planFill(order: FillOrder): FillPlan {
  checkOrder(order);
  const { equation, temperatureK } = order;
  const start = contentAt(equation, order.startMix, order.startPressureBar, temperatureK);
  const target = contentAt(equation, order.endMix, order.endPressureBar, temperatureK);
  const asItIs = planByTopAlone(order, start, target);
  if (asItIs) return asItIs;

  const balance = balanceOf(order, start, target);
  const share = balance.most > 1 - NEGLIGIBLE ? 1 : balance.most;
  if (balance.least <= share && (share === 1 || share >= shareAtZeroGauge(order, start))) {
    return planOf(order, start, share, amountsToAdd(balance, share), target, false);
  }
  return (
    planByTopFromZeroGauge(order, start, target) ??
    planNearlyPure(order, start) ??
    refuseUnreachable(order, start, balance)
  );
}

/** The plan that adds nothing but top gas, or only drains, where that is near enough. */
export function planByTopAlone(order: FillOrder, start: Content, target: Content): FillPlan | undefined {
  const { equation, endPressureBar, temperatureK } = order;
  if (order.startPressureBar >= endPressureBar) {
    if (!isNear(order.startMix, order.endMix)) return undefined;
    const left = contentAt(equation, order.startMix, endPressureBar, temperatureK);
    const share = order.startPressureBar > endPressureBar ? left.molPerLitre / start.molPerLitre : 1;
    return planOf(order, start, share, NOTHING, left, true);
  }
  const roughly = added(start, order.topMix, target.molPerLitre - start.molPerLitre).mix;
  if (!isNear(roughly, order.endMix, OUT_OF_REACH)) return undefined;
  const topped = filledTo(equation, start, order.topMix, endPressureBar, temperatureK);
  if (!isNear(topped.mix, order.endMix)) return undefined;
  const top = topped.molPerLitre - start.molPerLitre;
  return planOf(order, start, 1, { helium: 0, oxygen: 0, top }, topped, true);
}

/** The same from a cylinder drained to 0 gauge, for an order that its last atmosphere spoils by less than that. */
function planByTopFromZeroGauge(order: FillOrder, start: Content, target: Content): FillPlan | undefined {
  if (order.startPressureBar <= ATMOSPHERE_BAR) return undefined;
  const left = drained(start, start.molPerLitre * shareAtZeroGauge(order, start));
  const plan = planByTopAlone({ ...order, startPressureBar: ATMOSPHERE_BAR }, left, target);
  if (!plan) return undefined;
  const drain: FillStep = {
    step: "drain",
    gas: order.startMix,
    molPerLitre: left.molPerLitre - start.molPerLitre,
    stopBar: ATMOSPHERE_BAR,
    mixAfter: order.startMix,
  };
  return { ...plan, steps: [drain, ...plan.steps], start };
}

/** Oxygen on the last atmosphere, where the order is pure oxygen and that comes near enough to be sold as it. */
function planNearlyPure(order: FillOrder, start: Content): FillPlan | undefined {
  const { equation, endMix, endPressureBar, temperatureK } = order;
  if (endMix.oxygen < 1) return undefined;
  const vented = shareAtZeroGauge(order, start);
  const share = vented > 1 - NEGLIGIBLE ? 1 : vented;
  const left = drained(start, start.molPerLitre * share);
  const filled = filledTo(equation, left, order.oxygenSupply, endPressureBar, temperatureK);
  if (filled.mix.oxygen < NEARLY_PURE) return undefined;
  const oxygen = filled.molPerLitre - left.molPerLitre;
  return {
    ...planOf(order, start, share, { helium: 0, oxygen, top: 0 }, filled, false),
    nearlyPure: true,
  };
}

/** Lays the amounts out as steps. The equation gives pressure from amount, so each stop is evaluated, not searched. */
function planOf(
  order: FillOrder,
  start: Content,
  share: number,
  amounts: GasAmounts,
  result: Content,
  topAlone: boolean,
): FillPlan {
  const steps: FillStep[] = [];
  const least = NEGLIGIBLE * result.molPerLitre;
  let remaining = amounts.helium + amounts.oxygen + amounts.top;
  let content = start;

  const push = (step: StepName, gas: Mixture, molPerLitre: number): void => {
    const isLast = remaining <= least;
    const stopBar = isLast ? order.endPressureBar : pressureOf(order.equation, content, order.temperatureK);
    steps.push({ step, gas, molPerLitre, stopBar, mixAfter: content.mix });
  };

  if (share < 1) {
    content = drained(start, start.molPerLitre * share);
    push("drain", order.startMix, content.molPerLitre - start.molPerLitre);
  }
  for (const step of WORKING_ORDER[order.order]) {
    const amount = amounts[step];
    if (amount <= least) continue;
    const gas = step === "helium" ? HELIUM : step === "oxygen" ? order.oxygenSupply : order.topMix;
    content = added(content, gas, amount);
    remaining -= amount;
    push(step, gas, amount);
  }
  return { steps, start, result, topAlone };
}
