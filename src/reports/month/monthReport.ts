import { auditSteps } from "../../audit/audit";
import { dueListSteps } from "../../audit/lists/dueLists";
import type { AuditResult } from "../../audit/judge/finding";
import { shopFor } from "../../audit/shop/shopFor";
import type { CountryRules } from "../../cylinders/countryRules";
import type { Log } from "../../log/log";
import { allAtOnce, part, type Steps } from "../../sheet/steps";
import type { SheetDraft } from "../../sheet/draft/draft";
import { checksumOf, figuresIn } from "./checksum";
import { coverSheet, type Cover } from "./coverSheet";
import { cylindersSheet } from "./cylindersSheet";
import { dueSheet } from "./dueSheet";
import { fillsSheet } from "./fillsSheet";
import {
  acceptedSheet,
  findingsSheet,
  notCheckedSheet,
  sortedFindings,
  type SortedFindings,
} from "./findingSheets";
import { cylinderLists, notToFillSheet, recallSheet } from "./listSheets";
import { fillsOfMonth, type MonthOfFills } from "./monthFills";
import type { MonthOptions } from "./options";
import { datesOf, periodOf } from "./period";
import { analysesSheet, releaseSheet } from "./releaseSheet";

/** A month's report: its sheets in the order of their tabs, and what they rest on. */
export interface MonthReport {
  readonly drafts: readonly SheetDraft[];
  readonly month: MonthOfFills;
  readonly findings: SortedFindings;
  readonly result: AuditResult;
  /** Of every figure; the same log, day and rules give the same one. */
  readonly checksum: string;
}

/** The compliance report of one month of a log. Nothing in it depends on the machine or the moment. */
export async function monthReport(
  log: Log,
  rules: CountryRules,
  options: MonthOptions,
): Promise<MonthReport> {
  return sealed(allAtOnce(monthSteps(log, rules, options)), options);
}

/** A report whose cover is still open, as the checksum of its figures stands there. */
export interface OpenReport {
  readonly cover: Cover;
  readonly sheets: readonly SheetDraft[];
  /** Every figure of each sheet, for the checksum. */
  readonly figures: readonly string[];
}

/** The share of the work after which all is judged, and the sheets are laid out. */
export const JUDGED_SHARE = 0.9;

/** The report a step at a time, each of which tells which share is done: for work that must let the screen go. */
export function* monthSteps(log: Log, rules: CountryRules, options: MonthOptions): Steps<OpenReport> {
  const period = periodOf(options.month);
  const judged = { ...options.audit, asOf: options.asOf.toString(), period: datesOf(period) };
  const result = yield* part(0, 0.7, auditSteps(log, rules, judged));
  const { shop } = shopFor(rules, judged);
  const month = yield* part(0.7, 0.8, fillsOfMonth(log, shop, period));
  const due = yield* part(0.8, JUDGED_SHARE, dueListSteps(log, rules, options.asOf, judged));
  const findings = sortedFindings(result, options, period);
  const lists = cylinderLists(result, due, options);
  const layouts: readonly (Steps<SheetDraft> | (() => SheetDraft | undefined))[] = [
    () => recallSheet(lists, period, options),
    () => notToFillSheet(lists, period, options),
    () => findingsSheet(findings, period, options),
    () => acceptedSheet(findings, period, options),
    () => notCheckedSheet(result, period, options),
    () => fillsSheet(month, findings.open, period, options),
    cylindersSheet(month, period, options),
    releaseSheet(month, shop, period, options),
    analysesSheet(month, period, options),
    () => dueSheet(due, period, options),
  ];
  const sheets: SheetDraft[] = [];
  const figures: string[] = [];
  const shareOf = (at: number) => JUDGED_SHARE + ((1 - JUDGED_SHARE) * at) / layouts.length;
  for (const [at, layout] of layouts.entries()) {
    yield shareOf(at);
    const sheet =
      typeof layout === "function" ? layout() : yield* part(shareOf(at), shareOf(at + 0.7), layout);
    if (sheet === undefined) continue;
    sheets.push(sheet);
    figures.push(yield* part(shareOf(at + 0.7), shareOf(at + 1), figuresIn(sheet)));
  }
  return { cover: { log, rules, shop, month, result, findings, lists, period }, sheets, figures };
}

/** Puts the cover in front, with the checksum where somebody signs. */
export async function sealed(
  { cover, sheets, figures }: OpenReport,
  options: MonthOptions,
): Promise<MonthReport> {
  const rulesMark = (await checksumOf(JSON.stringify(cover.rules))).slice(0, 8);
  const bare = coverSheet(cover, { ...options, preparedBy: undefined }, { rulesMark });
  const checksum = await checksumOf([allAtOnce(figuresIn(bare)), ...figures].join("\n"));
  const front = coverSheet(cover, options, { rulesMark, checksum });
  const { month, findings, result } = cover;
  return { drafts: [front, ...sheets], month, findings, result, checksum };
}
