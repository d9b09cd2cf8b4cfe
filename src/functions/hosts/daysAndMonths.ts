/*
 * Days and months for the bundle of the worksheet functions, in place of the Temporal polyfill: the functions load with
 * every workbook, and need a tenth of it. It has the members of Temporal that the code behind the functions calls, alike
 * in values and errors; a property test compares the two, and any other member is missing on purpose.
 */

const DAY_MS = 86_400_000;
/** The farthest days that a Date can hold, and Temporal with it. */
const MOST_DAYS = 100_000_000;

interface YearAndMonth {
  readonly year: number;
  readonly month: number;
}

interface Day extends YearAndMonth {
  readonly day: number;
}

/** The Gregorian calendar backwards and forwards, as ISO 8601 counts. */
function epochDay({ year, month, day }: Day): number {
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  return date.getTime() / DAY_MS;
}

function daysIn({ year, month }: YearAndMonth): number {
  return new Date(
    epochDay({ year: 2000 + (((year % 400) + 400) % 400), month: month + 1, day: 0 }) * DAY_MS,
  ).getUTCDate();
}

function digits(number: number, count: number): string {
  return String(number).padStart(count, "0");
}

function yearText(year: number): string {
  return year >= 0 && year <= 9999 ? digits(year, 4) : `${year < 0 ? "-" : "+"}${digits(Math.abs(year), 6)}`;
}

function refuse(what: string): never {
  throw new RangeError(`Not a ${what} of the calendar.`);
}

function clamped(number: number, most: number): number {
  return number < 1 ? refuse("day") : Math.min(number, most);
}

class PlainYearMonth implements YearAndMonth {
  constructor(
    readonly year: number,
    readonly month: number,
  ) {
    const isMonth = Number.isInteger(year) && Number.isInteger(month) && month >= 1 && month <= 12;
    if (!isMonth || Math.abs(year) > 271_820) refuse("month");
  }

  static from({ year, month }: YearAndMonth): PlainYearMonth {
    return new PlainYearMonth(year, clamped(month, 12));
  }

  static compare(one: YearAndMonth, other: YearAndMonth): -1 | 0 | 1 {
    return Math.sign(one.year * 12 + one.month - other.year * 12 - other.month) as -1 | 0 | 1;
  }

  subtract({ months }: { readonly months: number }): PlainYearMonth {
    const index = this.year * 12 + this.month - 1 - months;
    return new PlainYearMonth(Math.floor(index / 12), (((index % 12) + 12) % 12) + 1);
  }

  with({ year }: { readonly year: number }): PlainYearMonth {
    return new PlainYearMonth(year, this.month);
  }

  toPlainDate({ day }: { readonly day: number }): PlainDate {
    return PlainDate.from({ year: this.year, month: this.month, day });
  }

  toString(): string {
    return `${yearText(this.year)}-${digits(this.month, 2)}`;
  }
}

class PlainDate implements Day {
  constructor(
    readonly year: number,
    readonly month: number,
    readonly day: number,
  ) {
    const isDay =
      [year, month, day].every(Number.isInteger) &&
      month >= 1 &&
      month <= 12 &&
      day >= 1 &&
      day <= daysIn(this);
    if (!isDay || !(Math.abs(epochDay(this)) <= MOST_DAYS)) refuse("day");
  }

  /** Fields beyond the end of a year or month are taken as its last; texts as `1899-12-30`. */
  static from(given: string | Day): PlainDate {
    if (typeof given === "string") {
      const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(given) ?? refuse("day");
      return new PlainDate(Number(year), Number(month), Number(day));
    }
    const { year } = given;
    const month = clamped(given.month, 12);
    return new PlainDate(year, month, clamped(given.day, daysIn({ year, month })));
  }

  add({ days }: { readonly days: number }): PlainDate {
    if (!Number.isInteger(days)) refuse("number of days");
    const date = new Date((epochDay(this) + days) * DAY_MS);
    return new PlainDate(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate());
  }

  toPlainYearMonth(): PlainYearMonth {
    return new PlainYearMonth(this.year, this.month);
  }

  toString(): string {
    return `${yearText(this.year)}-${digits(this.month, 2)}-${digits(this.day, 2)}`;
  }
}

class PlainTime {
  constructor(
    readonly hour = 0,
    readonly minute = 0,
  ) {
    if (!(hour >= 0 && hour <= 23 && minute >= 0 && minute <= 59)) refuse("time");
  }
}

export const Temporal = { PlainDate, PlainYearMonth, PlainTime };
