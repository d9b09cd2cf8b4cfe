import { AIR, HELIUM, OXYGEN, type Mixture } from "../../gas/mixture";
import { ATMOSPHERE_BAR, kelvin } from "../../gas/units";
import type { Fill, FillFields } from "../../log/log";
import type { Reading } from "../../log/reading";
import { lacking } from "../judge/lacks";
import { isAir } from "../record/enriched";
import { mayBeBlank } from "../record/settledReading";
import { notJudged, type FilledCylinder, type NotJudged } from "../judge/rule";
import type { Shop } from "../shop/shop";
import { sourceMix } from "../shop/gasSources";
import type { AddedAs, AddedGas, RowInLog } from "../walk/rowInLog";
import { residueOf, type Residue } from "./residue";

/** A reading of the log, bar absolute, at the temperature it was taken at. */
export interface GaugeReading {
  readonly bar: number;
  readonly temperatureK: number;
}

/** A fill as a mass balance needs it: what was there, what went in, and where the gauge stood after each. */
export interface Workings {
  readonly start: GaugeReading & { readonly mix: Mixture };
  /** Oxygen and helium, in the order they went in, with where each stopped. */
  readonly pure: readonly Addition[];
  readonly top: TopGas;
  readonly end: GaugeReading;
  /** The end was read settled, or with its temperature beside it; otherwise it may have been read warm. */
  readonly endIsCold: boolean;
}

/** A pure gas that went in; `bar` is where it stopped. */
export interface Addition extends GaugeReading {
  readonly gas: Mixture;
  /** Bar that it rose by, where that is what the row says. */
  readonly rise?: number;
}

/** The gas on top: known, or any between two where the blender set a stream by hand. */
export interface TopGas {
  readonly leanest: Mixture;
  readonly richest: Mixture;
}

/**
 * What the log says of a fill, for a mass balance, or what it lacks for one. Where a heading leaves open whether an
 * added gas is written as added or as the reading it stopped at, there are two ways to read the row.
 */
export function workingsOf(
  filled: FilledCylinder,
  shop: Shop,
  residue: Residue | NotJudged = residueOf(filled, shop),
): readonly Workings[] | NotJudged {
  const { fill, row } = filled;
  const { startPressure, endPressure, settledPressure, gasTemperatureK } = fill.fields;
  if (startPressure.kind !== "value") return lacking(startPressure, { field: "startPressure" });
  const isSettled = settledPressure.kind === "value";
  const ending = isSettled ? settledPressure : endPressure;
  if (ending.kind !== "value") return lacking(ending, { field: "endPressure" });
  const added = addedTo(fill);
  if ("kind" in added) return added;
  const top = topOf(fill, added.length > 0, shop);
  if ("kind" in top) return top;
  if ("kind" in residue) return residue;

  const roomK = roomTemperatureK(shop);
  const hasTemperature = !isSettled && gasTemperatureK.kind === "value" && !mayBeBlank(gasTemperatureK.value);
  const start = { mix: residue.mix, bar: startPressure.value.bar, temperatureK: roomK };
  const end = { bar: ending.value.bar, temperatureK: hasTemperature ? gasTemperatureK.value : roomK };
  const endIsCold = isSettled || hasTemperature || ending.value.hotBar !== undefined;
  const way: Workings = { start, pure: [], top, end, endIsCold };
  const ways = (added.length > 0 ? waysWith(added, row, way) : [way]).filter(isPossible);
  return ways.length > 0 ? ways : NOT_RISING;
}

/** Both ways to read what was added, where a heading leaves it open. */
function waysWith(added: readonly Added[], row: RowInLog, way: Workings): readonly Workings[] {
  const asWritten = (as: AddedAs): Workings => ({ ...way, pure: additions(added, row, way.start, as) });
  const isOpen = added.some(({ field }) => row.addedAs(field) === undefined);
  return isOpen ? [asWritten("increment"), asWritten("stop")] : [asWritten("increment")];
}

const NOT_RISING = notJudged("the readings do not rise from the start over what was added to the end", {
  field: "endPressure",
});

/** Readings are taken to be at the temperature that service pressures are stamped for, unless the log says another. */
export function roomTemperatureK({ rules }: Shop): number {
  return kelvin(rules.referenceTemperatureC, "metric");
}

interface Added {
  readonly field: AddedGas;
  readonly gas: Mixture;
  /** Bar: above 0 gauge, as written. */
  readonly bar: number;
}

