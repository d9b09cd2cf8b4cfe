import type { Temporal } from "temporal-polyfill";
import { dateOf, firstDayOf, lastDayOf, monthNumber } from "../../cylinders/calendar";
import { dateText } from "../../words/inSentences";
import type { Log } from "../../log/log";

/** A month of a log; days by their number. */
export interface Period {
  readonly month: Temporal.PlainYearMonth;
  readonly first: number;
  readonly last: number;
  /** `October 2026` */
  readonly text: string;
  /** `2026-10` */
  readonly iso: string;
}

export function periodOf(month: Temporal.PlainYearMonth): Period {
  const number = monthNumber(month);
  const first = firstDayOf(number);
  return {
    month,
    first,
    last: lastDayOf(number),
    text: dateText(first).replace(/^\d+ /, ""),
    iso: month.toString(),
  };
}

/** ISO dates, as the audit takes a period. */
export function datesOf({ first, last }: Period): { readonly from: string; readonly to: string } {
  return { from: dateOf(first).toString(), to: dateOf(last).toString() };
}

export interface MonthOfLog {
  readonly month: Temporal.PlainYearMonth;
  readonly fills: number;
}

/** The months in which a log has fills, the latest first. */
export function monthsOf({ fills }: Pick<Log, "fills">): readonly MonthOfLog[] {
  const months = new Map<number, { month: Temporal.PlainYearMonth; fills: number }>();
  for (const { fields } of fills) {
    if (fields.date.kind !== "value") continue;
    const number = monthNumber(fields.date.value);
    const known = months.get(number);
    if (known) known.fills += 1;
    else months.set(number, { month: fields.date.value.toPlainYearMonth(), fills: 1 });
  }
  return [...months].sort(([one], [other]) => other - one).map(([, month]) => month);
}
