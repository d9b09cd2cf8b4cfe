import type { Receipt } from "../receive/receipt";
import {
  bestRowOrder,
  fillsLeft,
  type BankBottle,
  type RowCylinder,
  type RowFilled,
  type RowOrder,
} from "../../blending/cascade";
import {
  streamRow,
  type StreamCylinder,
  type StreamRow,
  type StreamRowOrder,
} from "../../blending/streamRow";
import { readCylinderSize } from "../../cylinders/readCylinderSize";
import { numberIn } from "../../typed/cells";
import {
  endPressure,
  mix,
  oxygenSupply,
  pressure,
  settledTemperature,
  startPressure,
} from "../../typed/readers";
import { startMixOf } from "../../typed/startMix";
import { figure } from "../../words/figures";
import { realGas } from "../../gas/equationOfState";
import { AIR, OXYGEN, type Mixture } from "../../gas/mixture";
import { readMix } from "../../gas/readMix";
import { Refusal, refuse } from "../../gas/refusal";
import { DEFAULT_TEMPERATURE_K } from "../../gas/units";
import type { ShopLimits } from "./model";
import { continuousMostIn, FormReader, MOST_CONTINUOUS_PERCENT, type Problems } from "./reading";
import { judgedDemand } from "./ways";
import { serialKey } from "../../log/cells/serial";
import { writtenIn, type FieldName, type FillForm } from "../form";
import { linesOf, partsOf } from "./rowLines";

/** A row of cylinders as worked out: from a bank, or by continuous blending. */
export interface RowModel {
  readonly problems: Problems;
  /** Lines of cylinders that an earlier line names: they count once; sentences. */
  readonly repeated: readonly string[];
  /** Cylinders whose size in the list is not that of the register; sentences. */
  readonly otherSize: readonly string[];
  /** Not to be filled, and why. */
  readonly leftOut: readonly Barred[];
  /** Not looked up, or not known to be in order. */
  readonly notKnown: readonly string[];
  readonly banked: BankedRow | undefined;
  readonly streamed: StreamedRow | undefined;
}

/** A cylinder that something stands against; sentences. */
export interface Barred {
  readonly name: string;
  readonly why: readonly string[];
}

export interface BankedRow {
  readonly order: RowOrder;
  readonly filled: RowFilled;
  /** How many more cylinders like the last of the row the bank fills afterwards. */
  readonly more: number;
}

export interface StreamedRow {
  readonly order: StreamRowOrder;
  readonly row: StreamRow;
  /** Whether the common stream was asked for, rather than found. */
  readonly isAsked: boolean;
}

/**
 * Reads a row as it is typed: a line for each cylinder (serial, size, pressure, mix) and for each bottle of the bank
 * (name, size, pressure), the parts apart by commas, semicolons or tabs.
 */
export function rowModel(
  form: FillForm,
  { cleanAbovePercent, tolerancePoints }: ShopLimits,
  receipts: readonly Receipt[] = [],
): RowModel {
  const reader = new FormReader(form);
  const isContinuous = reader.text("rowWay") === "continuous";
  const targetBar = reader.read("rowTarget", endPressure());
  const temperatureK = reader.read("temperature", settledTemperature()) ?? DEFAULT_TEMPERATURE_K[form.units];
  const listed = linesIn(reader, "row", (parts) => cylinderOf(parts, reader));
  const { written, repeated } = eachOnce(listed);
  const otherSize = (written ?? []).flatMap((line) => otherSizeOf(line, receipts) ?? []);
  const gas = isContinuous ? reader.read("rowMix", mix()) : (reader.read("rowGas", mix()) ?? AIR);
  const nothing = { repeated, otherSize, leftOut: [], notKnown: [], banked: undefined, streamed: undefined };
  if (targetBar === undefined || !written || !gas) return { ...nothing, problems: reader.problems };

  const judged = (cylinder: RowCylinder, endMix: Mixture, flowing: readonly Mixture[]) => ({
    name: cylinder.name,
    cylinder,
    ...judgedDemand(
      { startPressureBar: cylinder.pressureBar, endPressureBar: targetBar, endMix, flowing },
      {
        receipt: receipts.find(({ asked }) => asked === cylinder.name),
        units: form.units,
        cleanAbovePercent,
      },
    ),
  });
  const cleanAbove = cleanAbovePercent / 100;
  const guarded = (cylinder: RowCylinder): StreamCylinder => {
    const receipt = receipts.find(({ asked }) => asked === cylinder.name);
    const isClean = receipt?.pureOxygen.may === "yes";
    return { ...cylinder, mostStream: isClean ? undefined : cleanAbove, mostMix: receipt?.maxOxygen };
  };
  // By continuous blending the stream is still to be found: it is judged once it is.
  const first = written.map((cylinder) => judged(cylinder, gas, isContinuous ? [] : [gas]));
  const cylinders = first.flatMap(({ may, cylinder }) => (may === "no" ? [] : [cylinder]));
  const banked = isContinuous ? undefined : bankedRow(reader, { temperatureK, gas, targetBar, cylinders });
  const streamOrder = { temperatureK, wanted: gas, targetBar, tolerance: tolerancePoints / 100 };
  const judgedStreams = (row: StreamedRow) =>
    row.row.fills.map(({ cylinder, stream }) =>
      judged(
        cylinder,
        gas,
        [stream, row.row.common].flatMap((each) => each ?? []),
      ),
    );
  const tried = isContinuous
    ? streamedRow(reader, { ...streamOrder, cylinders: cylinders.map(guarded) })
    : undefined;
  const second = tried ? judgedStreams(tried) : [];
  const left = second.flatMap(({ may, cylinder }) => (may === "no" ? [] : [cylinder]));
  const streamed =
    tried && left.length < cylinders.length
      ? streamedRow(reader, { ...streamOrder, cylinders: left.map(guarded) })
      : tried;
  const last = streamed ? judgedStreams(streamed) : first;
  return {
    problems: reader.problems,
    repeated,
    otherSize,
    leftOut: [...first, ...second].filter(({ may }) => may === "no"),
    notKnown: last.filter(({ may }) => may === "not known").map(({ name }) => name),
    banked,
    streamed,
  };
}

