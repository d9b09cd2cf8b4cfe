/**
 * What a cell was read as. A doubt stays a doubt: nothing is guessed in silence, and blank is not zero.
 *
 * `note` on a value says what was done to get it ("trimix 10/50 that the spreadsheet had turned into a date").
 */
export type Reading<T> =
  | { readonly kind: "value"; readonly value: T; readonly note?: string }
  | { readonly kind: "ambiguous"; readonly choices: readonly T[]; readonly why: string }
  | { readonly kind: "unreadable"; readonly why: string }
  | Blank;

export interface Blank {
  readonly kind: "blank";
}

export const BLANK: Blank = Object.freeze({ kind: "blank" });

export function value<T>(of: T, note?: string): Reading<T> {
  return note === undefined ? { kind: "value", value: of } : { kind: "value", value: of, note };
}

export function ambiguous<T>(choices: readonly T[], why: string): Reading<T> {
  return { kind: "ambiguous", choices, why };
}

export function unreadable<T>(why: string): Reading<T> {
  return { kind: "unreadable", why };
}
