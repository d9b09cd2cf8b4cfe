import type { CountryRules } from "../cylinders/countryRules";
import type { Log } from "../log/log";
import { Collector } from "./collector";
import type { AuditResult } from "./finding";
import { filledCylinders } from "./filledCylinders";
import { LogColumns } from "./logColumns";
import type { Shop } from "./rule";
import { DECISIVE, RULES } from "./rules";

/** What a shop may set for itself. */
export interface AuditOptions {
  /** How far an analyser may be off, in points of oxygen; 0.5 unless set. Trade practice, no source. */
  readonly analyserMarginPoints?: number;
}

const DEFAULT_ANALYSER_MARGIN_POINTS = 0.5;

/**
 * Judges every fill of a log on its own day, by a country's rules. What could not be judged is counted with its reason:
 * unknown is never a pass. Findings are ordered by harm.
 */
export function audit(log: Log, rules: CountryRules, options: AuditOptions = {}): AuditResult {
  const shop = shopOf(rules, options);
  const columns = new LogColumns(log);
  const collector = new Collector(columns);
  const able = RULES.filter((rule) => {
    const missing = rule.needs.find((fields) => !columns.hasAny(fields));
    if (missing) collector.noColumn(rule, missing, log.fills.length);
    return missing === undefined;
  });
  for (const filled of filledCylinders(log, rules)) {
    for (const rule of able) {
      const verdict = rule.judge(filled, shop);
      if (verdict.kind === "fault") collector.fault(rule, verdict, filled);
      else if (verdict.kind === "not judged") collector.notJudged(rule, verdict, filled);
    }
  }
  return collector.result(DECISIVE, log.fills.length > 0 && log.unreadable.length === 0);
}

/** What a shop judges by: the country's rules, and its own settings. */
export function shopOf(rules: CountryRules, options: AuditOptions = {}): Shop {
  const points = options.analyserMarginPoints ?? DEFAULT_ANALYSER_MARGIN_POINTS;
  return { rules, analyserMargin: points / 100 };
}
