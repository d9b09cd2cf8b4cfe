import type { CountryRules } from "../cylinders/countryRules";
import type { Log } from "../log/log";
import { Collector } from "./collector";
import type { AuditResult } from "./finding";
import { filledCylinders } from "./filledCylinders";
import { LogColumns } from "./logColumns";
import { type AuditOptions, shopOf } from "./shop";
import { DECISIVE, RULES } from "./rules";

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
