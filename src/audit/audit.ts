import { Temporal } from "temporal-polyfill";
import { dayNumber } from "../cylinders/calendar";
import type { CountryRules } from "../cylinders/countryRules";
import type { Fill, Log } from "../log/log";
import { allAtOnce, type Steps } from "../sheet/steps";
import { Collector, noColumnFor } from "./judge/collector";
import type { AuditResult, Finding } from "./judge/finding";
import { LogColumns } from "./judge/logColumns";
import { LastFills } from "./lists/recall";
import type { FilledCylinder, Rule } from "./judge/rule";
import { DECISIVE, RULES } from "./rules/orderOfHarm";
import type { AuditOptions } from "./shop/shop";
import { shopFor } from "./shop/shopFor";
import { walk } from "./walk/walk";

/**
 * Judges every fill of a log on its own day, by a country's rules. What could not be judged is counted with its reason:
 * unknown is never a pass. Findings are ordered by harm.
 */
export function audit(log: Log, rules: CountryRules, options: AuditOptions = {}): AuditResult {
  return allAtOnce(auditSteps(log, rules, options));
}

/** The audit a step at a time, each of which tells which share is done: for work that must let the screen go. */
export function* auditSteps(log: Log, rules: CountryRules, options: AuditOptions = {}): Steps<AuditResult> {
  const { shop, overrides } = shopFor(rules, options);
  const columns = new LogColumns(log);
  const collector = new Collector(columns);
  const counts = inPeriod(options.period);
  const fills = log.fills.reduce((count, fill) => (counts(fill) ? count + 1 : count), 0);
  const able = RULES.filter((rule) => {
    const missing = rule.needs.find((fields) => !columns.hasAny(fields));
    const why = missing ? noColumnFor(missing) : rule.unable?.(shop);
    if (why !== undefined) collector.unable(rule, why, fills);
    return why === undefined;
  });
  const judge = (filled: FilledCylinder, rule: Rule, isCounted: boolean): Finding | undefined => {
    const verdict = rule.judge(filled, shop);
    if (verdict.kind === "fault") return collector.fault(rule, verdict, filled, isCounted);
    if (verdict.kind === "not judged" && isCounted) collector.notJudged(rule, verdict, filled);
    return undefined;
  };
  const lastFills = new LastFills(columns);
  yield* walk(log, shop, ({ filled, life }) => {
    const isCounted = counts(filled.fill);
    let findings: Finding[] | undefined;
    for (const rule of able) {
      const finding = judge(filled, rule, isCounted);
      if (finding) (findings ??= []).push(finding);
    }
    lastFills.add(filled, life, findings ?? NONE);
  });
  const complete = log.fills.length > 0 && log.unreadable.length === 0;
  return {
    ...collector.result(DECISIVE, complete),
    recall: lastFills.recall(),
    doNotFill: lastFills.doNotFill(),
    overrides,
  };
}

const NONE: readonly Finding[] = [];

/** Whether a fill counts; one whose date cannot be read may have been made then. */
function inPeriod(period: AuditOptions["period"]): (fill: Fill) => boolean {
  if (period === undefined) return () => true;
  const [from, to] = [period.from, period.to].map((day) => dayNumber(Temporal.PlainDate.from(day))) as [
    number,
    number,
  ];
  return ({ fields: { date } }) => {
    if (date.kind !== "value") return true;
    const day = dayNumber(date.value);
    return day >= from && day <= to;
  };
}
