import { MAX_GAUGE } from "../../gas/limits";
import { absoluteBar } from "../../gas/units";
import { showsDate } from "../../sheet/numberFormat";
import type { PressureReading } from "../log";
import { ambiguous, unreadable, value, type Reading } from "../reading";
import { ofNoUse, plain, sayingNothing, shown, type Cell } from "./cell";
import { numbersIn } from "./numbers";

export type PressureUnit = "psi" | "bar";

/** What the column says of its pressures. */
export interface PressureColumn {
  /** `undefined` where neither heading nor cells settle it. */
  readonly unit: PressureUnit | undefined;
  /** The heading says the unit, or the shop does: then a number is in it, however odd. */
  readonly stated: boolean;
  /** What two numbers in one cell mean here. */
  readonly pairs: "hot / cold" | "service / test" | undefined;
  /** Cylinders are full here, or should be: 207 among thousands of psi may be bar. */
  readonly full: boolean;
}

const UNIT_WORDS: Readonly<Record<string, PressureUnit>> = {
  psi: "psi",
  psig: "psi",
  lbs: "psi",
  lb: "psi",
  "#": "psi",
  bar: "bar",
  bars: "bar",
  barg: "bar",
  b: "bar",
};
const EMPTY = /^(?:empty|mt|leer|vide|vaci[oa]|drained|vented)$/;
const WITHOUT_NUMBER = /^(?:full|voll|plein|lleno|ok|topped|low)$/;
const ABOUT = /^(?:~|≈|about|approx\.?|ca\.?|circa|env\.?)\s*/;
const ONE =
  /^([\d.,' ]*\d[.,]?)\s*(psig?|lbs?|#|bars?|barg|b)?\s*(\+)?\s*\(?(hot|warm|cold|cool|settled|heiss|kalt|chaud|froid)?\)?$/;
const UNIT_FIRST = /^(psi|bar)\s*([\d.,' ]+)$/;
/** `200 bar ok`: number and unit are clear, and words add nothing to them. */
const WORDS_BEHIND = /^([\d.,' ]*\d ?(?:psi|bar)) ([^\d/>]+)$/;
const WARM = /^(?:hot|warm|heiss|chaud)$/;

/** One reading within a cell, as written. */
interface Part {
  readonly numbers: readonly number[];
  readonly unit: PressureUnit | undefined;
  readonly plus: boolean;
  readonly warm: boolean;
}

/** Reads a gauge pressure: plain, with its unit, a plus, or two numbers as the column means them. */
export function readPressure(cell: Cell, column: PressureColumn): Reading<PressureReading> {
  if (typeof cell.value === "number") {
    if (showsDate(cell.format))
      return unreadable("A date stands where a pressure belongs. Write the pressure.");
    return single({ numbers: [cell.value], unit: undefined, plus: false, warm: false }, column);
  }
  if (typeof cell.value !== "string") return ofNoUse(cell, "a pressure such as 3000 psi or 200 bar");
  const text = plain(cell.value);
  const nothing = sayingNothing(text);
  if (nothing) return nothing;
  if (EMPTY.test(text)) return value(pressure(0, column.unit ?? "bar"), "empty: 0 on the gauge");
  if (WITHOUT_NUMBER.test(text)) return unreadable(`“${shown(cell)}” gives no number. Write the reading.`);

  if (text.endsWith("?"))
    return questioned(readPressure({ ...cell, value: text.replace(/[ ?]+$/, "") }, column));
  const [, clear, words] = WORDS_BEHIND.exec(text) ?? [];
  if (clear !== undefined && !partOf(text))
    return noted(readPressure({ ...cell, value: clear }, column), `“${words}” beside it is not read`);

  const about = ABOUT.test(text);
  const parts = text
    .replace(ABOUT, "")
    .split(/\s*(?:\/|->|→|=>|\bto\b|\bbis\b|(?<=\d)\s*-\s*(?=\d))\s*/)
    .map(partOf);
  if (parts.length === 1 && parts[0])
    return cell.lettersFromFormat === true && contradicts(parts[0], column)
      ? eitherUnit(parts[0].numbers[0]!, shown(cell), column)
      : noted(single(parts[0], column), about ? "written as about" : undefined);
  if (parts.length === 2 && parts[0] && parts[1]) {
    return text.includes("/") || /->|→|=>/.test(text)
      ? pair(parts[0], parts[1], column, shown(cell))
      : range(parts[0], parts[1], column, shown(cell));
  }
  return unreadable(`“${shown(cell)}” is not a pressure. Write it such as 3000 psi or 200 bar.`);
}

/** The column's format writes one unit, its heading another: one of the two is wrong for every cell. */
function contradicts({ unit }: Part, column: PressureColumn): boolean {
  return unit !== undefined && column.stated && column.unit !== undefined && column.unit !== unit;
}

function eitherUnit(number: number, text: string, { unit }: PressureColumn): Reading<PressureReading> {
  const readings = (["psi", "bar"] as const)
    .filter((each) => withinReach(number, each))
    .map((each) => pressure(number, each));
  return readings.length === 0
    ? unreadable(outOfReach(number, unit))
    : ambiguous(
        readings,
        `The number format shows “${text}”, and the heading says ${unit}. Say in which unit the column is.`,
        "unit",
      );
}

/** Whoever wrote it was not sure. */
function questioned(reading: Reading<PressureReading>): Reading<PressureReading> {
  return reading.kind === "value"
    ? ambiguous([reading.value], "A question mark stands behind it. Look at the gauge again.")
    : reading;
}

function partOf(text: string): Part | undefined {
  const [, first, numbers] = UNIT_FIRST.exec(text) ?? [];
  const match = ONE.exec(first ? `${numbers} ${first}` : text);
  if (!match) return undefined;
  const found = numbersIn(match[1]!.trim());
  if (found.length === 0) return undefined;
  return {
    numbers: found,
    unit: match[2] ? UNIT_WORDS[match[2]] : undefined,
    plus: match[3] !== undefined,
    warm: WARM.test(match[4] ?? ""),
  };
}

/** One number; in psi or bar as it says itself, else as the column does, else as its size allows. */
function single(
  part: Part,
  column: PressureColumn,
  unit = part.unit ?? column.unit,
): Reading<PressureReading> {
  const doubtful = part.unit === undefined && unit === "psi" && !column.stated && column.full;
  const readings = part.numbers.flatMap((number) =>
    unitsFor(number, unit, doubtful).map((each) => pressure(number, each, part.plus)),
  );
  const [first, second] = readings;
  const [number, other] = part.numbers;
  if (first === undefined) {
    return unit === "bar" && withinReach(number!, "psi")
      ? ambiguous(
          [pressure(number!, "psi", part.plus)],
          `${number} bar is more than any cylinder takes. Is it in psi?`,
          "unit",
        )
      : unreadable(outOfReach(number!, unit));
  }
  if (second !== undefined)
    return other === undefined
      ? ambiguous(readings, `${number} psi or ${number} bar? Nothing here says which.`, "unit")
      : ambiguous(readings, `${number} or ${other}? A dot may group thousands or start decimals.`);
  const notes = [
    unit === undefined ? `taken as ${first.written.unit}, too high for bar` : "",
    part.warm ? "read while warm" : "",
  ].filter((note) => note !== "");
  return notes.length > 0 ? value(first, notes.join("; ")) : value(first);
}

/** A full cylinder at 207 psi would be nearly empty: there the unit stays open, unless the heading states it. */
const FULL_IN_BAR = 350;

function unitsFor(
  number: number,
  unit: PressureUnit | undefined,
  doubtful: boolean,
): readonly PressureUnit[] {
  const units: readonly PressureUnit[] =
    unit === undefined
      ? ["psi", "bar"]
      : doubtful && number > 0 && number <= FULL_IN_BAR
        ? ["bar", "psi"]
        : [unit];
  return units.filter((each) => withinReach(number, each));
}

/** `3300/3000`: hot and cold; `200/300`: service and test. What does not fit the column's meaning stays a doubt. */
function pair(first: Part, second: Part, column: PressureColumn, text: string): Reading<PressureReading> {
  const unit = first.unit ?? second.unit ?? column.unit;
  const one = single(first, column, unit);
  const two = single(second, column, second.unit ?? unit);
  if (one.kind !== "value" || two.kind !== "value") {
    return unreadable(`“${text}” holds two numbers that cannot both be read. Write one pressure.`);
  }
  if (first.unit && second.unit && first.unit !== second.unit) {
    return Math.abs(one.value.bar / two.value.bar - 1) < 0.03
      ? value(one.value, "written in both units")
      : ambiguous([one.value, two.value], `“${text}”: the two units do not give the same pressure.`);
  }
  const [higher, lower] = one.value.bar >= two.value.bar ? [one.value, two.value] : [two.value, one.value];
  if (column.pairs === "service / test" && one.value === lower) {
    return value({ ...lower, testBar: higher.bar }, `service and test pressure: “${text}”`);
  }
  if (
    column.pairs === "hot / cold" &&
    (first.warm || (one.value === higher && !second.warm)) &&
    higher.bar / lower.bar < 1.35
  ) {
    return value({ ...two.value, hotBar: one.value.bar }, `hot and cold: “${text}”`);
  }
  return ambiguous([one.value, two.value], `“${text}” holds two pressures, and nothing says which counts.`);
}

function range(first: Part, second: Part, column: PressureColumn, text: string): Reading<PressureReading> {
  const unit = first.unit ?? second.unit ?? column.unit;
  const ends = [single(first, column, unit), single(second, column, unit)].flatMap((end) =>
    end.kind === "value" ? [end.value] : [],
  );
  return ends.length === 2
    ? ambiguous(ends, `“${text}” is a range, not a reading.`)
    : unreadable(`“${text}” is not a pressure. Write it such as 3000 psi or 200 bar.`);
}

function withinReach(number: number, unit: PressureUnit): boolean {
  return number >= 0 && number <= (unit === "psi" ? MAX_GAUGE.us : MAX_GAUGE.metric);
}

function outOfReach(number: number, unit: PressureUnit | undefined): string {
  if (number < 0) return `A gauge cannot read ${number}. Write 0 or more.`;
  return `${number}${unit ? ` ${unit}` : ""} is more than any cylinder takes (${MAX_GAUGE.metric} bar, ${MAX_GAUGE.us} psi). Check the number and the unit.`;
}

function pressure(number: number, unit: PressureUnit, plus = false): PressureReading {
  const reading = {
    bar: absoluteBar(number, unit === "psi" ? "us" : "metric"),
    written: { value: number, unit },
  };
  return plus ? { ...reading, plus } : reading;
}

function noted<T>(reading: Reading<T>, note: string | undefined): Reading<T> {
  if (reading.kind !== "value" || note === undefined) return reading;
  return value(reading.value, reading.note === undefined ? note : `${reading.note}; ${note}`);
}
