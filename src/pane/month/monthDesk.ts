import { Temporal } from "temporal-polyfill";
import type { Acceptance } from "../../audit/judge/acceptance";
import type { AuditOptions } from "../../audit/shop/shop";
import { countryRules } from "../../cylinders/countryRules";
import type { SheetChoice } from "../../log/context";
import { countryContext } from "../../log/countryContext";
import type { Log } from "../../log/log";
import { readLogSteps } from "../../log/readLog";
import { JUDGED_SHARE, monthSteps, sealed } from "../../reports/month/monthReport";
import { PROGRAM } from "../../reports/month/options";
import { monthsOf, periodOf } from "../../reports/month/period";
import type { SheetDraft } from "../../sheet/draft/draft";
import type { Sheet } from "../../sheet/sheet";
import type { Desk, DeskStep } from "../kit/deskEngine";
import { told } from "../kit/told";

/** What is wanted, as plain values. */
export interface MonthOrder {
  readonly country: string;
  readonly units: "us" | "metric";
  readonly choices: readonly SheetChoice[];
  readonly audit: Pick<AuditOptions, "house" | "airTests" | "sources">;
  readonly accepted: readonly Acceptance[];
  /** ISO date of today. */
  readonly today: string;
  /** Absent to hear only which months there are. */
  readonly report?: ReportOrder | undefined;
}

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

export interface MonthAnswer {
  /** The latest first. */
  readonly months: readonly MonthChoice[];
  readonly report?: MadeReport;
}

/** The sheets of a workbook as months of fills: read once, reported as often as asked. */
export class MonthDesk implements Desk<MonthOrder, MonthAnswer> {
  private read: { readonly key: string; readonly log: Log } | undefined;

  constructor(private readonly sheets: readonly Sheet[]) {}

  async *answer(order: MonthOrder): AsyncGenerator<DeskStep, MonthAnswer, undefined> {
    const log = yield* this.logFor(order);
    const months = monthsOf(log).map(({ month, fills }): MonthChoice => ({
      month: month.toString(),
      text: periodOf(month).text,
      fills,
    }));
    return order.report ? { months, report: yield* this.report(log, order, order.report) } : { months };
  }

  private async *report(
    log: Log,
    { country, units, audit, accepted, today }: MonthOrder,
    wanted: ReportOrder,
  ): AsyncGenerator<DeskStep, MadeReport, undefined> {
    const options = {
      ...wanted,
      month: Temporal.PlainYearMonth.from(wanted.month),
      asOf: Temporal.PlainDate.from(today),
      units,
      audit,
      accepted,
      program: PROGRAM,
    };
    const open = yield* told(
      (share) => (share < JUDGED_SHARE ? "Judging the fills" : "Laying out the sheets"),
      0.3,
      0.9,
      monthSteps(log, countryRules(country), options),
    );
    const { drafts, checksum, month, findings, result } = await sealed(open, options);
    return {
      drafts,
      checksum,
      fills: month.fills.length,
      open: findings.open.length,
      accepted: findings.accepted.length,
      notChecked: result.notChecked.length,
      fullyJudged: result.fullyJudged,
      undated: month.undated.length,
    };
  }

  private *logFor({ country, units, choices, today }: MonthOrder): Generator<DeskStep, Log, undefined> {
    const key = JSON.stringify([country, units, choices, today]);
    if (this.read?.key === key) return this.read.log;
    const context = {
      ...countryContext(countryRules(country)),
      units,
      choices,
      asOf: Temporal.PlainDate.from(today),
    };
    const log = yield* told("Reading the rows", 0, 0.3, readLogSteps(this.sheets, context));
    this.read = { key, log };
    return log;
  }
}
