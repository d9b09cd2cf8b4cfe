import { showsDate } from "../../sheet/numberFormat";
import { civilOf, epochDayOfSerial, type EpochDay } from "../../sheet/serialDate";
import { dateTextOf } from "../cells/dateText";
import type { DateOrder } from "../context";
import { forEachCell, forEachText, type ColumnRange } from "../scan";

/** What the cells of a column say of how its dates are written. */
export interface DateEvidence {
  /** Texts that can only be read day first, or only month first. */
  readonly dayFirst: number;
  readonly monthFirst: number;
  /** A text that can be read both ways, to show what is asked about. */
  readonly open: string | undefined;
  /** True dates whose day is at most 12, and those beyond. */
  readonly trueDates: number;
  readonly trueDatesBeyondTwelve: number;
  /** The latest day that is clear. */
  readonly latest: EpochDay | undefined;
}

/** Two-digit years end here while nothing is known of the day the log is read on. */
export const LATEST_YEAR_UNKNOWN = 2049;
/** A number without a date format is taken for a date from here on (1982), as no reading of a log is as large. */
const LEAST_SERIAL = 30000;
const MOST_SERIAL = 75000;

export function dateEvidence(range: ColumnRange): DateEvidence {
  const found = { dayFirst: 0, monthFirst: 0, trueDates: 0, trueDatesBeyondTwelve: 0 };
  let open: string | undefined;
  let latest: EpochDay | undefined;
  forEachText(range, (text) => {
    const said = dateTextOf(text, LATEST_YEAR_UNKNOWN);
    if (said?.kind === "either" && !said.dotted) open ??= text;
    if (said?.kind !== "day" && said?.kind !== "impossible") return;
    if (said.order === "day first") found.dayFirst++;
    if (said.order === "month first") found.monthFirst++;
    if (said.kind === "day" && /\d{4}/.test(text)) latest = Math.max(latest ?? said.day, said.day);
  });
  forEachCell(range, (value, format) => {
    if (typeof value !== "number") return;
    const isDate = showsDate(format) || (format === undefined && value > LEAST_SERIAL && value < MOST_SERIAL);
    const day = isDate ? epochDayOfSerial(value, range.sheet.dateSystem) : undefined;
    if (day === undefined) return;
    if (latest === undefined || day > latest) latest = day;
    if (civilOf(day).day > 12) found.trueDatesBeyondTwelve++;
    else found.trueDates++;
  });
  return { ...found, open, latest };
}

/** One contradiction in this many is a slip of the pen, not another order. */
const SLIPS = 10;

/** The order that the texts of a column, or of several, agree on. */
export function orderIn(evidence: readonly DateEvidence[]): DateOrder | "both" | undefined {
  const dayFirst = evidence.reduce((sum, each) => sum + each.dayFirst, 0);
  const monthFirst = evidence.reduce((sum, each) => sum + each.monthFirst, 0);
  if (dayFirst === 0 && monthFirst === 0) return undefined;
  if (dayFirst >= SLIPS * monthFirst) return "day first";
  return monthFirst >= SLIPS * dayFirst ? "month first" : "both";
}

/**
 * Whether the spreadsheet took day and month for each other: it left texts such as 13/04/2024 alone, as they are no
 * date in its order, and no true date beside them has a day beyond 12.
 */
export function looksSwapped(evidence: DateEvidence): boolean {
  const texts = evidence.dayFirst + evidence.monthFirst;
  return texts >= 2 && evidence.trueDates >= 2 && evidence.trueDatesBeyondTwelve === 0;
}
