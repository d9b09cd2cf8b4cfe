import type { Temporal } from "temporal-polyfill";
import { dayNumber } from "../../cylinders/calendar";
import type { Fill, Log } from "../../log/log";
import type { Reading } from "../../log/reading";

/** A fill with the moment it is known to have been made. */
export interface TimedFill {
  readonly fill: Fill;
  /** Its place among all fills of the log. */
  readonly index: number;
  readonly day: number | undefined;
  /** Minutes since midnight. */
  readonly minute: number | undefined;
}

const MINUTES_A_DAY = 1440;

/**
 * The fills of a log in the order they were made. A fill without a time is placed by its row among those of its day, one
 * without a date by the rows beside it; in a sheet that runs from the newest row to the oldest, rows count backwards.
 */
export function inTimeOrder({ fills }: Pick<Log, "fills">): readonly TimedFill[] {
  const timed = timedFills(fills);
  const moments = new Float64Array(fills.length);
  const inRowOrder: TimedFill[] = [];
  let isSorted = true;
  for (const rows of bySheet(timed)) {
    if (isNewestFirst(rows)) rows.reverse();
    let day = Number.NEGATIVE_INFINITY;
    let minute = 0;
    for (const row of rows) {
      if (row.day !== undefined && row.day !== day) [day, minute] = [row.day, 0];
      minute = row.minute ?? minute;
      moments[row.index] = day * MINUTES_A_DAY + minute;
      const before = inRowOrder.at(-1);
      if (before && moments[before.index]! > moments[row.index]!) isSorted = false;
      inRowOrder.push(row);
    }
  }
  if (isSorted) return inRowOrder;
  // The sort is stable: rows of one moment stay as they are.
  return inRowOrder.sort((one, other) => difference(moments[one.index]!, moments[other.index]!));
}

/** Minutes since midnight of a time of day. */
export function minuteOf(time: Temporal.PlainTime): number {
  return time.hour * 60 + time.minute;
}

/** Readings are shared by equal cells, so that each date and time is worked out once. */
function timedFills(fills: readonly Fill[]): readonly TimedFill[] {
  const dayOf = remembered((date: Temporal.PlainDate) => dayNumber(date));
  const minute = remembered(minuteOf);
  return fills.map((fill, index) => ({
    fill,
    index,
    day: dayOf(fill.fields.date),
    minute: minute(fill.fields.time),
  }));
}

function remembered<T>(work: (value: T) => number): (reading: Reading<T>) => number | undefined {
  const known = new Map<Reading<T>, number>();
  return (reading) => {
    if (reading.kind !== "value") return undefined;
    let found = known.get(reading);
    if (found === undefined) known.set(reading, (found = work(reading.value)));
    return found;
  };
}

function bySheet(timed: readonly TimedFill[]): readonly TimedFill[][] {
  const sheets = new Map<string, TimedFill[]>();
  for (const row of timed) {
    const rows = sheets.get(row.fill.sheet);
    if (rows) rows.push(row);
    else sheets.set(row.fill.sheet, [row]);
  }
  return [...sheets.values()];
}

function isNewestFirst(rows: readonly TimedFill[]): boolean {
  let rises = 0;
  let before: number | undefined;
  for (const { day } of rows) {
    if (day === undefined) continue;
    if (before !== undefined) rises += Math.sign(day - before);
    before = day;
  }
  return rises < 0;
}

/** Infinite moments have no difference of their own. */
function difference(one: number, other: number): number {
  return one === other ? 0 : one - other;
}