/** What the row says of oxygen and helium that went in; by partial pressure there must be something. */
function addedTo({ fields }: Fill): readonly Added[] | NotJudged {
  const { method, orderedMix, analysedMix } = fields;
  const byPressure = method.kind === "value" && method.value === "partial pressure";
  const wantsHelium = hasHelium(orderedMix) || hasHelium(analysedMix);
  const helium = addedOf(fields, "heliumAdded", HELIUM, byPressure && wantsHelium);
  if ("kind" in helium) return helium;
  const oxygen = addedOf(fields, "oxygenAdded", OXYGEN, byPressure);
  return "kind" in oxygen || helium.length === 0 ? oxygen : [...helium, ...oxygen];
}

function hasHelium(mix: Reading<Mixture>): boolean {
  return mix.kind === "value" && mix.value.helium > 0;
}

function addedOf(
  fields: FillFields,
  field: AddedGas,
  gas: Mixture,
  isNeeded: boolean,
): readonly Added[] | NotJudged {
  const reading = fields[field];
  if (reading.kind !== "value")
    return isNeeded || reading.kind !== "blank" ? lacking(reading, { field }) : NO_GAS;
  const bar = reading.value.bar - ATMOSPHERE_BAR;
  return bar > 0 ? [{ field, gas, bar }] : NO_GAS;
}

const NO_GAS: readonly Added[] = [];

const AIR_ON_TOP: TopGas = { leanest: AIR, richest: AIR };

/**
 * What went on top: as the shop has told of the source. A source that nobody has told of may give anything from air to
 * the richest stream; where the log names no source, oxygen and helium are topped with air (common practice, no source).
 */
function topOf(fill: Fill, afterPureGas: boolean, shop: Shop): TopGas | NotJudged {
  const { method, orderedMix, source } = fill.fields;
  const known = sourceMix(fill, shop);
  const anyStream = { leanest: AIR, richest: { oxygen: shop.figures.continuousMaxPercent / 100, helium: 0 } };
  const onTop = known ? only(known) : source.kind === "blank" ? AIR_ON_TOP : anyStream;
  // A compressor that gives air gives it enriched, too, where a stream is set by hand.
  const premixed = known && !isAir(known) ? only(known) : undefined;
  if (method.kind !== "value") {
    if (method.kind !== "blank") return lacking(method, { field: "method" });
    const isOrderedAir = orderedMix.kind === "value" && isAir(orderedMix.value);
    return afterPureGas || isOrderedAir ? onTop : (premixed ?? lacking(method, { field: "method" }));
  }
  switch (method.value) {
    case "air":
      return AIR_ON_TOP;
    case "partial pressure":
      return onTop;
    case "continuous":
    case "membrane":
      return premixed ?? anyStream;
    case "premix":
      return premixed ?? notJudged("what the bank holds is not known", { field: "source" });
  }
}

function only(mix: Mixture): TopGas {
  return { leanest: mix, richest: mix };
}

/** Those written as amounts first; of those written as stops, what stopped lower went in first. */
function additions(
  added: readonly Added[],
  row: RowInLog,
  start: GaugeReading,
  unlessSaid: AddedAs,
): readonly Addition[] {
  const { temperatureK } = start;
  const rises: Addition[] = [];
  const stops: Addition[] = [];
  for (const { field, gas, bar } of added) {
    if ((row.addedAs(field) ?? unlessSaid) === "increment")
      rises.push({ gas, bar: 0, rise: bar, temperatureK });
    else stops.push({ gas, bar: bar + ATMOSPHERE_BAR, temperatureK });
  }
  stops.sort((one, other) => one.bar - other.bar);
  return stacked(start.bar, [...rises, ...stops]);
}

/** The additions with each amount put on top of what was reached before it. */
export function stacked(startBar: number, pure: readonly Addition[]): readonly Addition[] {
  let reached = startBar;
  return pure.map((addition) => {
    reached = addition.rise === undefined ? addition.bar : reached + addition.rise;
    return { ...addition, bar: reached };
  });
}

/** Readings rise from the start over the stops to the end. */
export function isPossible({ start, pure, end }: Workings): boolean {
  let reached = start.bar;
  for (const { bar } of pure) {
    if (bar <= reached) return false;
    reached = bar;
  }
  return reached < end.bar;
}
