/**
 * What a cell was read as. A doubt stays a doubt: nothing is guessed in silence, and blank is not zero.
 *
 * `note` on a value says what was done to get it ("trimix 10/50 that the spreadsheet had turned into a date").
 */
export type Reading<T> =
  | { readonly kind: "value"; readonly value: T; readonly note?: string }
  | {
      readonly kind: "ambiguous";
      /** The likeliest first. */
      readonly choices: readonly T[];
      readonly why: string;
      readonly doubt?: Doubt;
      /** The word that has several meanings, where one has. */
      readonly word?: string;
    }
  | {
      readonly kind: "unreadable";
      readonly why: string;
      /** What the cell says all the same, where it says that a test is not there. */
      readonly says?: "out of test" | "failed";
    }
  /** A word that is in no table: it means nothing until somebody says what it means. */
  | { readonly kind: "unknown word"; readonly word: string; readonly why: string }
  | Blank;

/** Doubts that the audit has a rule about; every other one is told by its sentence alone. */
export type Doubt =
  /** A month stamp (10/19) that the spreadsheet turned into a day of the year of typing (19 October 2026). */
  | "swallowed stamp"
  /** Two numbers, both 12 or less, and nothing says which is the month. */
  | "stamp order"
  /** The last test, or the next one due. */
  | "stamp means"
  /** Day and month could stand either way round. */
  | "date order"
  /** The number could be psi or bar. */
  | "unit"
  /** The word has several meanings in the trade. */
  | "word";

export interface Blank {
  readonly kind: "blank";
}

export const BLANK: Blank = Object.freeze({ kind: "blank" });

export function value<T>(of: T, note?: string): Reading<T> {
  return note === undefined ? { kind: "value", value: of } : { kind: "value", value: of, note };
}

export function ambiguous<T>(choices: readonly T[], why: string, doubt?: Doubt): Reading<T> {
  return doubt === undefined
    ? { kind: "ambiguous", choices, why }
    : { kind: "ambiguous", choices, why, doubt };
}

export function unreadable<T>(why: string): Reading<T> {
  return { kind: "unreadable", why };
}

/** A word that no table has, as it stands. */
export function unknownWord<T>(word: string): Reading<T> {
  const shown = word.trim().slice(0, LONGEST_WORD);
  return { kind: "unknown word", word: shown, why: `“${shown}” is not known. Say what it means.` };
}

/** No word that is asked about is longer. */
const LONGEST_WORD = 60;
