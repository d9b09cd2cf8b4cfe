import { Temporal } from "temporal-polyfill";

/** 1 January 1970 as a serial of the 1900 system, from serial 61 (1 March 1900) on. */
const EPOCH_SERIAL_1900 = 25569;
/** How far the 1904 system lags behind the 1900 system. */
const DAYS_BETWEEN_SYSTEMS = 1462;
/** 31 December 9999: the last day a spreadsheet knows. */
const LAST_SERIAL_1900 = 2958465;

/** Days since 1 January 1970, so that days compare and cache as numbers. */
export type EpochDay = number;

/**
 * The day a serial number stands for, or undefined where it stands for none. Plain arithmetic: no clock and no time
 * zone can move it. A fraction is the time of day.
 *
 * The 1900 system counts a 29 February 1900 that never was (serial 60); days before it lie one further on.
 */
export function epochDayOfSerial(serial: number, system: 1900 | 1904): EpochDay | undefined {
  const day = Math.floor(serial) + (system === 1904 ? DAYS_BETWEEN_SYSTEMS : 0);
  if (!(day >= 1 && day <= LAST_SERIAL_1900) || (system === 1900 && day === 60)) return undefined;
  return (day < 60 ? day + 1 : day) - EPOCH_SERIAL_1900;
}

/** The serial number of a day, as the spreadsheet stores it. */
export function serialOfEpochDay(day: EpochDay, system: 1900 | 1904): number {
  const serial = day + EPOCH_SERIAL_1900;
  if (system === 1904) return serial - DAYS_BETWEEN_SYSTEMS;
  return serial <= 60 ? serial - 1 : serial;
}

/** Year, month and day of an epoch day, without making a date of it. */
export function civilOf(day: EpochDay): { year: number; month: number; day: number } {
  // Counted in eras of 400 years from 1 March 0000, so that the leap day ends its year.
  const shifted = day + 719468;
  const era = Math.floor(shifted / 146097);
  const dayOfEra = shifted - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const month = monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1,
  };
}

/** The epoch day of a date, or undefined where the calendar has no such day (29 February 2023). */
export function epochDayOf(year: number, month: number, day: number): EpochDay | undefined {
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return undefined;
  const marchYear = month <= 2 ? year - 1 : year;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  return (
    era * 146097 +
    yearOfEra * 365 +
    Math.floor(yearOfEra / 4) -
    Math.floor(yearOfEra / 100) +
    dayOfYear -
    719468
  );
}

function daysInMonth(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

export function plainDateOf(day: EpochDay): Temporal.PlainDate {
  const civil = civilOf(day);
  return new Temporal.PlainDate(civil.year, civil.month, civil.day);
}

/** Hour and minute in a serial number's fraction; undefined for a whole day, and for what is no number. */
export function timeOfSerial(serial: number): Temporal.PlainTime | undefined {
  const fraction = serial - Math.floor(serial);
  if (!(fraction > 0)) return undefined;
  const minutes = Math.round(fraction * 1440) % 1440;
  return new Temporal.PlainTime(Math.floor(minutes / 60), minutes % 60);
}
