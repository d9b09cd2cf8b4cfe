import type { TopSource } from "../../blending/waysToFill";
import type { GasOrder } from "../../blending/planFill";
import { numberIn, type FilledCell } from "../../typed/cells";
import type { CellReader } from "../../typed/reader";
import {
  cylinder,
  endPressure,
  mix,
  number,
  oneOf,
  oxygenSupply,
  partialPressure,
  pressure,
  settledTemperature,
  startPressure,
  temperature,
  topMix,
} from "../../typed/readers";
import { startMixOf } from "../../typed/startMix";
import { AIR, OXYGEN, type Mixture } from "../../gas/mixture";
import { Refusal } from "../../gas/refusal";
import { absoluteBar, ATMOSPHERE_BAR, DEFAULT_TEMPERATURE_K, litres, type Units } from "../../gas/units";
import { writtenIn, type FieldName, type FillForm } from "../form";
import type { ListedPrices, StationPrices, TypedPrices } from "./prices";

/*
 * The form is read by the readers of the worksheet functions, so that whatever a cell may hold a field may hold, and
 * the same answer comes of it.
 */

export type Problems = Partial<Record<FieldName, string>>;

/** Reads fields one by one, and notes what cannot be used beside its field. */
export class FormReader {
  readonly problems: Problems = {};

  constructor(readonly form: FillForm) {}

  isBlank(name: FieldName): boolean {
    return writtenIn(this.form, name).text.trim() === "";
  }

  text(name: FieldName): string {
    return writtenIn(this.form, name).text.trim();
  }

  /** Undefined for a blank field, and for one that cannot be used, which is noted. */
  read<T>(name: FieldName, reader: CellReader<T>): T | undefined {
    const { text, units } = writtenIn(this.form, name);
    if (text.trim() === "") return undefined;
    return this.noting(name, () => reader.read(cellOf(text), units));
  }

  noting<T>(name: FieldName, work: () => T): T | undefined {
    try {
      return work();
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      this.problems[name] = capitalised(thrown.message);
      return undefined;
    }
  }
}

/** A field's text as the cell it would be. */
function cellOf(text: string): FilledCell {
  try {
    return numberIn(text) ?? text.trim();
  } catch {
    return text.trim();
  }
}

/** What is there and what is wanted, as far as it was written. */
export interface Wanted {
  readonly startBar: number;
  readonly startMix: Mixture;
  readonly endBar: number;
  readonly endMix: Mixture;
}

export function wantedIn(reader: FormReader): Wanted | undefined {
  const start = reader.read("startPressure", startPressure());
  const startMixture = reader.read("startMix", mix());
  const endBar = reader.read("endPressure", endPressure());
  const endMix = reader.read("endMix", mix());
  if (start === undefined || endBar === undefined || endMix === undefined) return undefined;
  if (startMixture === undefined && (!start.empty || reader.problems.startMix !== undefined))
    return undefined;
  const startMix = reader.noting("startMix", () => startMixOf(start, startMixture));
  return startMix && { startBar: start.bar, startMix, endBar, endMix };
}

/** The station as it stands: blank fields stand for the usual. */
export interface Station {
  readonly tops: readonly TopSource[];
  readonly oxygenSupply: Mixture;
  readonly oxygenBankBar: number | undefined;
  readonly heliumBankBar: number | undefined;
  readonly continuousMost: number | undefined;
  readonly compressorLPerMinute: number | undefined;
  readonly order: GasOrder;
  readonly temperatureK: number;
  readonly maxPpO2: number;
  readonly prices: StationPrices | undefined;
}

export function stationIn(reader: FormReader, listed?: ListedPrices): Station {
  const { form } = reader;
  const top = reader.read("topMix", topMix()) ?? AIR;
  const bankMix = reader.read("bankMix", mix());
  const bankBar = reader.read("bankPressure", pressure(""));
  return {
    tops: [
      { name: "compressor", mix: top },
      ...(bankMix ? [{ name: "bank", mix: bankMix, pressureBar: bankBar }] : []),
    ],
    oxygenSupply: reader.read("oxygenSupply", oxygenSupply()) ?? OXYGEN,
    oxygenBankBar: reader.read("oxygenBank", pressure("")),
    heliumBankBar: reader.read("heliumBank", pressure("")),
    continuousMost: continuousMostIn(reader),
    compressorLPerMinute: flowIn(reader),
    order: reader.read("order", oneOf("", ["helium first", "oxygen first"])) ?? "helium first",
    temperatureK: reader.read("temperature", settledTemperature()) ?? DEFAULT_TEMPERATURE_K[form.units],
    maxPpO2: reader.read("maxPpO2", partialPressure("")) ?? 1.4,
    prices: pricesIn(reader, listed),
  };
}

