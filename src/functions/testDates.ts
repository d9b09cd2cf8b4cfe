import { Temporal } from "temporal-polyfill";
import type { CountryRules } from "../cylinders/countryRules";
import { readTestStamp, type StampOrder } from "../cylinders/readTestStamp";
import type { TestStamp } from "../cylinders/testStamp";
import { refuse, unknown } from "../gas/refusal";
import { readDate } from "../log/cells/date";
import { readStamp } from "../log/cells/stamp";
import { BLANK, type Reading } from "../log/reading";
import { epochDayOf, serialOfEpochDay } from "../sheet/serialDate";
import type { FilledCell } from "./cells";

/*
 * Days and test stamps in the cells of a call. A function sees a cell's value and not its format, so a number is the
 * serial number of a date.
 */

/** No stamp and no fill is later than this. */
const LAST_MONTH = new Temporal.PlainYearMonth(2099, 12);
const NO_COLUMN = { order: undefined, swapped: false, latestYear: LAST_MONTH.year };

/** A cell's value as the log's readers take it. */
export function logCell(value: FilledCell) {
  return { value, format: undefined, dateSystem: 1900 } as const;
}

export function dayIn(cell: FilledCell | undefined): Reading<Temporal.PlainDate> {
  return cell === undefined ? BLANK : readDate(logCell(cell), NO_COLUMN);
}

/** A stamp or test date as the log would read it, by the stamps of the country. */
export function stampReading(
  cell: FilledCell | undefined,
  rules: CountryRules,
  latest: Temporal.PlainYearMonth = LAST_MONTH,
): Reading<TestStamp> {
  if (cell === undefined) return BLANK;
  const { stampMeans: means, stampOrder } = rules;
  return readStamp(logCell(cell), { means, stampOrder, dateOrder: undefined, holdsMonths: false, latest });
}

/**
 * The one test that a cell stands for.
 * @throws Refusal for what is no test date, or can be two.
 */
export function stampIn(cell: FilledCell, order: StampOrder | undefined): TestStamp {
  if (typeof cell === "string") return readTestStamp(cell, order);
  return theValue(
    readStamp(logCell(cell), {
      means: "test",
      stampOrder: order,
      dateOrder: undefined,
      holdsMonths: false,
      latest: LAST_MONTH,
    }),
  );
}

/**
 * The value of a reading.
 * @throws Refusal for every other reading, with its reason.
 */
export function theValue<T>(reading: Reading<T>): T {
  switch (reading.kind) {
    case "value":
      return reading.value;
    case "ambiguous":
      return unknown(reading.why);
    case "unreadable":
      return refuse(reading.why);
    case "blank":
      return refuse("blank. Write a date.");
  }
}

/** A day as the spreadsheet stores it. */
export function serialOf({ year, month, day }: Temporal.PlainDate): number {
  return serialOfEpochDay(epochDayOf(year, month, day)!, 1900);
}
