import { showsDate } from "../../sheet/numberFormat";
import { civilOf, epochDayOfSerial, type EpochDay } from "../../sheet/serialDate";
import { dateTextOf, theOtherWayRound } from "../cells/dateText";
import type { DateOrder } from "../context";
import { forEachCell, forEachText, type ColumnRange } from "../tables/scan";

/** What the cells of a column say of how its dates are written. */
export interface DateEvidence {
  /** Texts that can only be read day first, or only month first. */
  readonly dayFirst: number;
  readonly monthFirst: number;
  /** A text that can be read both ways, to show what is asked about. */
  readonly open: string | undefined;
  /** Different true dates whose day is at most 12, and the number of those beyond. */
  readonly trueDates: ReadonlySet<EpochDay>;
  readonly trueDatesBeyondTwelve: number;
  /** The first and last clear day that stands as text. */
  readonly textSpan: readonly [first: EpochDay, last: EpochDay] | undefined;
  /** The latest day that is clear. */
  readonly latest: EpochDay | undefined;
}

/** Two-digit years end here while nothing is known of the day the log is read on. */
export const LATEST_YEAR_UNKNOWN = 2049;
/** A number without a date format is taken for a date from here on (1982), as no reading of a log is as large. */
const LEAST_SERIAL = 30000;
const MOST_SERIAL = 75000;

export function dateEvidence(range: ColumnRange): DateEvidence {
  const found = { dayFirst: 0, monthFirst: 0, trueDatesBeyondTwelve: 0 };
  const trueDates = new Set<EpochDay>();
  let textSpan: readonly [EpochDay, EpochDay] | undefined;
  let open: string | undefined;
  let latest: EpochDay | undefined;
  forEachText(range, (text) => {
    const said = dateTextOf(text, LATEST_YEAR_UNKNOWN);
    if (said?.kind === "either" && !said.dotted) open ??= text;
    if (said?.kind !== "day" && said?.kind !== "impossible") return;
    if (said.order === "day first") found.dayFirst++;
    if (said.order === "month first") found.monthFirst++;
    if (said.kind !== "day") return;
    textSpan = [Math.min(textSpan?.[0] ?? said.day, said.day), Math.max(textSpan?.[1] ?? said.day, said.day)];
    if (/\d{4}/.test(text)) latest = Math.max(latest ?? said.day, said.day);
  });
  forEachCell(range, (value, format) => {
    if (typeof value !== "number") return;
    const isDate = showsDate(format) || (format === undefined && value > LEAST_SERIAL && value < MOST_SERIAL);
    const day = isDate ? epochDayOfSerial(value, range.sheet.dateSystem) : undefined;
    if (day === undefined) return;
    if (latest === undefined || day > latest) latest = day;
    if (civilOf(day).day > 12) found.trueDatesBeyondTwelve++;
    else trueDates.add(day);
  });
  return { ...found, trueDates, textSpan, open, latest };
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

/** How far from the other days of the log a day may lie, and still be one of them. */
const NEAR_DAYS = 31;

/**
 * Whether the spreadsheet took day and month for each other: it left texts such as 13/04/2024 alone, as they are no
 * date in its order, no true date beside them has a day beyond 12, and the true dates would lie among the texts as
 * well or better the other way round.
 */
export function looksSwapped({
  dayFirst,
  monthFirst,
  trueDates,
  trueDatesBeyondTwelve,
  textSpan,
}: DateEvidence): boolean {
  if (textSpan === undefined || dayFirst + monthFirst < 2 || trueDates.size < 2 || trueDatesBeyondTwelve > 0)
    return false;
  const [first, last] = textSpan;
  const among = (days: readonly EpochDay[]): number =>
    days.filter((day) => day >= first - NEAR_DAYS && day <= last + NEAR_DAYS).length;
  return among([...trueDates].map((day) => theOtherWayRound(day) ?? day)) >= among([...trueDates]);
}
