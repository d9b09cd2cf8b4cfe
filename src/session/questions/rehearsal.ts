import type { AuditResult, Finding, NotChecked } from "../../audit/judge/finding";
import { rehearse, type Rehearsal } from "../../audit/lists/rehearsal";
import type { HouseOverrides } from "../../audit/shop/shop";
import { countryRules } from "../../cylinders/countryRules";
import type { LogBook } from "../logBook";
import { auditOptionsOf } from "../terms";
import { told, type ToldSteps } from "../worker/told";

/** What is tried out. */
export interface Tried {
  readonly country: string;
  /** Figures to try out, by the id of the setting. */
  readonly house: HouseOverrides;
}

/** The same log under two sets of rules: sums, and of the differences the gravest. */
export interface ComparedRules {
  readonly country: string;
  readonly now: CountedFindings;
  readonly then: CountedFindings;
  readonly appear: Differences<Finding>;
  readonly vanish: Differences<Finding>;
  readonly change: Differences<Rehearsal["change"][number]>;
  readonly lessChecked: readonly NotChecked[];
}

export interface CountedFindings extends Readonly<Record<Finding["severity"], number>> {
  readonly notChecked: number;
}

export interface Differences<T> {
  readonly count: number;
  readonly first: readonly T[];
}

/** As many differences as anybody reads; the counts tell of the others. */
const DIFFERENCES_KEPT = 50;

/** The log judged by the shop's rules and by those tried out. */
export function* rehearsal(book: LogBook, { country, house }: Tried): ToldSteps<ComparedRules> {
  const { rules, terms } = book;
  const log = yield* book.log(0, 0.5);
  const options = auditOptionsOf(terms);
  // Figures of the shop's own are for its own country; elsewhere only what is tried out holds.
  const tried = country === rules.country ? { ...options.house, ...house } : house;
  const rehearsing = rehearse(
    log,
    { rules, options },
    { rules: countryRules(country), options: { ...options, house: tried } },
  );
  const compared = yield* told("Judging by both sets of rules", 0.5, 1, rehearsing);
  const { now, then, appear, vanish, change, lessChecked } = compared;
  return {
    country,
    now: countsOf(now),
    then: countsOf(then),
    appear: firstOf(appear),
    vanish: firstOf(vanish),
    change: firstOf(change),
    lessChecked,
  };
}

function countsOf({ findings, notChecked }: AuditResult): CountedFindings {
  const counts = { stop: 0, breach: 0, warn: 0, note: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  return { ...counts, notChecked: notChecked.reduce((sum, { count }) => sum + count, 0) };
}

function firstOf<T>(all: readonly T[]): Differences<T> {
  return { count: all.length, first: all.slice(0, DIFFERENCES_KEPT) };
}
