import type { Way } from "../../blending/waysToFill";
import { pureIn } from "../../costs/charge";
import { bankedPrice } from "../../costs/costOfFill";
import type { GasPrices } from "../../costs/fillCost";
import type { MixKind, PriceList } from "../../costs/prices/priceList";
import { isAir } from "../../audit/record/enriched";
import type { Mixture } from "../../gas/mixture";

/** The price list of the workbook, and the sheet it stands on. */
export interface ListedPrices {
  readonly sheet: string;
  readonly list: PriceList;
}

/** Prices as typed under the station: per litre of gas at 1 atm; what was left blank is absent. */
export interface TypedPrices {
  readonly oxygen?: number;
  readonly helium?: number;
  readonly top?: number;
  readonly perFill?: number;
}

export interface StationPrices {
  readonly typed: TypedPrices;
  readonly listed: ListedPrices | undefined;
}

/**
 * What a way is costed by: what was typed comes first, then the price list, read as the costs of the log are: air
 * without a price is the compressor's time, and a bank or a stream without one is what it is made of.
 */
export function pricesFor({ plan, source }: Way, { typed, listed }: StationPrices): GasPrices {
  const list = listed?.list;
  const isBlended = plan?.steps.some(({ step }) => step === "oxygen" || step === "helium") ?? false;
  const boosting = isBlended ? list?.booster : undefined;
  const perL = (gas: "oxygen" | "helium") => {
    const price = list?.[gas]?.perL;
    return typed[gas] ?? (price === undefined ? undefined : price + (boosting?.perL ?? 0));
  };
  const oxygen = perL("oxygen");
  const helium = perL("helium");
  const top = typed.top ?? (list && topPerL(source.mix, source.name === "bank", list));
  const made = plan?.result.mix;
  return {
    perFill:
      typed.perFill ?? (made && list ? labourFor(made, isBlended, list) : 0) + (boosting?.perFill ?? 0),
    ...(oxygen !== undefined && { oxygen }),
    ...(helium !== undefined && { helium }),
    ...(top !== undefined && { top }),
  };
}

/** A price of the list where none was typed: per litre, and where it comes from. */
export interface ListedPrice {
  readonly perL: number;
  readonly from: string;
}

export function listedPrice(
  of: "oxygen" | "helium" | "top",
  { sheet, list }: ListedPrices,
): ListedPrice | undefined {
  const price = of === "top" ? list.air : list[of];
  if (price) return { perL: price.perL, from: `${sheet}, row ${price.cell.row + 1}` };
  const perL = of === "top" ? compressorPerL(list) : undefined;
  return perL === undefined ? undefined : { perL, from: `${sheet}, the compressor's hours` };
}

const TYPED_WORDS: Readonly<Record<keyof TypedPrices, string>> = {
  oxygen: "oxygen",
  helium: "helium",
  top: "top gas",
  perFill: "per fill",
};

/** Where the prices come from that a cost was worked out by; a sentence. */
export function pricesFrom({ typed, listed }: StationPrices): string {
  const names = (Object.keys(TYPED_WORDS) as (keyof TypedPrices)[]).flatMap((of) =>
    typed[of] === undefined ? [] : [TYPED_WORDS[of]],
  );
  if (!listed) return "By the prices typed under the station.";
  const but = names.length === 0 ? "" : `; ${names.join(", ")} as typed under the station`;
  return `By the prices of the sheet “${listed.sheet}”${but}.`;
}

function topPerL(mix: Mixture, fromBank: boolean, list: PriceList): number | undefined {
  const banked = fromBank ? bankedPrice(mix, list) : undefined;
  if (banked) return banked.perL;
  const pure = pureIn(mix);
  const air = list.air ? pure.air * list.air.perL : compressorPerL(list);
  const parts = [
    air,
    pure.oxygen > TRACE ? costPerL(pure.oxygen, list.oxygen) : 0,
    mix.helium > TRACE ? costPerL(mix.helium, list.helium) : 0,
  ];
  return parts.reduce<number | undefined>(
    (sum, part) => (sum === undefined || part === undefined ? undefined : sum + part),
    0,
  );
}

/** Less than any order or analysis tells. */
const TRACE = 1e-4;

function costPerL(share: number, price: { readonly perL: number } | undefined): number | undefined {
  return price && share * price.perL;
}

function compressorPerL({ compressor }: PriceList): number | undefined {
  return compressor && compressor.perHour / compressor.litresPerHour;
}

function labourFor(mix: Mixture, isBlended: boolean, { labour }: PriceList): number {
  if (!labour) return 0;
  const kind: MixKind = mix.helium > TRACE ? "trimix" : isAir(mix) ? "air" : "nitrox";
  return (isBlended && kind === "nitrox" ? labour.partialPressure : undefined) ?? labour.perFill[kind];
}
