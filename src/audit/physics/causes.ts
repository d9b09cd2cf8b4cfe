import { AIR, type Mixture } from "../../gas/mixture";
import { nameMix } from "../../gas/nameMix";
import { ATMOSPHERE_BAR, BAR_PER_PSI } from "../../gas/units";
import type { Fill } from "../../log/log";
import type { FilledCylinder } from "../judge/rule";
import { percentText, pressureText } from "../../words/inSentences";
import { oxygenAfter, outsideBy } from "./massBalance";
import { isPossible, stacked, type Workings } from "./workings";

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

/** Two rows have each other's analysis: that of a row beside it fits here, and what stands here is what it ordered. */
function otherRow({ filled, workings, analysed, tolerance }: Disagreement): string | undefined {
  const expected = oxygenAfter(workings);
  const isSwapped = (other: Fill | undefined): boolean => {
    if (other === undefined) return false;
    const { analysedMix, orderedMix } = other.fields;
    if (analysedMix.kind !== "value" || orderedMix.kind !== "value") return false;
    const ordered = orderedMix.value.oxygen;
    return (
      outsideBy(expected, analysedMix.value.oxygen) <= tolerance &&
      Math.abs(analysed.oxygen - ordered) <= tolerance &&
      Math.abs(analysedMix.value.oxygen - ordered) > tolerance
    );
  };
  const { above, below } = filled.row;
  const where = isSwapped(above) ? "above" : isSwapped(below) ? "below" : undefined;
  return where && `swapped with the row ${where}, whose analysis fits here`;
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

/** One of the pressures was written in the other unit: 35 (bar) among psi. */
function otherUnit(row: Disagreement): string | undefined {
  const unit = unitOf(row.filled.fill);
  const [meant, factor] = unit === "psi" ? ["bar", 1 / BAR_PER_PSI] : ["psi", BAR_PER_PSI];
  for (const { name, workings } of withReadings(row.workings, (bar) => bar * factor)) {
    if (agrees(row, workings)) return `psi and bar mixed up (the ${name} is in ${meant})`;
  }
  return undefined;
}

/** Something else was in the cylinder than the row says. */
function otherResidue(row: Disagreement): string | undefined {
  const { filled, workings } = row;
  const { start, pure } = workings;
  const left = filled.past.last?.mix;
  if (left && agrees(row, { ...workings, start: { ...start, mix: left } }))
    return `the residue left out of account (its last fill left ${nameMix(left)})`;
  if (
    agrees(row, {
      ...workings,
      start: { ...start, bar: ATMOSPHERE_BAR },
      pure: stacked(ATMOSPHERE_BAR, pure),
    })
  )
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
      const other = swaps(String(Math.round(bar / perUnit)))[nth];
      return other === undefined ? undefined : Number(other) * perUnit;
    };
    for (const { name, writtenBar, workings } of withReadings(row.workings, swapped)) {
      if (agrees(row, workings))
        return `digits swapped (${name}: ${pressureText(writtenBar + ATMOSPHERE_BAR, unit)} fits)`;
    }
  }
  return undefined;
}

interface Changed {
  readonly name: string;
  readonly writtenBar: number;
  readonly workings: Workings;
}

/** The row with one of its readings changed, as it is written: above 0 gauge, or as an amount; each in turn. */
function* withReadings(
  workings: Workings,
  change: (writtenBar: number) => number | undefined,
): Generator<Changed> {
  const { start, pure, end } = workings;
  const changedGauge = (bar: number): number | undefined => {
    const changed = change(bar - ATMOSPHERE_BAR);
    return changed === undefined ? undefined : changed + ATMOSPHERE_BAR;
  };
  const startBar = changedGauge(start.bar);
  if (startBar !== undefined) {
    const changed = { ...workings, start: { ...start, bar: startBar }, pure: stacked(startBar, pure) };
    yield { name: "start pressure", writtenBar: startBar - ATMOSPHERE_BAR, workings: changed };
  }
  for (const [at, addition] of pure.entries()) {
    const { rise } = addition;
    const written = change(rise ?? addition.bar - ATMOSPHERE_BAR);
    if (written === undefined) continue;
    const changed =
      rise === undefined ? { ...addition, bar: written + ATMOSPHERE_BAR } : { ...addition, rise: written };
    yield {
      name: addition.gas.helium > 0 ? "helium added" : "oxygen added",
      writtenBar: written,
      workings: { ...workings, pure: stacked(start.bar, pure.with(at, changed)) },
    };
  }
  const endBar = changedGauge(end.bar);
  if (endBar !== undefined) {
    const changed = { ...workings, end: { ...end, bar: endBar } };
    yield { name: "end pressure", writtenBar: endBar - ATMOSPHERE_BAR, workings: changed };
  }
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
