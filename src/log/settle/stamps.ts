import type { Temporal } from "temporal-polyfill";
import { possibleStamps } from "../../cylinders/readTestStamp";
import type { TestStamp } from "../../cylinders/testStamp";
import { Refusal } from "../../gas/refusal";
import { dateFormatOf, showsDate } from "../../sheet/numberFormat";
import { civilOf, epochDayOfSerial } from "../../sheet/serialDate";
import { tidy } from "../cells/cell";
import { dateTextOf } from "../cells/dateText";
import type { StampOrder } from "../context";
import { forEachCell, forEachText, type ColumnRange } from "../tables/scan";
import { LATEST_YEAR_UNKNOWN } from "./dates";

/** What the cells of a column say of how its tests are written. */
export interface StampEvidence {
  /** Pairs of numbers that can only be month and year, or only year and month. */
  readonly monthFirst: number;
  readonly yearFirst: number;
  /** A pair that can be both, to show what is asked about. */
  readonly open: string | undefined;
  /** Different cells that give a month, and those that give a day. */
  readonly months: number;
  readonly days: number;
  /** Different months that are clear, and how many of them are too late for a test that was done. */
  readonly clear: number;
  readonly future: number;
}

/** Looks through a column of tests. `latest` is the last day on which one can have been done, if known. */
export function stampEvidence(range: ColumnRange, latest: Temporal.PlainDate | undefined): StampEvidence {
  const found = { monthFirst: 0, yearFirst: 0, months: 0, days: 0, clear: 0, future: 0 };
  let open: string | undefined;
  const now = latest === undefined ? Infinity : latest.year * 12 + latest.month;
  const clear = (year: number, month: number): void => {
    found.clear++;
    if (year * 12 + month > now) found.future++;
  };
  forEachText(range, (text) => {
    const date = dateTextOf(text, LATEST_YEAR_UNKNOWN);
    if (date?.kind === "day" || date?.kind === "either") {
      found.days++;
      if (date.kind === "day") clear(civilOf(date.day).year, civilOf(date.day).month);
      return;
    }
    const stamps = stampsIn(text);
    if (stamps.length === 0) return;
    found.months++;
    const [first, second] = stamps;
    if (second !== undefined) open ??= text;
    else if (first?.means === "test") clear(first.month.year, first.month.month);
    const order = second === undefined ? orderOf(text, first!) : undefined;
    if (order === "month first") found.monthFirst++;
    if (order === "year first") found.yearFirst++;
  });
  const seen = new Set<number>();
  forEachCell(range, (value, format) => {
    if (typeof value !== "number" || seen.has(value)) return;
    seen.add(value);
    const day = value > 10000 ? epochDayOfSerial(value, range.sheet.dateSystem) : undefined;
    if (day === undefined) return;
    const civil = civilOf(day);
    clear(civil.year, civil.month);
    if (civil.day === 1 || showsNoWholeDate(format)) found.months++;
    else found.days++;
  });
  return { ...found, open };
}

/** `mmm-yy` is how months are shown, `d-mmm` how a spreadsheet shows 10/19 once it has taken it for a day. */
function showsNoWholeDate(format: string | undefined): boolean {
  const parts = showsDate(format) ? dateFormatOf(format) : undefined;
  return parts !== undefined && !(parts.day && parts.year);
}

function stampsIn(text: string): readonly TestStamp[] {
  try {
    return possibleStamps(tidy(text));
  } catch (thrown) {
    if (thrown instanceof Refusal) return [];
    throw thrown;
  }
}

function orderOf(text: string, { month }: TestStamp): StampOrder | undefined {
  const [, first, second] = /(?<!\d)(\d{1,2})[-/. ]{1,3}(\d{1,2})(?!\d)/.exec(text)?.map(Number) ?? [];
  if (first === undefined || second === undefined) return undefined;
  const yearDigits = month.year % 100;
  if (month.month === first && yearDigits === second) return first === second ? undefined : "month first";
  return month.month === second && yearDigits === first ? "year first" : undefined;
}

/** One contradiction in this many is a slip of the pen, not another order. */
const SLIPS = 10;

export function stampOrderIn({ monthFirst, yearFirst }: StampEvidence): StampOrder | "both" | undefined {
  if (monthFirst === 0 && yearFirst === 0) return undefined;
  if (monthFirst >= SLIPS * yearFirst) return "month first";
  return yearFirst >= SLIPS * monthFirst ? "year first" : "both";
}

/** Whether a column otherwise holds months, so that a day among them is suspect. */
export function holdsMonths({ months, days }: StampEvidence): boolean {
  return months > 0 && months > days - 1;
}

/** Fewer dates are no pattern. */
const LEAST_FOR_PATTERN = 3;

/**
 * Whether a column shows the last test or the next one, by where its dates lie: done tests lie in the past, most next
 * ones in the future. Undefined where that does not settle it.
 */
export function meansIn({ clear, future }: StampEvidence): TestStamp["means"] | undefined {
  if (clear < LEAST_FOR_PATTERN) return undefined;
  if (future >= clear / 2) return "due";
  return future === 0 ? "test" : undefined;
}
