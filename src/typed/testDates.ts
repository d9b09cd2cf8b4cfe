import { Temporal } from "temporal-polyfill";
import { readTestStamp, type StampOrder } from "../cylinders/readTestStamp";
import type { TestStamp } from "../cylinders/testStamp";
import { refuse, unknown } from "../gas/refusal";
import { readDate } from "../log/cells/date";
import { readStamp } from "../log/cells/stamp";
import type { DateOrder } from "../log/context";
import { BLANK, type Reading } from "../log/reading";
import { epochDayOf, serialOfEpochDay } from "../sheet/serialDate";
import type { FilledCell } from "./cells";
import { dateSystem } from "./dateSystem";

/*
 * Days and test stamps in the cells of a call. A function sees a cell's value and not its format, so a number is the
 * serial number of a date.
 */

/** No stamp and no fill is later than this. */
const LAST_MONTH = new Temporal.PlainYearMonth(2099, 12);

/** A cell's value as the log's readers take it, where it is no date. */
export function logCell(value: FilledCell) {
  return { value, format: undefined, dateSystem: 1900 } as const;
}

/** A cell that may hold a date: a number is one of the workbook's. */
function dateCell(value: FilledCell) {
  return { ...logCell(value), ...(typeof value === "number" && { dateSystem: dateSystem() }) };
}

/** A day, as the log would read it where dates are written in this order. */
export function dayIn(cell: FilledCell | undefined, order?: DateOrder): Reading<Temporal.PlainDate> {
  if (cell === undefined) return BLANK;
  return readDate(dateCell(cell), { order, swapped: false, latestYear: LAST_MONTH.year });
}

/** How stamps are written, and the latest month one can be of. */
export interface StampHabits {
  readonly stampMeans?: TestStamp["means"] | undefined;
  readonly stampOrder?: StampOrder | undefined;
  readonly dateOrder?: DateOrder | undefined;
  readonly latest?: Temporal.PlainYearMonth | undefined;
}

/** A stamp or test date, as the log would read it. */
export function stampReading(cell: FilledCell | undefined, habits: StampHabits): Reading<TestStamp> {
  if (cell === undefined) return BLANK;
  const { stampMeans: means = "test", stampOrder, dateOrder, latest = LAST_MONTH } = habits;
  return readStamp(dateCell(cell), { means, stampOrder, dateOrder, holdsMonths: false, latest });
}

/**
 * The one test that a cell stands for.
 * @throws Refusal for what is no test date, or can be two.
 */
export function stampIn(cell: FilledCell, stampOrder: StampOrder | undefined): TestStamp {
  return typeof cell === "string"
    ? readTestStamp(cell, stampOrder)
    : theValue(stampReading(cell, { stampOrder }));
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
    case "unknown word":
      return refuse(reading.why);
    case "blank":
      return refuse("blank. Write a date.");
  }
}

/**
 * A day as the spreadsheet stores it.
 * @throws Refusal while it is not known from when the workbook counts.
 */
export function serialOf({ year, month, day }: Temporal.PlainDate): number {
  return serialOfEpochDay(epochDayOf(year, month, day)!, dateSystem());
}
