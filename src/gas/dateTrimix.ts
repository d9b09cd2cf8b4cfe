import { Temporal } from "temporal-polyfill";

/** A trimix as it was typed, in whole per cent. */
export interface TypedTrimix {
  readonly oxygen: number;
  readonly helium: number;
}

/** Day 0 of a spreadsheet's calendar, for dates after February 1900. */
const DAY_ZERO = Temporal.PlainDate.from("1899-12-30");

/**
 * The trimix that may have been typed where a spreadsheet now holds a date (its serial number).
 *
 * "10/50" becomes 1 October 1950: month and year. "10/20" becomes 20 October of the year it was typed in, and so does
 * "20/10" where days come first: both are offered. Empty when no trimix can be behind it.
 */
export function trimixBehindDate(serial: number): readonly TypedTrimix[] {
  if (!Number.isInteger(serial) || serial < 61 || serial > 100_000) return [];
  const { year, month, day } = DAY_ZERO.add({ days: serial });
  const typed =
    day === 1
      ? [{ oxygen: month, helium: year % 100 }]
      : [
          { oxygen: month, helium: day },
          { oxygen: day, helium: month },
        ];
  return typed.filter(
    ({ oxygen, helium }, index) =>
      oxygen >= 5 && helium >= 5 && oxygen + helium <= 100 && (index === 0 || oxygen !== helium),
  );
}
