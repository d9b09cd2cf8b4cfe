import type { Content } from "../gas/content";
import type { EquationOfState } from "../gas/equationOfState";
import { checkedPressure, checkedTemperature } from "../gas/limits";
import type { Mixture } from "../gas/mixture";
import { refuse } from "../gas/refusal";
import { ATMOSPHERE_BAR } from "../gas/units";

/** In which order the pure gases go in; the top gas is always last. */
export type GasOrder = "helium first" | "oxygen first";

/** What is there, what is wanted, and what there is to make it from. Pressures bar absolute, all at one temperature. */
export interface FillOrder {
  readonly startPressureBar: number;
  readonly startMix: Mixture;
  readonly endPressureBar: number;
  readonly endMix: Mixture;
  readonly topMix: Mixture;
  /** The gas called "oxygen": what the oxygen supply delivers. */
  readonly oxygenSupply: Mixture;
  readonly temperatureK: number;
  readonly order: GasOrder;
  readonly equation: EquationOfState;
}

/** @throws Refusal for what no plan can start from. */
export function checkOrder(order: FillOrder): void {
  checkedPressure(order.startPressureBar);
  checkedPressure(order.endPressureBar);
  checkedTemperature(order.temperatureK);
  if (!(order.endPressureBar > ATMOSPHERE_BAR))
    refuse("The end pressure is blank (or 0): write the gauge reading of the full cylinder.");
  const { oxygen, helium } = order.oxygenSupply;
  if (helium > 0)
    refuse("The oxygen supply cannot hold helium: write its oxygen per cent, such as 93 or 99.5.");
  if (!(oxygen > 0))
    refuse("The oxygen supply holds no oxygen: write its oxygen per cent, such as 93 or 99.5.");
}

/** The share of the start content that stays at 0 gauge; all of it where the cylinder is there already. */
export function shareAtZeroGauge(order: FillOrder, start: Content): number {
  if (order.startPressureBar <= ATMOSPHERE_BAR) return 1;
  return order.equation.density(order.startMix, ATMOSPHERE_BAR, order.temperatureK) / start.molPerLitre;
}

/** Within 0.1 per cent points of oxygen and helium a mix is as good as the order: no token puff of oxygen. */
export const NEAR_ENOUGH = 0.001;

export function isNear(mix: Mixture, ordered: Mixture, tolerance = NEAR_ENOUGH): boolean {
  const slack = tolerance + 1e-9;
  return Math.abs(mix.oxygen - ordered.oxygen) <= slack && Math.abs(mix.helium - ordered.helium) <= slack;
}

/** Oxygen of this purity is what the trade fills as oxygen: medical and aviation grades begin there (common practice, no source). */
export const NEARLY_PURE = 0.995;
