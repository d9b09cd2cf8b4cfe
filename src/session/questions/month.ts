import { Temporal } from "temporal-polyfill";
import { JUDGED_SHARE, monthSteps, sealed } from "../../reports/month/monthReport";
import { PROGRAM } from "../../reports/month/options";
import { monthsOf, periodOf } from "../../reports/month/period";
import type { SheetDraft } from "../../sheet/draft/draft";
import type { LogBook } from "../logBook";
import { told, type AsyncToldSteps, type ToldSteps } from "../worker/told";

/** What is wanted of a report, as plain values. */
export interface ReportOrder {
  /** `2026-10` */
  readonly month: string;
  readonly names: boolean;
  readonly paper: "A4" | "Letter";
  readonly shopName?: string | undefined;
  readonly preparedBy?: string | undefined;
}

export interface MonthChoice {
  readonly month: string;
  /** `October 2026` */
  readonly text: string;
  readonly fills: number;
}

export interface MadeReport {
  readonly drafts: readonly SheetDraft[];
  readonly checksum: string;
  readonly fills: number;
  readonly open: number;
  readonly accepted: number;
  /** Reasons why something was not checked. */
  readonly notChecked: number;
  readonly fullyJudged: boolean;
  readonly undated: number;
}

/** The months that the log has fills of, the latest first. */
export function* months(book: LogBook): ToldSteps<readonly MonthChoice[]> {
  const log = yield* book.log(0, 1);
  return monthsOf(log).map(({ month, fills }): MonthChoice => ({
    month: month.toString(),
    text: periodOf(month).text,
    fills,
  }));
}

/** The report of a month, as sheets to be written. */
export async function* month(book: LogBook, wanted: ReportOrder): AsyncToldSteps<MadeReport> {
  const { terms, rules } = book;
  const log = yield* book.log(0, 0.3);
  const { house, airTests, sources } = terms;
  const options = {
    ...wanted,
    month: Temporal.PlainYearMonth.from(wanted.month),
    asOf: Temporal.PlainDate.from(terms.today),
    units: terms.units,
    audit: { house, airTests, sources },
    accepted: terms.accepted,
    program: PROGRAM,
  };
  const open = yield* told(
    (share) => (share < JUDGED_SHARE ? "Judging the fills" : "Laying out the sheets"),
    0.3,
    0.9,
    monthSteps(log, rules, options),
  );
  const { drafts, checksum, month: made, findings, result } = await sealed(open, options);
  return {
    drafts,
    checksum,
    fills: made.fills.length,
    open: findings.open.length,
    accepted: findings.accepted.length,
    notChecked: result.notChecked.length,
    fullyJudged: result.fullyJudged,
    undated: made.undated.length,
  };
}
