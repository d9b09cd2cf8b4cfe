import { gasUsed } from "../blending/gasUsed";
import type { FillOrder, FillPlan } from "../blending/planFill";
import { unknown } from "../gas/refusal";

/** The gases that a fill is charged for. */
export const CHARGED_GASES = ["oxygen", "helium", "top"] as const;
export type ChargedGas = (typeof CHARGED_GASES)[number];

/** Prices per litre of gas at 1 atm; a gas without a price is absent. `perFill` comes on top of every fill. */
export interface GasPrices extends Readonly<Partial<Record<ChargedGas, number>>> {
  readonly perFill: number;
}

/** What one gas of a fill costs. */
export interface CostLine {
  readonly gas: ChargedGas;
  readonly volumeL: number;
  readonly cost: number;
}

export interface FillCost {
  /** Only gases that go in. */
  readonly lines: readonly CostLine[];
  readonly perFill: number;
  readonly total: number;
}

/**
 * What one fill costs: the gas that goes in, and what every fill costs. Gas let out before is neither charged nor
 * credited.
 * @throws Refusal (unknown) where a gas goes in that has no price.
 */
export function fillCost(
  plan: FillPlan,
  order: FillOrder,
  waterVolumeL: number,
  prices: GasPrices,
): FillCost {
  const lines = CHARGED_GASES.map((gas) => ({ gas, volumeL: gasUsed(plan, order, gas, waterVolumeL) }))
    .filter(({ volumeL }) => volumeL > 0)
    .map(({ gas, volumeL }) => ({ gas, volumeL, cost: volumeL * priceOf(gas, prices) }));
  return {
    lines,
    perFill: prices.perFill,
    total: lines.reduce((sum, { cost }) => sum + cost, prices.perFill),
  };
}

function priceOf(gas: ChargedGas, prices: GasPrices): number {
  return (
    prices[gas] ??
    unknown(`This fill takes ${gas} gas, and the prices have no row "${gas}": add one with its price.`)
  );
}
