import { settled } from "../blending/settled";
import type { CylinderSize } from "../cylinders/size";
import { realGas } from "../gas/equationOfState";
import { AIR, HELIUM, mixture, OXYGEN, type Mixture } from "../gas/mixture";
import { Refusal } from "../gas/refusal";
import { DEFAULT_TEMPERATURE_K, type Units } from "../gas/units";
import type { Field, Fill, FillFields, FillMethod, Log } from "../log/log";
import type { Reading } from "../log/reading";
import { cylindersOf, joinRegister, type RegisterIndex } from "../log/register";
import { gasIn } from "./gasIn";
import type { Assumption, MeteredFill, MeteredLogColumns, NotCosted } from "./metered";
import type { MixKind } from "./prices/priceList";

/** Every fill of a log: with its gas, or with the reason why that cannot be known. */
export interface MeteredLog {
  readonly metered: readonly MeteredFill[];
  readonly notCosted: readonly NotCosted[];
  readonly has: MeteredLogColumns;
}

/** A bank that the shop has told of: what it is called in the log, and what it holds. */
export interface Bank {
  readonly name: string;
  readonly mix?: Mixture | undefined;
}

/** Works out for every fill how much of which gas went in. */
export function meterLog(log: Log, units: Units, banks: readonly Bank[] = []): MeteredLog {
  const steps = meterSteps(log, units, banks);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Fills between two steps. */
const FILLS_PER_STEP = 100;

/** The same, a hundred fills at a time: yields the share that is done. */
export function* meterSteps(
  log: Log,
  units: Units,
  banks: readonly Bank[] = [],
): Generator<number, MeteredLog, undefined> {
  const register = joinRegister(log);
  const metered: MeteredFill[] = [];
  const notCosted: NotCosted[] = [];
  for (const [at, fill] of log.fills.entries()) {
    if (at % FILLS_PER_STEP === 0) yield at / log.fills.length;
    const result = meterFill(fill, register, units, banks);
    if ("why" in result) notCosted.push(result);
    else metered.push(result);
  }
  const hasColumn = (field: Field): boolean =>
    log.sheets.some(
      ({ columns, leftOut }) => leftOut !== true && columns.some((column) => column.field === field),
    );
  return { metered, notCosted, has: { price: hasColumn("price"), customer: hasColumn("owner") } };
}

/** What stops a fill from being metered; caught where one fill ends. */
class CannotTell extends Error {
  constructor(
    readonly field: Field,
    readonly why: string,
  ) {
    super(why);
  }
}

/** The gas of one fill, or why it cannot be known. */
export function meterFill(
  fill: Fill,
  register: RegisterIndex,
  units: Units,
  banks: readonly Bank[],
): MeteredFill | NotCosted {
  const { date } = fill.fields;
  const month = date.kind === "value" ? date.value.toPlainYearMonth().toString() : "";
  try {
    return { ...meter(fill, register, DEFAULT_TEMPERATURE_K[units], banks), month };
  } catch (thrown) {
    if (thrown instanceof CannotTell) return { fill, month, why: thrown.why, field: thrown.field };
    if (thrown instanceof Refusal)
      return { fill, month, why: "what was there and what is there now do not agree", field: "endPressure" };
    throw thrown;
  }
}

function meter(
  fill: Fill,
  register: RegisterIndex,
  temperatureK: number,
  banks: readonly Bank[],
): Omit<MeteredFill, "month"> {
  const { fields } = fill;
  const assumed: Assumption[] = [];
  const { size, owner } = cylinderOf(fill, register);
  const method = methodOf(fields);
  const { mix, endMix } = mixesOf(fields, method, assumed);
  const bankMix = (method === "premix" ? bankOf(fields, banks) : undefined) ?? mix;
  const startBar = needed(fields.startPressure, "startPressure", "start pressure").bar;
  const startMix = startMixOf(fields, method === "air" ? AIR : bankMix, method, assumed);
  const endBar = endBarOf(fields, endMix, temperatureK, assumed);
  if (endBar <= startBar) throw new CannotTell("endPressure", "end pressure is not above the start pressure");
  const state = {
    waterVolumeL: size.waterVolumeL,
    startBar,
    startMix,
    endBar,
    endMix,
    bankMix,
    temperatureK,
  };
  const gas = gasIn(state, method);
  if (gas.drained) assumed.push("drained");
  return {
    fill,
    method,
    mix,
    kind: kindOf(mix),
    size: size.name,
    customer: fields.owner.kind === "value" ? fields.owner.value : owner,
    state,
    gas,
    assumed,
  };
}

/** Blank, in doubt or unreadable: each says so. */
function needed<T>(reading: Reading<T>, field: Field, name: string): T {
  if (reading.kind === "value") return reading.value;
  if (reading.kind === "blank") throw new CannotTell(field, `no ${name}`);
  throw new CannotTell(field, `${name} is ${reading.kind === "ambiguous" ? "in doubt" : "unreadable"}`);
}

function methodOf(fields: FillFields): FillMethod {
  const { method, oxygenAdded, orderedMix, analysedMix } = fields;
  if (method.kind !== "blank") return needed(method, "method", "method");
  if (oxygenAdded.kind === "value" && oxygenAdded.value.written.value > 0) return "partial pressure";
  const mix = orderedMix.kind === "value" ? orderedMix : analysedMix;
  // Air needs no word for how it was filled.
  if (mix.kind === "value" && kindOf(mix.value) === "air") return "air";
  throw new CannotTell("method", "no method");
}

/** What was ordered, and what is there now: analysed where it was. */
function mixesOf(
  { orderedMix, analysedMix, analysedHelium }: FillFields,
  method: FillMethod,
  assumed: Assumption[],
): { readonly mix: Mixture; readonly endMix: Mixture } {
  if (analysedMix.kind === "blank") {
    if (method === "air" && orderedMix.kind === "blank") return { mix: AIR, endMix: AIR };
    const mix = needed(orderedMix, "orderedMix", "mix");
    return { mix, endMix: mix };
  }
  const analysed = needed(analysedMix, "analysedMix", "analysis");
  if (orderedMix.kind !== "value") return { mix: inWholePercent(analysed), endMix: analysed };
  const mix = orderedMix.value;
  if (mix.helium > 0 && analysed.helium === 0 && analysedHelium.kind === "blank") {
    assumed.push("helium as ordered");
    return { mix, endMix: withHelium(analysed, mix.helium) };
  }
  return { mix, endMix: analysed };
}

function withHelium({ oxygen }: Mixture, helium: number): Mixture {
  if (oxygen + helium > 1)
    throw new CannotTell("analysedMix", "analysis and ordered helium are more than 100 %");
  return mixture(oxygen, helium);
}

/** What the bank of a fill holds, as the shop has told; names are compared without regard to case and spaces. */
function bankOf({ source }: FillFields, banks: readonly Bank[]): Mixture | undefined {
  if (source.kind !== "value") return undefined;
  const bare = (name: string) => name.toLowerCase().replace(/\s+/g, "");
  const named = bare(source.value);
  return banks.find(({ name }) => bare(name) === named)?.mix;
}

/** Only what goes on top of it says what blank stands for, and only where that is one gas. */
function startMixOf(
  { startMix, startPressure }: FillFields,
  onTop: Mixture,
  method: FillMethod,
  assumed: Assumption[],
): Mixture {
  if (startMix.kind !== "blank") return needed(startMix, "startMix", "start mix");
  if (startPressure.kind === "value" && startPressure.note?.startsWith("empty") === true) return AIR;
  if (method === "partial pressure" || method === "continuous")
    throw new CannotTell("startMix", "no start mix");
  assumed.push("start mix");
  return onTop;
}

/** The pressure at the usual temperature: settled as written, else worked out from the gas temperature, else as read. */
function endBarOf(fields: FillFields, mix: Mixture, temperatureK: number, assumed: Assumption[]): number {
  const { settledPressure, endPressure, gasTemperatureK } = fields;
  if (settledPressure.kind !== "blank")
    return needed(settledPressure, "settledPressure", "settled pressure").bar;
  const read = needed(endPressure, "endPressure", "end pressure");
  // Of a hot / cold pair the reading is the cold one.
  if (read.hotBar !== undefined) return read.bar;
  if (gasTemperatureK.kind !== "blank") {
    const gasK = needed(gasTemperatureK, "gasTemperatureK", "gas temperature");
    return settled(realGas, mix, read.bar, gasK, temperatureK);
  }
  assumed.push("settled");
  return read.bar;
}

interface Volume {
  readonly waterVolumeL: number;
  readonly name: string;
}

function cylinderOf(fill: Fill, register: RegisterIndex): { readonly size: Volume; readonly owner: string } {
  const matches = cylindersOf(fill, register);
  let owner = "";
  const volumes = matches.map(({ serial, records, by }): Volume => {
    const sizes = new Map<number, CylinderSize>();
    let lacking: Reading<CylinderSize> | undefined;
    for (const { fields } of records) {
      if (owner === "" && fields.owner.kind === "value") owner = fields.owner.value;
      if (fields.size.kind === "value") sizes.set(fields.size.value.waterVolumeL, fields.size.value);
      else lacking = lacking?.kind === "unreadable" ? lacking : fields.size;
    }
    const [size, ...others] = sizes.values();
    if (others.length > 0) throw new CannotTell("serial", "two sizes stand on record for the cylinder");
    if (size) return volumeOf(size, matches.length);
    if (lacking !== undefined && lacking.kind !== "blank")
      throw new CannotTell("serial", "size on record is unreadable");
    if (serial === "") needed(fill.fields.serial, "serial", "serial");
    throw new CannotTell(
      "serial",
      by === "nothing" ? "cylinder is not in the register, so no size" : "no size on record",
    );
  });
  const names = volumes.map(({ name }) => name);
  const alike = new Set(names).size === 1 && names.length > 1;
  return {
    owner,
    size: {
      waterVolumeL: volumes.reduce((sum, { waterVolumeL }) => sum + waterVolumeL, 0),
      name: alike ? `${names.length} x ${names[0]}` : names.join(" + "),
    },
  };
}

/** Each serial of a twin set on record as the whole set stands for its share. */
function volumeOf({ waterVolumeL, count, name }: CylinderSize, serials: number): Volume {
  const share = serials > 1 && count === serials ? count : 1;
  const litres = waterVolumeL / share;
  return {
    waterVolumeL: litres,
    name: share === 1 && name !== undefined ? name : `${Number(litres.toFixed(1))} L`,
  };
}

/** Air as the trade analyses it. */
const AIR_WITHIN = 0.0095;

export function kindOf(mix: Mixture): MixKind {
  if (mix.helium > 0) return "trimix";
  return Math.abs(mix.oxygen - AIR.oxygen) <= AIR_WITHIN ? "air" : "nitrox";
}

function inWholePercent(mix: Mixture): Mixture {
  if (kindOf(mix) === "air") return AIR;
  if (mix.oxygen > 0.98) return OXYGEN;
  if (mix.helium > 0.995) return HELIUM;
  return mixture(Math.round(mix.oxygen * 100) / 100, Math.round(mix.helium * 100) / 100);
}
