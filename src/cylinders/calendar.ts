import { Temporal } from "temporal-polyfill";

/*
 * Days and months as plain whole numbers, for comparing many of them: a day number counts from 1 January 1970, a month
 * number from January of year 0.
 */

export function monthNumber(month: { readonly year: number; readonly month: number }): number {
  return month.year * 12 + month.month - 1;
}

export function dayNumber(date: {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}): number {
  return firstDayOf(monthNumber(date)) + date.day - 1;
}

/** Day number of the first day of a month, by the rule of leap years (400 years have 146,097 days). */
export function firstDayOf(month: number): number {
  // Years are taken to begin in March, so that the leap day is the last of its year.
  const fromMarch = month - 2;
  const year = Math.floor(fromMarch / 12);
  const monthOfYear = fromMarch - year * 12;
  const leapDays = Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);
  const DAYS_TO_1970 = 719_468;
  return year * 365 + leapDays + Math.floor((153 * monthOfYear + 2) / 5) - DAYS_TO_1970;
}

export function lastDayOf(month: number): number {
  return firstDayOf(month + 1) - 1;
}

export function dateOf(dayNumber: number): Temporal.PlainDate {
  return EPOCH.add({ days: dayNumber });
}

const EPOCH = Temporal.PlainDate.from("1970-01-01");
