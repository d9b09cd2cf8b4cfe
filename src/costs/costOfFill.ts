import { nameMix } from "../gas/nameMix";
import { pureIn } from "./charge";
import type { MeteredFill } from "./metered";
import type { Mixture } from "../gas/mixture";
import type { BankedPrice, PriceList } from "./prices/priceList";

/** What a fill costs, part by part; what the price list says nothing of is no part of it. */
export const COST_PARTS = [
  "oxygen",
  "helium",
  "ready-made gas",
  "air",
  "compressor",
  "booster",
  "labour",
] as const;
export type CostPart = (typeof COST_PARTS)[number];

/** How much of everything priced a fill took: litres of gas, hours of the compressor. */
export interface Quantities {
  readonly oxygenL: number;
  readonly heliumL: number;
  readonly airL: number;
  /** Bank or membrane gas that has a price of its own. */
  readonly readyMadeL: number;
  readonly compressorHours: number;
}

export interface FillExpense {
  readonly quantities: Quantities;
  readonly parts: Readonly<Record<CostPart, number>>;
  readonly total: number;
}

/** The price list lacks what this fill needs. */
export interface NoExpense {
  readonly why: string;
}

/**
 * What one fill costs by a price list. Bank gas without a price of its own was made here: it is oxygen, helium and air
 * out of the compressor. Air without a price is what the compressor costs for the time it takes.
 */
export function costOfFill(metered: MeteredFill, prices: PriceList): FillExpense | NoExpense {
  const { gas, kind, method } = metered;
  const made = takenApart(metered, prices);
  if ("why" in made) return made;
  const { oxygenL, heliumL, airL, readyMade, compressedL } = made;
  if (oxygenL > 0 && !prices.oxygen) return { why: "no price for oxygen" };
  if (heliumL > 0 && !prices.helium) return { why: "no price for helium" };
  // Air that has a price has the compressor in it.
  const runsFor = prices.air ? 0 : compressedL;
  if (runsFor > 0 && !prices.compressor)
    return { why: "no price for air, and none for an hour of the compressor with what it delivers" };
  const compressorHours = runsFor > 0 ? runsFor / prices.compressor!.litresPerHour : 0;
  const boosted = method === "partial pressure" ? gas.oxygenL + gas.heliumL : 0;
  const parts: Record<CostPart, number> = {
    oxygen: oxygenL * (prices.oxygen?.perL ?? 0),
    helium: heliumL * (prices.helium?.perL ?? 0),
    "ready-made gas": readyMade ? readyMade.volumeL * readyMade.perL : 0,
    air: airL * (prices.air?.perL ?? 0),
    compressor: compressorHours * (prices.compressor?.perHour ?? 0),
    booster: boosted > 0 && prices.booster ? boosted * prices.booster.perL + prices.booster.perFill : 0,
    labour:
      (method === "partial pressure" && kind === "nitrox" ? prices.labour?.partialPressure : undefined) ??
      prices.labour?.perFill[kind] ??
      0,
  };
  return {
    quantities: { oxygenL, heliumL, airL, readyMadeL: readyMade?.volumeL ?? 0, compressorHours },
    parts,
    total: COST_PARTS.reduce((sum, part) => sum + parts[part], 0),
  };
}

interface TakenApart {
  readonly oxygenL: number;
  readonly heliumL: number;
  readonly airL: number;
  readonly readyMade?: { readonly volumeL: number; readonly perL: number };
  readonly compressedL: number;
}

/** The gas of a fill as it is paid for. */
function takenApart({ gas }: MeteredFill, prices: PriceList): TakenApart | NoExpense {
  const { oxygenL, heliumL, airL, readyMade, compressedL } = gas;
  if (!readyMade) return { oxygenL, heliumL, airL, compressedL };
  const { from, mix, volumeL } = readyMade;
  const price = bankedPrice(mix, prices);
  if (price) return { oxygenL, heliumL, airL, readyMade: { volumeL, perL: price.perL }, compressedL: 0 };
  if (from === "membrane") return { why: `no price for ${nameMix(mix)} from the membrane` };
  const pure = pureIn(mix);
  return {
    oxygenL: oxygenL + pure.oxygen * volumeL,
    heliumL: heliumL + mix.helium * volumeL,
    airL: airL + pure.air * volumeL,
    compressedL,
  };
}

/** A bank is called by its mix, and is never that to the last tenth. */
const BANK_WITHIN = 0.0101;

/** The price of this gas out of a bank, where it has one of its own. */
export function bankedPrice(mix: Mixture, { banked }: PriceList): BankedPrice | undefined {
  return banked.find(
    (each) =>
      Math.abs(each.mix.oxygen - mix.oxygen) <= BANK_WITHIN &&
      Math.abs(each.mix.helium - mix.helium) <= BANK_WITHIN,
  );
}
