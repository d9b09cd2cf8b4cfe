import { Temporal } from "temporal-polyfill";
import { dayNumber } from "../cylinders/calendar";
import { SEVERITIES, type Severity } from "../audit/judge/finding";
import type { Reading } from "../log/reading";
import type { StyledCell } from "../sheet/draft/draft";
import { FORMATS, LOOKS } from "../sheet/draft/looks";
import { serialOfEpochDay } from "../sheet/serialDate";
import { cellName, type CellAddress } from "../sheet/sheet";

/* How reports write what they have to say into cells. */

/** A day, by its day number. */
export function dayCell(day: number): StyledCell {
  return { value: serialOfEpochDay(day, 1900), format: FORMATS.date, style: LEFT };
}

const LEFT = { horizontal: "left" } as const;

/** A day by its ISO date; blank for none. */
export function isoDayCell(date: string): StyledCell {
  return date === "" ? { value: null } : dayCell(dayNumber(Temporal.PlainDate.from(date)));
}

/** `Fills!B7`, as a way there; in a file beside the log, into the log's file. */
export function linkCell(cell: CellAddress, file: string | undefined): StyledCell {
  return {
    value: `${cell.sheet}!${cellName(cell)}`,
    link: { cell, ...(file !== undefined && { file }) },
  };
}

/** The severity as a word; its colour only repeats it. */
export function severityCell(severity: Severity): StyledCell {
  return { value: severityWord(severity), style: LOOKS[severity] };
}

export function severityWord(severity: Severity): string {
  return WORDS[SEVERITIES.indexOf(severity)]!;
}

const WORDS = ["Stop", "Breach", "Warn", "Note"];

/** Who says so, in words. */
export const BASIS_WORDS = { law: "law", practice: "practice of the trade", house: "house policy" } as const;

/** A reading as text: what cannot be read is said, what is blank stays blank. */
export function readingText<T>(reading: Reading<T>, text: (value: T) => string): string {
  switch (reading.kind) {
    case "value":
      return text(reading.value);
    case "blank":
      return "";
    case "ambiguous":
      return "in doubt";
    case "unreadable":
      return "not readable";
    case "unknown word":
      return `“${reading.word}”, not known`;
  }
}

/** Of a mole fraction, in per cent. */
export function percentCell(fraction: number): StyledCell {
  return { value: Number((fraction * 100).toFixed(2)), format: FORMATS.oneDecimal };
}