/** No compressor of the trade takes in more than 40 %: see INJECT. */
export const MOST_CONTINUOUS_PERCENT = 40;

/** The richest stream that the compressor may deliver, mole fraction. */
export function continuousMostIn(reader: FormReader): number | undefined {
  const most = reader.read("continuousMost", number("", "a per cent such as 40"));
  return most === undefined ? undefined : reader.noting("continuousMost", () => shareOf(most));
}

function shareOf(percent: number): number {
  if (percent > 21 && percent <= MOST_CONTINUOUS_PERCENT) return percent / 100;
  throw new Refusal(
    "unusable",
    `Continuous blending goes up to ${MOST_CONTINUOUS_PERCENT} %: write 40 or less.`,
  );
}

function flowIn(reader: FormReader): number | undefined {
  const flow = reader.read("compressorFlow", number("", "a flow per minute"));
  if (flow === undefined) return undefined;
  return reader.noting("compressorFlow", () => {
    if (flow > 0) return litres(flow, writtenIn(reader.form, "compressorFlow").units);
    throw new Refusal("unusable", "Write a flow above 0.");
  });
}

const PRICED = { oxygen: "priceOxygen", helium: "priceHelium", top: "priceTop" } as const;

/** Undefined where nothing was typed and the workbook has no price list: then nothing is costed. */
function pricesIn(reader: FormReader, listed: ListedPrices | undefined): StationPrices | undefined {
  const typed: { -readonly [price in keyof TypedPrices]: number } = {};
  const perFill = amountIn(reader, "pricePerFill");
  if (perFill !== undefined) typed.perFill = perFill;
  for (const gas of ["oxygen", "helium", "top"] as const) {
    const amount = amountIn(reader, PRICED[gas]);
    if (amount !== undefined) typed[gas] = amount / litres(1, writtenIn(reader.form, PRICED[gas]).units);
  }
  const written = [...Object.values(PRICED), "pricePerFill" as const];
  return !listed && written.every((name) => reader.isBlank(name)) ? undefined : { typed, listed };
}

function amountIn(reader: FormReader, name: FieldName): number | undefined {
  const amount = reader.read(name, number("", "an amount"));
  if (amount === undefined || amount >= 0) return amount;
  reader.problems[name] = "Write an amount, 0 or more.";
  return undefined;
}

/** Water volume in litres, of what was written. */
export function volumeIn(reader: FormReader): number | undefined {
  return reader.read("size", cylinder());
}

export function temperatureIn(reader: FormReader, name: FieldName): number | undefined {
  return reader.read(name, temperature(""));
}

export function pressureIn(reader: FormReader, name: FieldName): number | undefined {
  return reader.read(name, pressure(""));
}

/** A difference of pressures in bar: how far a gauge is off. */
export function pressureErrorIn(reader: FormReader, name: FieldName): number | undefined {
  const error = reader.read(name, number("", "a pressure"));
  if (error === undefined) return undefined;
  return absoluteBar(Math.abs(error), writtenIn(reader.form, name).units) - ATMOSPHERE_BAR;
}

/** Oxygen and helium of an analysis, as the MIX function reads them. */
export function analysisIn(reader: FormReader, oxygen: FieldName, helium: FieldName): Mixture | undefined {
  const read = reader.read(oxygen, mix());
  if (read === undefined) return undefined;
  const heliumPercent = reader.read(helium, number("", "per cent of helium"));
  if (heliumPercent === undefined) return reader.problems[helium] === undefined ? read : undefined;
  return reader.noting(helium, () => {
    const share = heliumPercent / 100;
    if (share >= 0 && share + read.oxygen <= 1) return { oxygen: read.oxygen, helium: share };
    throw new Refusal("unusable", `Helium ${heliumPercent} % beside that oxygen is more than 100 %.`);
  });
}

function capitalised(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

export type { Units };
