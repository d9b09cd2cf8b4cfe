import { auditSteps } from "../../audit/audit";
import { dueLists } from "../../audit/dueLists";
import type { AuditResult } from "../../audit/finding";
import { shopFor } from "../../audit/shopFor";
import type { CountryRules } from "../../cylinders/countryRules";
import type { Log } from "../../log/log";
import type { SheetDraft } from "../../sheet/draft/draft";
import { checksumOf, figuresText } from "./checksum";
import { coverSheet, type Cover } from "./coverSheet";
import { cylindersSheet } from "./cylindersSheet";
import { dueSheet } from "./dueSheet";
import { fillsSheet } from "./fillsSheet";
import {
  acceptedSheet,
  atRiskSheet,
  findingsSheet,
  notCheckedSheet,
  sortedFindings,
  type SortedFindings,
} from "./findingSheets";
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
  const steps = monthSteps(log, rules, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return sealed(step.value, options);
  }
}

/** A report whose cover is still open, as the checksum of its figures stands there. */
export interface OpenReport {
  readonly cover: Cover;
  readonly sheets: readonly SheetDraft[];
}

/** The report a step at a time, each of which tells which share is done: for work that must let the screen go. */
export function* monthSteps(
  log: Log,
  rules: CountryRules,
  options: MonthOptions,
): Generator<number, OpenReport, undefined> {
  const period = periodOf(options.month);
  const judged = { ...options.audit, asOf: options.asOf.toString(), period: datesOf(period) };
  const result = yield* auditSteps(log, rules, judged);
  const { shop } = shopFor(rules, judged);
  const month = fillsOfMonth(log, shop, period);
  yield 1;
  const findings = sortedFindings(result, options, period);
  const accepted = acceptedSheet(findings, period, options);
  return {
    cover: { log, rules, shop, month, result, findings, period },
    sheets: [
      atRiskSheet(result, period, options),
      findingsSheet(findings, period, options),
      ...(accepted ? [accepted] : []),
      notCheckedSheet(result, period, options),
      fillsSheet(month, findings.open, period, options),
      cylindersSheet(month, period, options),
      releaseSheet(month, shop, period, options),
      analysesSheet(month, period, options),
      dueSheet(dueLists(log, rules, options.asOf, judged), period, options),
    ],
  };
}

/** Puts the cover in front, with the checksum where somebody signs. */
export async function sealed({ cover, sheets }: OpenReport, options: MonthOptions): Promise<MonthReport> {
  const rulesMark = (await checksumOf(JSON.stringify(cover.rules))).slice(0, 8);
  const bare = coverSheet(cover, { ...options, preparedBy: undefined }, { rulesMark });
  const checksum = await checksumOf(figuresText([bare, ...sheets]));
  const front = coverSheet(cover, options, { rulesMark, checksum });
  const { month, findings, result } = cover;
  return { drafts: [front, ...sheets], month, findings, result, checksum };
}
