import { Temporal } from "temporal-polyfill";
import { dayNumber } from "../cylinders/calendar";
import type { CountryRules } from "../cylinders/countryRules";
import type { Log } from "../log/log";
import { Collector } from "./collector";
import type { AuditResult } from "./finding";
import { filledCylinders } from "./filledCylinders";
import { LogColumns } from "./logColumns";
import { shopWith } from "./houseSettings";
import type { AuditOptions, Shop } from "./shop";
import { DECISIVE, RULES } from "./rules";

/**
 * Judges every fill of a log on its own day, by a country's rules. What could not be judged is counted with its reason:
 * unknown is never a pass. Findings are ordered by harm.
 */
export function audit(log: Log, rules: CountryRules, options: AuditOptions = {}): AuditResult {
  const { shop: withFigures, overrides } = shopWith(rules, options.house);
  const shop = shopOnDay(withFigures, options);
  const columns = new LogColumns(log);
  const collector = new Collector(columns);
  const able = RULES.filter((rule) => {
    const missing = rule.needs.find((fields) => !columns.hasAny(fields));
    if (missing) collector.noColumn(rule, missing, log.fills.length);
    return missing === undefined;
  });
  for (const filled of filledCylinders(log, shop.rules)) {
    for (const rule of able) {
      const verdict = rule.judge(filled, shop);
      if (verdict.kind === "fault") collector.fault(rule, verdict, filled);
      else if (verdict.kind === "not judged") collector.notJudged(rule, verdict, filled);
    }
  }
  const complete = log.fills.length > 0 && log.unreadable.length === 0;
  return { ...collector.result(DECISIVE, complete), overrides };
}

function shopOnDay(shop: Shop, { airTests, sources, asOf }: AuditOptions): Shop {
  return {
    ...shop,
    ...(sources && { sources }),
    ...(airTests && { airTests: [...airTests].sort((one, other) => (one.date < other.date ? -1 : 1)) }),
    ...(asOf !== undefined && { today: dayNumber(Temporal.PlainDate.from(asOf)) }),
  };
}
