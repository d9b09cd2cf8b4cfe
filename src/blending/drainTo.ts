import { added, contentAt, drained, pressureOf } from "../gas/content";
import { checkedPressure } from "../gas/limits";
import { HELIUM, mixBetween, OXYGEN } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { refuse } from "../gas/refusal";
import { ATMOSPHERE_BAR, gaugeInWords } from "../gas/units";
import { amountsToAdd, balanceOf, NEGLIGIBLE } from "./balance";
import { checkOrder, isNear, shareAtZeroGauge, type FillOrder } from "./fillOrder";
import { planByTopAlone, planFill } from "./planFill";

export type DrainOrder = Omit<FillOrder, "order" | "oxygenSupply">;

/**
 * Pressure (bar absolute) to drain to.
 *
 * Without a bank: the one pressure from which the top gas alone gives the order. With an oxygen bank pressure (bar
 * absolute): the highest, not above the start, from which the fill needs no draining and its oxygen (100 %, after the
 * helium) stops within the bank; the start pressure if that holds already.
 *
 * @throws Refusal when there is no such pressure, or it lies above the start.
 */
export function drainTo(order: DrainOrder, oxygenBankBar?: number): number {
  const full: FillOrder = { ...order, oxygenSupply: OXYGEN, order: "helium first" };
  checkOrder(full);
  return oxygenBankBar === undefined ? forTopAlone(full) : forBank(full, checkedPressure(oxygenBankBar));
}

function forTopAlone(order: FillOrder): number {
  const { equation, temperatureK, startMix, endMix, topMix, startPressureBar } = order;
  const [residue, ordered, top] = [startMix, endMix, topMix].map(nameMix);
  const share = shareOfResidue(order);
  if (!isNear(mixBetween(topMix, startMix, share), endMix))
    refuse(
      `Topping ${residue} with ${top} never gives ${ordered}: it does not lie between the two. Use another top gas, or plan it in steps.`,
    );
  if (isNear(startMix, topMix, 0)) return Math.min(startPressureBar, order.endPressureBar);

  const start = contentAt(equation, startMix, startPressureBar, temperatureK);
  const target = contentAt(equation, endMix, order.endPressureBar, temperatureK);
  const kept = drained(start, share * target.molPerLitre);
  const vented = drained(start, start.molPerLitre * shareAtZeroGauge(order, start));
  if (kept.molPerLitre > start.molPerLitre * (1 + NEGLIGIBLE)) {
    if (planByTopAlone(order, start, target)) return startPressureBar;
    const needed = gaugeInWords(pressureOf(equation, kept, temperatureK));
    refuse(`It would take ${needed} of ${residue} to top from, more than there is. Plan it in steps.`);
  }
  if (kept.molPerLitre < vented.molPerLitre) {
    if (planByTopAlone({ ...order, startPressureBar: ATMOSPHERE_BAR }, vented, target)) return ATMOSPHERE_BAR;
    refuse(
      `Even drained to 0 the cylinder holds an atmosphere of ${residue}: topping with ${top} does not give ${ordered}.`,
    );
  }
  return pressureOf(equation, kept, temperatureK);
}

/** Topping moves the mix on the straight line from what is there to the top gas: how far back the order lies on it. */
function shareOfResidue({ startMix, endMix, topMix }: FillOrder): number {
  const oxygen = startMix.oxygen - topMix.oxygen;
  const helium = startMix.helium - topMix.helium;
  const length = oxygen * oxygen + helium * helium;
  if (length === 0) return 0;
  const along = (endMix.oxygen - topMix.oxygen) * oxygen + (endMix.helium - topMix.helium) * helium;
  return Math.min(1, Math.max(0, along / length));
}

/** Less residue leaves more to be topped, so the oxygen stops lower: the share that just fits is found by halving. */
function forBank(order: FillOrder, bankBar: number): number {
  const { equation, temperatureK, startPressureBar } = order;
  const plan = planFill(order);
  const drain = plan.steps.find(({ step }) => step === "drain");
  const oxygen = plan.steps.find(({ step }) => step === "oxygen");
  const undrained = drain ? drain.stopBar : startPressureBar;
  if (!oxygen || oxygen.stopBar <= bankBar) return undrained;

  if (plan.nearlyPure) {
    refuse(
      `Nothing but oxygen makes ${nameMix(order.endMix)}, so it stops at ${gaugeInWords(oxygen.stopBar)}, above the bank (${gaugeInWords(bankBar)}). Use a fuller bank.`,
    );
  }
  const target = contentAt(equation, order.endMix, order.endPressureBar, temperatureK);
  const balance = balanceOf(order, plan.start, target);
  const oxygenStop = (share: number): number => {
    const amounts = amountsToAdd(balance, share);
    const kept = drained(plan.start, plan.start.molPerLitre * share);
    const stopped = added(added(kept, HELIUM, amounts.helium), OXYGEN, amounts.oxygen);
    return pressureOf(equation, stopped, temperatureK);
  };
  let fits = Math.max(balance.least, shareAtZeroGauge(order, plan.start));
  let tooMuch = Math.min(balance.most, 1);
  if (oxygenStop(fits) > bankBar)
    refuse(
      `Even from the lowest pressure that gives the mix, the oxygen stops at ${gaugeInWords(oxygenStop(fits))}, above the bank (${gaugeInWords(bankBar)}). Use a fuller bank, or a top gas with more oxygen.`,
    );
  while (tooMuch - fits > NEGLIGIBLE) {
    const middle = (fits + tooMuch) / 2;
    if (oxygenStop(middle) <= bankBar) fits = middle;
    else tooMuch = middle;
  }
  return pressureOf(equation, drained(plan.start, plan.start.molPerLitre * fits), temperatureK);
}
