import type { CountryRules } from "../../cylinders/countryRules";
import type { Log } from "../../log/log";
import { part } from "../../sheet/steps";
import { auditSteps } from "../audit";
import type { AuditResult, Finding, NotChecked } from "../judge/finding";
import type { AuditOptions } from "../shop/shop";

/** Rules to judge a log by: a country's, with or without figures of the shop's own. */
export interface JudgedBy {
  readonly rules: CountryRules;
  readonly options?: AuditOptions | undefined;
}

/** The same log under two sets of rules, side by side. */
export interface Rehearsal {
  readonly now: AuditResult;
  readonly then: AuditResult;
  /** Found only under the other rules. */
  readonly appear: readonly Finding[];
  /** Found only under the rules that hold now. */
  readonly vanish: readonly Finding[];
  /** Found under both, and weighed differently. */
  readonly change: readonly { readonly now: Finding; readonly then: Finding }[];
  /** Fills that only the other rules could not judge, by rule and reason. */
  readonly lessChecked: readonly NotChecked[];
}

/** Judges a log by the rules that hold and by others, a step at a time, each telling which share is done. */
export function* rehearse(log: Log, now: JudgedBy, then: JudgedBy): Generator<number, Rehearsal, undefined> {
  const first = yield* part(0, 0.5, auditSteps(log, now.rules, now.options));
  const second = yield* part(0.5, 1, auditSteps(log, then.rules, then.options));
  const found = new Map(keyed(first.findings));
  const change: { now: Finding; then: Finding }[] = [];
  const appear: Finding[] = [];
  for (const [key, finding] of keyed(second.findings)) {
    const same = found.get(key);
    found.delete(key);
    if (same === undefined) appear.push(finding);
    else if (same.severity !== finding.severity) change.push({ now: same, then: finding });
  }
  const lacks = new Map(first.notChecked.map(({ rule, why, count }) => [`${rule} ${why}`, count]));
  return {
    now: first,
    then: second,
    appear,
    vanish: [...found.values()],
    change,
    lessChecked: second.notChecked.filter(
      ({ rule, why, count }) => count > (lacks.get(`${rule} ${why}`) ?? 0),
    ),
  };
}

/** Each finding by its rule, cylinder and cell, whatever its words; several of those are told apart by number. */
function keyed(findings: readonly Finding[]): readonly (readonly [string, Finding])[] {
  const seen = new Map<string, number>();
  return findings.map((finding) => {
    const { rule, serial, cell } = finding;
    const key = `${rule} ${serial} ${cell.sheet} ${cell.row} ${cell.column}`;
    const nth = seen.get(key) ?? 0;
    seen.set(key, nth + 1);
    return [`${key} ${nth}`, finding];
  });
}
