import { BAR_PER_PSI } from "../../gas/units";
import { AIR, type Mixture } from "../../gas/mixture";
import { nameMix } from "../../gas/nameMix";
import { ATMOSPHERE_BAR } from "../../gas/units";
import type { Fill } from "../../log/log";
import type { FilledCylinder } from "../rule";
import { percentText, pressureText } from "../words";
import { oxygenAfter, outsideBy } from "./massBalance";
import { isPossible, type Workings } from "./workings";

/*
 * Why an analysis does not agree with the readings: each slip that people make is tried on the row, and the likeliest of
 * those that make it agree is named. How likely each is, is common practice, no source.
 */

/** The row that does not agree. */
export interface Disagreement {
  readonly filled: FilledCylinder;
  readonly workings: Workings;
  readonly analysed: Mixture;
  /** As a mole fraction, how near a slip must bring the two. */
  readonly tolerance: number;
}

type Slip = (row: Disagreement) => string | undefined;

/** The likeliest slip that explains the row, in words; undefined where none does. */
export function likeliestCause(row: Disagreement): string | undefined {
  for (const slip of SLIPS) {
    const found = slip(row);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The likeliest first: what leaves least to chance before what can explain many a row. */
const SLIPS: readonly Slip[] = [
  otherRow,
  digitsOfAnalysis,
  otherUnit,
  otherResidue,
  copiedFromOrder,
  readHot,
  digitsOfReading,
];

function agrees({ analysed, tolerance }: Disagreement, workings: Workings): boolean {
  return isPossible(workings) && outsideBy(oxygenAfter(workings), analysed.oxygen) <= tolerance;
}

/** The analysis of the row above or below would fit here, and is another one. */
function otherRow({ filled, workings, analysed, tolerance }: Disagreement): string | undefined {
  const expected = oxygenAfter(workings);
  const fits = (fill: Fill | undefined): boolean => {
    const reading = fill?.fields.analysedMix;
    if (reading?.kind !== "value") return false;
    const { oxygen } = reading.value;
    return outsideBy(expected, oxygen) <= tolerance && Math.abs(oxygen - analysed.oxygen) > tolerance;
  };
  const { above, below } = filled.row;
  const where = fits(above) ? "above" : fits(below) ? "below" : undefined;
  return where && `written into the wrong row (the analysis of the row ${where} fits here)`;
}

/** Two neighbouring digits of the analysis stand the wrong way round: 23.6 for 32.6. */
function digitsOfAnalysis(row: Disagreement): string | undefined {
  const expected = oxygenAfter(row.workings);
  const written = (row.analysed.oxygen * 100).toFixed(1);
  for (const swapped of swaps(written)) {
    if (outsideBy(expected, Number(swapped) / 100) <= row.tolerance)
      return `digits swapped (${Number(swapped)} typed as ${Number(written)})`;
  }
  return undefined;
}

/** One of the pressures was written in the other unit. */
function otherUnit(row: Disagreement): string | undefined {
  for (const factor of [BAR_PER_PSI, 1 / BAR_PER_PSI]) {
    for (const { name, workings } of withReadings(row.workings, (bar) => bar * factor)) {
      if (agrees(row, workings))
        return `psi and bar mixed up (the ${name} read as ${factor < 1 ? "psi" : "bar"})`;
    }
  }
  return undefined;
}

/** Something else was in the cylinder than the row says. */
function otherResidue(row: Disagreement): string | undefined {
  const { filled, workings } = row;
  const { start } = workings;
  const left = filled.past.last?.mix;
  if (left && agrees(row, { ...workings, start: { ...start, mix: left } }))
    return `the residue left out of account (its last fill left ${nameMix(left)})`;
  if (agrees(row, { ...workings, start: { ...start, bar: ATMOSPHERE_BAR } }))
    return "the residue: the row fits a cylinder that was emptied before";
  if (agrees(row, { ...workings, start: { ...start, mix: AIR } }))
    return "the residue: the row fits a start of air";
  return undefined;
}

/** What was ordered was written down, not what was measured. */
function copiedFromOrder({ filled, analysed }: Disagreement): string | undefined {
  const { orderedMix } = filled.fill.fields;
  if (orderedMix.kind !== "value" || Math.abs(orderedMix.value.oxygen - analysed.oxygen) > 1e-6)
    return undefined;
  return `the order copied (${percentText(analysed.oxygen)} to the digit) instead of an analysis`;
}

/** How much warmer than the room a cylinder can be right after a fast fill, kelvin. */
const HOTTEST = 40;
const LEAST_HOT = 6;

/** The end was read warm, so that less gas went in on top than the reading says. */
function readHot(row: Disagreement): string | undefined {
  const { workings } = row;
  if (workings.endIsCold) return undefined;
  const { end } = workings;
  for (let hotter = LEAST_HOT; hotter <= HOTTEST; hotter += 2) {
    const temperatureK = end.temperatureK + hotter;
    if (agrees({ ...row, tolerance: row.tolerance / 2 }, { ...workings, end: { ...end, temperatureK } }))
      return `a hot reading (it fits an end read at about ${Math.round(temperatureK - 273.15)} °C)`;
  }
  return undefined;
}

/** Two neighbouring digits of a pressure stand the wrong way round: 2300 for 3200. */
function digitsOfReading(row: Disagreement): string | undefined {
  const unit = unitOf(row.filled.fill);
  const perUnit = unit === "psi" ? BAR_PER_PSI : 1;
  for (let nth = 0; nth < 3; nth++) {
    const swapped = (bar: number): number | undefined => {
      const written = String(Math.round((bar - ATMOSPHERE_BAR) / perUnit));
      const other = swaps(written)[nth];
      return other === undefined ? undefined : Number(other) * perUnit + ATMOSPHERE_BAR;
    };
    for (const { name, bar, workings } of withReadings(row.workings, swapped)) {
      if (agrees(row, workings)) return `digits swapped (${name}: ${pressureText(bar, unit)} fits)`;
    }
  }
  return undefined;
}

interface Changed {
  readonly name: string;
  readonly bar: number;
  readonly workings: Workings;
}

/** The row with one of its readings changed, each in turn. */
function* withReadings(workings: Workings, change: (bar: number) => number | undefined): Generator<Changed> {
  const { start, pure, end } = workings;
  const startBar = change(start.bar);
  if (startBar !== undefined)
    yield {
      name: "start pressure",
      bar: startBar,
      workings: { ...workings, start: { ...start, bar: startBar } },
    };
  for (const [at, addition] of pure.entries()) {
    const bar = change(addition.bar);
    if (bar === undefined) continue;
    const name = addition.gas.helium > 0 ? "helium added" : "oxygen added";
    yield { name, bar, workings: { ...workings, pure: pure.with(at, { ...addition, bar }) } };
  }
  const endBar = change(end.bar);
  if (endBar !== undefined)
    yield { name: "end pressure", bar: endBar, workings: { ...workings, end: { ...end, bar: endBar } } };
}

/** The number with two neighbouring, different digits swapped, in every way. */
function swaps(written: string): readonly string[] {
  const digits = written.replace(".", "");
  const point = written.includes(".") ? written.indexOf(".") : digits.length;
  return Array.from(digits.slice(1), (digit, at) => {
    if (digit === digits[at]) return "";
    const swapped = digits.slice(0, at) + digit + digits[at]! + digits.slice(at + 2);
    return point < digits.length ? `${swapped.slice(0, point)}.${swapped.slice(point)}` : swapped;
  }).filter((swapped) => swapped !== "");
}

function unitOf({ fields }: Fill): "psi" | "bar" {
  const { endPressure } = fields;
  return endPressure.kind === "value" ? endPressure.value.written.unit : "bar";
}
