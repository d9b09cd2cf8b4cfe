import { numberWithLetters, showsDate } from "../../sheet/numberFormat";
import type { PressureUnit } from "../cells/pressure";
import { forEachCell, type ColumnRange } from "../tables/scan";

/** What the numbers of a column say of their unit. */
export interface NumberEvidence {
  readonly numbers: number;
  /** Above what any cylinder takes in bar, so psi. */
  readonly tooHighForBar: number;
  /** Within 100 and 350: a full cylinder in bar, a nearly empty one in psi. */
  readonly fullInBar: number;
  readonly highest: number;
  readonly lowest: number;
  /** Texts that say their unit themselves. */
  readonly saying: Readonly<Record<PressureUnit, number>>;
}

const MOST_BAR = 450;

export function numberEvidence(range: ColumnRange): NumberEvidence {
  const found = { numbers: 0, tooHighForBar: 0, fullInBar: 0, highest: -Infinity, lowest: Infinity };
  const saying = { psi: 0, bar: 0 };
  forEachCell(range, (value, format) => {
    const seen = typeof value === "number" ? (numberWithLetters(value, format) ?? value) : value;
    const number =
      typeof seen === "number" ? seen : typeof seen === "string" ? numberOf(seen, saying) : undefined;
    if (number === undefined || showsDate(format)) return;
    found.numbers++;
    if (number > MOST_BAR) found.tooHighForBar++;
    if (number >= 100 && number <= 350) found.fullInBar++;
    if (number > found.highest) found.highest = number;
    if (number < found.lowest) found.lowest = number;
  });
  return { ...found, saying };
}

function numberOf(text: string, saying: Record<PressureUnit, number>): number | undefined {
  if (/psi/i.test(text)) saying.psi++;
  else if (/bar/i.test(text)) saying.bar++;
  else if (/^\s*\d+(?:[.,]\d+)?\s*$/.test(text)) return Number(text.replace(",", "."));
  return undefined;
}

/** Psi, where most numbers are too high for bar. Bar is never certain by numbers alone. */
export function unitByNumbers(evidence: NumberEvidence): PressureUnit | undefined {
  return evidence.numbers > 0 && evidence.tooHighForBar > evidence.numbers / 2 ? "psi" : undefined;
}

/** Whether a column of full cylinders cannot well be in psi, though the shop works in psi. */
export function contradictsPsi(evidence: NumberEvidence): boolean {
  return evidence.numbers > 0 && evidence.tooHighForBar === 0 && evidence.fullInBar > evidence.numbers / 2;
}
