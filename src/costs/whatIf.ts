import { topWith } from "../blending/topWith";
import { realGas } from "../gas/equationOfState";
import { Refusal } from "../gas/refusal";
import { costLog, lacksOf, type CostedLog, type Lack } from "./costLog";
import { gasIn } from "./gasIn";
import type { MeteredFill, NotCosted } from "./metered";
import type { MeteredLog } from "./meterLog";
import type { GasPrice, PriceList } from "./prices/priceList";
import { sumOf, type CostSum } from "./sums";

/** What may be otherwise: a price times a factor, or the way nitrox is made. */
export interface Scenario {
  readonly price?: { readonly of: PricedThing; readonly times: number };
  readonly method?: NitroxMethod;
}

export const PRICED_THINGS = [
  "oxygen",
  "helium",
  "air and bank gas",
  "compressor",
  "labour",
  "booster",
] as const;
export type PricedThing = (typeof PRICED_THINGS)[number];
export const NITROX_METHODS = ["partial pressure", "premix", "continuous"] as const;
export type NitroxMethod = (typeof NITROX_METHODS)[number];

/** The same fills as they are and as they would be. */
export interface WhatIf {
  readonly before: CostSum;
  readonly after: CostSum;
  /** Fills costed as they are that could not be costed, or not be made, that way; they are in neither sum. */
  readonly cannot: readonly Lack[];
}

/** Compares what fills cost with what they would cost. */
export function whatIf(log: MeteredLog, prices: PriceList, scenario: Scenario): WhatIf {
  const asIs = costLog(log, prices);
  const otherwise = costLog(otherMethod(log, scenario.method), otherPrice(prices, scenario.price));
  return compared(asIs, otherwise);
}

function compared(asIs: CostedLog, otherwise: CostedLog): WhatIf {
  const before = new Set(asIs.costed.map(({ metered }) => metered.fill));
  const after = new Set(otherwise.costed.map(({ metered }) => metered.fill));
  return {
    before: sumOf(asIs.costed.filter(({ metered }) => after.has(metered.fill))),
    after: sumOf(otherwise.costed.filter(({ metered }) => before.has(metered.fill))),
    cannot: lacksOf(otherwise.notCosted.filter(({ fill }) => before.has(fill))),
  };
}

/** A price list in which one thing costs so many times as much. */
export function otherPrice(prices: PriceList, price: Scenario["price"]): PriceList {
  if (!price) return prices;
  const { of, times } = price;
  const dearer = <Price extends GasPrice>(gas: Price): Price => ({ ...gas, perL: gas.perL * times });
  const { oxygen, helium, air, banked, compressor, labour, booster } = prices;
  switch (of) {
    case "oxygen":
      return { ...prices, ...(oxygen && { oxygen: dearer(oxygen) }) };
    case "helium":
      return { ...prices, ...(helium && { helium: dearer(helium) }) };
    case "air and bank gas":
      return { ...prices, ...(air && { air: dearer(air) }), banked: banked.map(dearer) };
    case "compressor":
      return {
        ...prices,
        ...(compressor && { compressor: { ...compressor, perHour: compressor.perHour * times } }),
      };
    case "labour":
      return {
        ...prices,
        ...(labour && {
          labour: {
            perFill: {
              air: labour.perFill.air * times,
              nitrox: labour.perFill.nitrox * times,
              trimix: labour.perFill.trimix * times,
            },
            ...(labour.partialPressure !== undefined && { partialPressure: labour.partialPressure * times }),
          },
        }),
      };
    case "booster":
      return {
        ...prices,
        ...(booster && { booster: { perL: booster.perL * times, perFill: booster.perFill * times } }),
      };
  }
}

/** The same log with all nitrox made one way; air and trimix stay as they are. */
function otherMethod(log: MeteredLog, method: NitroxMethod | undefined): MeteredLog {
  if (!method) return log;
  const metered: MeteredFill[] = [];
  const notCosted: NotCosted[] = [...log.notCosted];
  for (const each of log.metered) {
    const made = each.kind === "nitrox" && each.method !== method ? madeBy(each, method) : each;
    if ("why" in made) notCosted.push(made);
    else metered.push(made);
  }
  return { ...log, metered, notCosted };
}

/** A compressor must not draw in more oxygen than this (common practice, no source). */
const RICHEST_THROUGH_COMPRESSOR = 0.4;
const NOISE = 1e-9;

function madeBy(metered: MeteredFill, method: NitroxMethod): MeteredFill | NotCosted {
  const { fill, month, state } = metered;
  const cannot = (why: string): NotCosted => ({ fill, month, why, field: "method" });
  try {
    const { startBar: startPressureBar, endBar: endPressureBar, startMix, endMix, temperatureK } = state;
    if (method === "partial pressure") return { ...metered, method, gas: gasIn(state, method) };
    const stream = topWith({
      startPressureBar,
      startMix,
      endPressureBar,
      endMix,
      temperatureK,
      equation: realGas,
    });
    if (stream.oxygen > RICHEST_THROUGH_COMPRESSOR + NOISE)
      return cannot("needs more than 40 % oxygen through the compressor");
    const other = { ...state, bankMix: stream };
    return { ...metered, method, state: other, gas: gasIn(other, method) };
  } catch (thrown) {
    if (thrown instanceof Refusal) return cannot("the mix cannot be made that way from what was there");
    throw thrown;
  }
}
