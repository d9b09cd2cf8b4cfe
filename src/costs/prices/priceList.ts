import type { Mixture } from "../../gas/mixture";
import type { CellAddress } from "../../sheet/sheet";
import type { ListAmount, PriceDoubt } from "./priceSheet";

/** What a litre of gas costs that really reaches a cylinder, at 1 atm and the shop's usual temperature. */
export interface GasPrice {
  readonly perL: number;
  /** What stands in the list. */
  readonly paid: ListAmount;
  /** Litres that one unit of what is paid for gives, before losses. */
  readonly usableL: number;
  readonly losses: number;
  readonly cell: CellAddress;
}

export interface BankedPrice extends GasPrice {
  readonly mix: Mixture;
}

/** What the compressor costs for an hour of running, part by part. */
export interface CompressorPrice {
  readonly litresPerHour: number;
  readonly energy?: number;
  readonly filter?: FilterPrice;
  readonly service?: number;
  readonly perHour: number;
}

export interface FilterPrice {
  readonly perHour: number;
  /** Hours that a cartridge lasts at the temperature its maker rates it for. */
  readonly lifeHours: number;
  /** How many of those hours an hour here counts for; 1 where no temperatures are given. */
  readonly hoursCounted: number;
  readonly weighted: boolean;
}

/** Kinds of fills as prices and times tell them apart. */
export type MixKind = "air" | "nitrox" | "trimix";

export interface LabourPrice {
  readonly perFill: Readonly<Record<MixKind, number>>;
  /** Of nitrox made by partial pressure, where that takes longer. */
  readonly partialPressure?: number;
}

/** What customers are charged. */
export interface Charges {
  readonly byMix: readonly { readonly mix: Mixture; readonly perFill: number }[];
  readonly byKind: Readonly<Partial<Record<MixKind, number>>>;
  /** On top of every fill. */
  readonly everyFill?: number;
  readonly byGas: Readonly<Partial<Record<"oxygen" | "helium" | "air", VolumeCharge>>>;
}

export interface VolumeCharge {
  readonly perL: number;
  /** By what the full cylinder holds of the gas (the final percentage), not by what went in. */
  readonly inTheMix: boolean;
}

/** Everything that fills are costed by. What is absent was not given, or could not be read. */
export interface PriceList {
  readonly oxygen?: GasPrice;
  readonly helium?: GasPrice;
  readonly air?: GasPrice;
  readonly banked: readonly BankedPrice[];
  readonly compressor?: CompressorPrice;
  readonly booster?: { readonly perL: number; readonly perFill: number };
  readonly labour?: LabourPrice;
  readonly charges: Charges;
  readonly doubts: readonly PriceDoubt[];
}