/** A line of the list, with its size as it was written. */
interface RowLine extends RowCylinder {
  readonly size: string;
}

/** Names of one size are rounded to litres in more than one way; no two sizes are so close. */
const SAME_SIZE = 0.02;

function otherSizeOf(
  { name, size, waterVolumeL }: RowLine,
  receipts: readonly Receipt[],
): string | undefined {
  const known = receipts.find(({ asked }) => asked === name)?.size;
  if (!known || Math.abs(waterVolumeL / known.waterVolumeL - 1) <= SAME_SIZE) return undefined;
  const registered = known.name ?? `${figure(known.waterVolumeL, 1)} L`;
  return `${name}: the list has ${size}, the register ${registered}. It is worked out with ${size}: look at the shoulder.`;
}

/** A cylinder written twice is filled once: the first line counts. */
function eachOnce(listed: readonly RowLine[] | undefined) {
  const lines = new Map<string, number>();
  const repeated: string[] = [];
  const written = listed?.filter(({ name }, index) => {
    const first = lines.get(serialKey(name));
    if (first === undefined) lines.set(serialKey(name), index + 1);
    else repeated.push(`Line ${index + 1}: ${name} is in line ${first} already, and counts once.`);
    return first === undefined;
  });
  return { written, repeated };
}

function bankedRow(reader: FormReader, row: Omit<RowOrder, "equation" | "bank">): BankedRow | undefined {
  const bank = linesIn(reader, "rowBank", (parts) => bottleOf(parts, reader));
  const last = row.cylinders.at(-1);
  if (!last || !bank || bank.length === 0) return undefined;
  const best = reader.noting("row", () => bestRowOrder({ ...row, equation: realGas, bank }));
  return best && { ...best, more: fillsLeft({ ...best.order, bank: best.filled.bank }, last) };
}

function streamedRow(
  reader: FormReader,
  row: Omit<StreamRowOrder, "equation" | "maxOxygen" | "common" | "oxygenSupply">,
): StreamedRow | undefined {
  const common = reader.read("rowStream", mix());
  const supply = reader.read("oxygenSupply", oxygenSupply()) ?? OXYGEN;
  const maxOxygen = continuousMostIn(reader) ?? MOST_CONTINUOUS_PERCENT / 100;
  const { rowStream, oxygenSupply: noSupply, continuousMost } = reader.problems;
  if (row.cylinders.length === 0 || (rowStream ?? noSupply ?? continuousMost) !== undefined) return undefined;
  const order = { ...row, equation: realGas, maxOxygen, common, oxygenSupply: supply };
  const made = reader.noting(common ? "rowStream" : "rowMix", () => streamRow(order));
  return made && { order, row: made, isAsked: common !== undefined };
}

const AND = new Intl.ListFormat("en-GB");

function cylinderOf(parts: readonly string[], reader: FormReader): RowLine {
  const [name = "", size = "", reading = "", holds = ""] = parts;
  const missing = Object.entries({ size, pressure: reading, mix: holds })
    .filter(([what, part]) => part === "" && !(what === "mix" && /^empty$/i.test(reading)))
    .map(([what]) => what);
  if (missing.length > 0)
    refuse(
      `“${name}”: still without ${AND.format(missing)}. Write serial, size, pressure and mix, apart by commas.`,
    );
  const { units } = writtenIn(reader.form, "row");
  const start = startPressure().read(numberIn(reading) ?? reading, units);
  return {
    name,
    size,
    waterVolumeL: readCylinderSize(size).waterVolumeL,
    pressureBar: start.bar,
    mix: startMixOf(start, holds === "" ? undefined : readMix(numberIn(holds) ?? holds)),
  };
}

function bottleOf(parts: readonly string[], reader: FormReader): BankBottle {
  const [name = "", size = "", reading = ""] = parts;
  if (size === "" || reading === "") refuse(`“${name}”: write name, size and pressure, apart by commas.`);
  const { units } = writtenIn(reader.form, "rowBank");
  return {
    name,
    // A bank bottle is larger than any cylinder for diving: its litres are believed.
    waterVolumeL: numberIn(size) ?? readCylinderSize(size).waterVolumeL,
    pressureBar: pressure("").read(numberIn(reading) ?? reading, units),
  };
}

/** Every line read, or undefined where one could not be, with the line named. */
function linesIn<T>(
  reader: FormReader,
  name: FieldName,
  read: (parts: readonly string[]) => T,
): readonly T[] | undefined {
  const lines = linesOf(reader.text(name));
  return reader.noting(name, () =>
    lines.map((line, index) => {
      try {
        return read(partsOf(line));
      } catch (thrown) {
        if (!(thrown instanceof Refusal)) throw thrown;
        return refuse(`Line ${index + 1}: ${thrown.message}`);
      }
    }),
  );
}
