import { numberIn } from "../typed/cells";
import { figure } from "../words/figures";
import {
  absoluteBar,
  gaugeReading,
  kelvin,
  litres,
  temperature,
  UNIT_NAMES,
  volume,
  type Units,
} from "../gas/units";

/**
 * What a field holds: a quantity is shown in the units asked for, whatever units it was typed in; `lines` are cylinders
 * with a pressure as their third part.
 */
type FieldKind = "text" | "lines" | "pressure" | "temperature" | "volume" | "price";

/** Every field of the area. A `station` field stays when the next cylinder comes; the rest is this fill's. */
const FIELD_TABLE = {
  asked: ["text", "fill"],
  size: ["text", "fill"],
  startPressure: ["pressure", "fill"],
  startMix: ["text", "fill"],
  endPressure: ["pressure", "fill"],
  endMix: ["text", "fill"],
  gasTemperature: ["temperature", "fill"],
  foundPressure: ["pressure", "fill"],
  foundTemperature: ["temperature", "fill"],
  airReading: ["text", "fill"],
  oxygenReading: ["text", "fill"],
  analysedOxygen: ["text", "fill"],
  analysedHelium: ["text", "fill"],
  secondPostOxygen: ["text", "fill"],
  secondPostHelium: ["text", "fill"],
  analysedPressure: ["pressure", "fill"],
  customerOxygen: ["text", "fill"],
  customerName: ["text", "fill"],
  certification: ["text", "fill"],
  price: ["text", "fill"],
  remarks: ["text", "fill"],
  topMix: ["text", "station"],
  oxygenSupply: ["text", "station"],
  oxygenBank: ["pressure", "station"],
  heliumBank: ["pressure", "station"],
  bankMix: ["text", "station"],
  bankPressure: ["pressure", "station"],
  continuousMost: ["text", "station"],
  compressorFlow: ["volume", "station"],
  order: ["text", "station"],
  temperature: ["temperature", "station"],
  maxPpO2: ["text", "station"],
  priceOxygen: ["price", "station"],
  priceHelium: ["price", "station"],
  priceTop: ["price", "station"],
  pricePerFill: ["text", "station"],
  gaugeError: ["pressure", "station"],
  tolerance: ["text", "station"],
  initials: ["text", "station"],
  filledBy: ["text", "station"],
  filledFrom: ["text", "station"],
  labelStock: ["text", "station"],
  labelFrom: ["text", "fill"],
  logSheet: ["text", "station"],
  row: ["lines", "fill"],
  rowBank: ["lines", "station"],
  rowGas: ["text", "station"],
  rowTarget: ["pressure", "station"],
  rowWay: ["text", "station"],
  rowMix: ["text", "fill"],
  rowStream: ["text", "fill"],
} as const satisfies Record<string, readonly [FieldKind, "fill" | "station"]>;

export type FieldName = keyof typeof FIELD_TABLE;
export const FIELD_NAMES = Object.keys(FIELD_TABLE) as readonly FieldName[];

/** A field as it was typed, and the units of then. */
export interface Written {
  readonly text: string;
  readonly units: Units;
}

/** A cylinder that the register does not hold, as somebody wrote it here. */
export type EnteredCylinder = Readonly<
  Record<"serial" | "owner" | "size" | "servicePressure" | "hydro" | "visual" | "cleaned" | "rating", string>
>;

export const STAGES = ["receive", "plan", "fill", "analyse", "hand over"] as const;
export type Stage = (typeof STAGES)[number];

/** All that is written and chosen at the counter: of the cylinder at hand, and of the station. */
export interface FillForm {
  readonly units: Units;
  readonly stage: Stage;
  /** One cylinder at a time, or a row of them. */
  readonly several: boolean;
  readonly written: Readonly<Partial<Record<string, Written>>>;
  /** The cylinder that was looked up, and that the fields of the fill are about. */
  readonly cylinder?: string | undefined;
  /** Which way the person chose; absent for the first of the list. */
  readonly way?: string | undefined;
  /** Steps and checks that are ticked, by name. */
  readonly ticked: readonly string[];
  readonly entered: readonly EnteredCylinder[];
}

export function newForm(units: Units): FillForm {
  return { units, stage: "receive", several: false, written: {}, ticked: [], entered: [] };
}

/** The form of the next cylinder: the station stays as it is. */
export function nextCylinder(form: FillForm): FillForm {
  const kept = Object.entries(form.written).filter(
    ([name]) => name in FIELD_TABLE && FIELD_TABLE[name as FieldName][1] === "station",
  );
  return {
    ...newForm(form.units),
    several: form.several,
    entered: form.entered,
    written: Object.fromEntries(kept),
  };
}

/** The form with this cylinder on the counter. Nothing that was written of another one stays: it would be believed. */
export function onCounter(form: FillForm, cylinder: string): FillForm {
  const isOther = form.cylinder !== undefined && form.cylinder !== cylinder;
  return writeField({ ...(isOther ? nextCylinder(form) : form), cylinder }, "asked", cylinder);
}

export function writeField(form: FillForm, name: FieldName, text: string): FillForm {
  return { ...form, written: { ...form.written, [name]: { text, units: form.units } } };
}

/** What a field was given as: the text and the units it was typed in, so that nothing is lost by switching. */
export function writtenIn(form: FillForm, name: FieldName): Written {
  return form.written[name] ?? { text: "", units: form.units };
}

/** What a field shows in the units of now. Text that names its own unit, or is no number, stays as it is. */
export function shownIn(form: FillForm, name: FieldName): string {
  const { text, units } = writtenIn(form, name);
  if (units === form.units) return text;
  if (FIELD_TABLE[name][0] === "lines") return withUnitsWritten(text, units);
  const number = plainNumber(text);
  return number === undefined ? text : inUnits(number, FIELD_TABLE[name][0], units, form.units);
}

export function isQuantity(name: FieldName): FieldKind {
  return FIELD_TABLE[name][0];
}

function inUnits(number: number, kind: FieldKind, from: Units, to: Units): string {
  switch (kind) {
    case "pressure":
      return figure(gaugeReading(absoluteBar(number, from), to), to === "us" ? 0 : 1);
    case "temperature":
      return figure(temperature(kelvin(number, from), to), 1);
    case "volume":
      return figure(volume(litres(number, from), to), 2);
    case "price":
      return figure(number / volume(litres(1, from), to), 4);
    case "text":
    case "lines":
      return String(number);
  }
}

/** Lists stay as they were typed: only what their bare pressures are in is written behind them. */
function withUnitsWritten(lines: string, units: Units): string {
  return lines.replace(
    /^([^,;\t\n]*[,;\t][^,;\t\n]*[,;\t][ ]*\d+(?:\.\d+)?)(?=[ ]*(?:[,;\t]|$))/gm,
    `$1 ${UNIT_NAMES[units].pressure}`,
  );
}

function plainNumber(text: string): number | undefined {
  try {
    return numberIn(text);
  } catch {
    return undefined;
  }
}
