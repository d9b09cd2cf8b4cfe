import type { AuditResult, Finding, NotChecked } from "../../audit/judge/finding";
import { rehearse, type Rehearsal } from "../../audit/lists/rehearsal";
import type { AirTest, AuditOptions, HouseOverrides } from "../../audit/shop/shop";
import { suspectSteps, type SuspectCylinder } from "../../audit/lists/suspectGas";
import { countryRules, type CountryRules } from "../../cylinders/countryRules";
import type { Log } from "../../log/log";
import { told, type Told } from "../kit/told";

/** What may be asked of a log besides its check; plain values, as they travel to a worker. */
export type Question =
  | {
      readonly kind: "bad air test";
      readonly failed: AirTest;
      /** The good ones before and after it that the shop knows of, besides those on record. */
      readonly good: readonly AirTest[];
    }
  | {
      readonly kind: "rehearsal";
      readonly country: string;
      /** Figures to try out, by the id of the setting. */
      readonly house: HouseOverrides;
    };

export type Answer = SuspectGas | ComparedRules;

/** Every cylinder that may hold gas of a bad air test. */
export interface SuspectGas {
  readonly kind: "bad air test";
  readonly failed: AirTest;
  readonly cylinders: readonly SuspectCylinder[];
}

/** The same log under two sets of rules: sums, and of the differences the gravest. */
export interface ComparedRules {
  readonly kind: "rehearsal";
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

/** Answers a question about a log, a step at a time. */
export function* answerSteps(
  log: Log,
  rules: CountryRules,
  options: AuditOptions,
  question: Question,
): Generator<Told, Answer, undefined> {
  if (question.kind === "bad air test") {
    const { kind, failed, good } = question;
    const airTests = [...(options.airTests ?? []), ...good];
    const steps = suspectSteps(log, rules, failed, { ...options, airTests });
    return { kind, failed, cylinders: yield* told("Following the gas", 0.5, 1, steps) };
  }
  const { kind, country, house } = question;
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
    kind,
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
