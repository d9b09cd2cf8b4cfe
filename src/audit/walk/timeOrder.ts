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
 * They are made as they are asked for: of a million fills nothing is kept but numbers.
 */
export function* inTimeOrder({ fills }: Pick<Log, "fills">): Generator<TimedFill> {
  const times = timesOf(fills);
  for (const index of orderOf(fills, times)) {
    yield {
      fill: fills[index]!,
      index,
      day: known(times.days[index]!),
      minute: known(times.minutes[index]!),
    };
  }
}

/** The places of the fills, in the order they were made. */
function orderOf(fills: readonly Fill[], times: Times): Uint32Array {
  const moments = new Float64Array(fills.length);
  const order = new Uint32Array(fills.length);
  let placed = 0;
  let isSorted = true;
  for (const { from, to } of sheetsOf(fills)) {
    const backwards = isNewestFirst(times.days, from, to);
    let day = Number.NEGATIVE_INFINITY;
    let minute = 0;
    for (let step = 0; step < to - from; step++) {
      const at = backwards ? to - 1 - step : from + step;
      const ownDay = times.days[at]!;
      if (ownDay !== UNKNOWN && ownDay !== day) {
        day = ownDay;
        minute = 0;
      }
      const ownMinute = times.minutes[at]!;
      if (ownMinute !== UNKNOWN) minute = ownMinute;
      moments[at] = day * MINUTES_A_DAY + minute;
      if (placed > 0 && moments[order[placed - 1]!]! > moments[at]) isSorted = false;
      order[placed++] = at;
    }
  }
  // The sort is stable: rows of one moment stay as they are.
  if (!isSorted) order.sort((one, other) => difference(moments[one]!, moments[other]!));
  return order;
}

/** Minutes since midnight of a time of day. */
export function minuteOf(time: Temporal.PlainTime): number {
  return time.hour * 60 + time.minute;
}

/** Day number and minute of every fill, `UNKNOWN` where unknown. */
interface Times {
  readonly days: Int32Array;
  readonly minutes: Int32Array;
}

/** No day or minute that a log can hold. */
const UNKNOWN = -(2 ** 31);

/** Readings are shared by equal cells: days come in runs, so that each is worked out once. */
function timesOf(fills: readonly Fill[]): Times {
  const days = new Int32Array(fills.length);
  const minutes = new Int32Array(fills.length);
  let date: Reading<Temporal.PlainDate> | undefined;
  let day = UNKNOWN;
  for (let at = 0; at < fills.length; at++) {
    const { fields } = fills[at]!;
    if (fields.date !== date) {
      date = fields.date;
      day = date.kind === "value" ? dayNumber(date.value) : UNKNOWN;
    }
    days[at] = day;
    minutes[at] = fields.time.kind === "value" ? minuteOf(fields.time.value) : UNKNOWN;
  }
  return { days, minutes };
}

function known(time: number): number | undefined {
  return time === UNKNOWN ? undefined : time;
}

/** Where the fills of each sheet stand among all: those of a sheet stand together. */
function* sheetsOf(fills: readonly Fill[]): Generator<{ readonly from: number; readonly to: number }> {
  for (let from = 0, to = 0; from < fills.length; from = to) {
    while (to < fills.length && fills[to]!.sheet === fills[from]!.sheet) to++;
    yield { from, to };
  }
}

function isNewestFirst(days: Int32Array, from: number, to: number): boolean {
  let rises = 0;
  let before = UNKNOWN;
  for (let at = from; at < to; at++) {
    const day = days[at]!;
    if (day === UNKNOWN) continue;
    if (before !== UNKNOWN) rises += Math.sign(day - before);
    before = day;
  }
  return rises < 0;
}

/** Infinite moments have no difference of their own. */
function difference(one: number, other: number): number {
  return one === other ? 0 : one - other;
}
