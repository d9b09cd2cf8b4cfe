import { Temporal } from "temporal-polyfill";
import { showsDate, showsTimeOnly } from "../../sheet/numberFormat";
import { civilOf, epochDayOfSerial, plainDateOf, timeOfSerial, type EpochDay } from "../../sheet/serialDate";
import type { DateOrder } from "../context";
import { ambiguous, BLANK, unreadable, value, type Reading } from "../reading";
import { ofNoUse, plain, sayingNothing, shown, type Cell } from "./cell";
import { dateTextOf, theOtherWayRound } from "./dateText";

/** What the column says of its dates. */
export interface DateColumn {
  /** `both` where the cells themselves contradict each other. */
  readonly order: DateOrder | "both" | undefined;
  /** The spreadsheet turned some of these texts into dates the wrong way round, by all appearances. */
  readonly swapped: boolean;
  /** Two-digit years are not after it. */
  readonly latestYear: number;
}

/** Nobody logged fills in a spreadsheet before, nor will this log run so long. */
const FIRST_YEAR = 1970;
const LAST_YEAR = 2100;

/** Reads the day of a fill. */
export function readDate(cell: Cell, column: DateColumn): Reading<Temporal.PlainDate> {
  if (typeof cell.value === "number") return fromNumber(cell.value, cell, column);
  if (typeof cell.value !== "string") return ofNoUse(cell, "a date");
  const nothing = sayingNothing(plain(cell.value));
  if (nothing) return nothing;
  const said = dateTextOf(cell.value, column.latestYear);
  switch (said?.kind) {
    case "day":
      return inReach(said.day, cell);
    case "either": {
      const order = said.dotted && column.order === undefined ? "day first" : column.order;
      if (order === "day first") return inReach(said.dayFirst, cell);
      if (order === "month first") return inReach(said.monthFirst, cell);
      return eitherOf(said.dayFirst, said.monthFirst, cell, `“${shown(cell)}”: day or month first?`);
    }
    case "impossible":
      return unreadable(`“${shown(cell)}”: the calendar has no such day. Correct it.`);
    case "no year":
      return unreadable(`“${shown(cell)}” has no year. Write the whole date.`);
    case "month only":
      return unreadable(`“${shown(cell)}” is a month without a day. Write the whole date.`);
    case undefined:
      return unreadable(`“${shown(cell)}” is not a date. Write it such as 2026-10-31.`);
  }
}

function fromNumber(number: number, cell: Cell, column: DateColumn): Reading<Temporal.PlainDate> {
  // An empty cell that came through a formula: 0 January 1900 in a date format.
  if (number === 0) return BLANK;
  if (showsTimeOnly(cell.format))
    return unreadable("A time of day stands where a date belongs. Write the date.");
  if (!showsDate(cell.format)) {
    const compact =
      Number.isInteger(number) && number > 19700000 && number < 21010000
        ? dateTextOf(String(number), 2100)
        : undefined;
    if (compact?.kind === "day") return inReach(compact.day, cell);
  }
  const day = epochDayOfSerial(number, cell.dateSystem);
  if (day === undefined) return unreadable(`${number} is not a date. Write it such as 2026-10-31.`);
  const swapped = column.swapped ? theOtherWayRound(day) : undefined;
  if (swapped !== undefined)
    return eitherOf(
      ...(column.order === "day first" ? ([swapped, day] as const) : ([day, swapped] as const)),
      cell,
      "The spreadsheet may have taken day and month for each other here, as it could not read others in this column.",
    );
  const read = inReach(day, cell);
  return read.kind === "value" && !showsDate(cell.format)
    ? value(read.value, `${number}, a date that lost its format`)
    : read;
}

function inReach(day: EpochDay, cell: Cell): Reading<Temporal.PlainDate> {
  const { year } = civilOf(day);
  return year >= FIRST_YEAR && year <= LAST_YEAR
    ? value(plainDateOf(day))
    : unreadable(
        `“${shown(cell)}” gives the year ${year}, which cannot be. Write the date such as 2026-10-31.`,
      );
}

function eitherOf(one: EpochDay, other: EpochDay, cell: Cell, why: string): Reading<Temporal.PlainDate> {
  const choices = [inReach(one, cell), inReach(other, cell)].flatMap((each) =>
    each.kind === "value" ? [each.value] : [],
  );
  return choices.length === 2 ? ambiguous(choices, why, "date order") : inReach(one, cell);
}

/** Reads a time of day: a number's fraction, `14:30`, `2:15 pm`, `14h30`, `1430`. */
export function readTime(cell: Cell): Reading<Temporal.PlainTime> {
  if (typeof cell.value === "number") {
    if (cell.value >= 0 && cell.value < 1) return value(timeOfSerial(cell.value) ?? new Temporal.PlainTime());
    const time = showsDate(cell.format) ? timeOfSerial(cell.value) : undefined;
    if (time) return value(time);
    const hours = Math.floor(cell.value / 100);
    return Number.isInteger(cell.value)
      ? clock(hours, cell.value % 100, "", cell)
      : ofNoUse(cell, "a time of day");
  }
  if (typeof cell.value !== "string") return ofNoUse(cell, "a time of day");
  const text = plain(cell.value);
  const nothing = sayingNothing(text);
  if (nothing) return nothing;
  const parts =
    /(?:^|[ t])(\d{1,2})(?:[:h.]?(\d{2}))?(?:[:.]\d{2}(?:[.,]\d+)?)? ?([ap])?\.?m?\.?(?: ?uhr|z)?$/.exec(
      text,
    );
  return parts
    ? clock(Number(parts[1]), Number(parts[2] ?? 0), parts[3] ?? "", cell)
    : ofNoUse(cell, "a time of day");
}

function clock(hour: number, minute: number, half: string, cell: Cell): Reading<Temporal.PlainTime> {
  const hours = half === "p" && hour < 12 ? hour + 12 : half === "a" && hour === 12 ? 0 : hour;
  return hours >= 0 && hours < 24 && minute >= 0 && minute < 60
    ? value(new Temporal.PlainTime(hours, minute))
    : ofNoUse(cell, "a time of day");
}
