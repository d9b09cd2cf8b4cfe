import { useDeferredValue, useEffect, useMemo, useState } from "react";
import type { Acceptances } from "../../../audit/judge/acceptance";
import { SEVERITIES } from "../../../audit/judge/finding";
import type { CheckReport } from "../report";
import { matcher, NO_FILTER, type Filter, type Group, type ShownFinding } from "./filter";

/** So many findings stand on the screen at once; five thousand would make every key slow. */
export const FINDINGS_PER_PAGE = 50;

export const GROUPS: readonly Group[] = [...SEVERITIES, "accepted"];

/** The findings of a report: by harm, as filtered, a page at a time. */
export function useFindings(report: CheckReport, accepted: Acceptances) {
  const [filter, setFilter] = useState(NO_FILTER);
  const [page, setPage] = useState(0);
  const text = useDeferredValue(filter.text);
  const cylinder = useDeferredValue(filter.cylinder);
  const byHarm = useMemo(() => sortByHarm(report, accepted), [report, accepted]);
  const matching = useMemo(
    () => byHarm.filter(matcher({ ...filter, text, cylinder })),
    [byHarm, filter, text, cylinder],
  );
  const pages = Math.max(1, Math.ceil(matching.length / FINDINGS_PER_PAGE));
  const shownPage = Math.min(page, pages - 1);
  useEffect(() => {
    setPage(0);
  }, [filter, report]);
  return {
    filter,
    change: (next: Partial<Filter>) => {
      setFilter((before) => ({ ...before, ...next }));
    },
    clear: () => {
      setFilter(NO_FILTER);
    },
    counts: useMemo(() => groupCounts(byHarm), [byHarm]),
    all: byHarm,
    matching,
    page: shownPage,
    pages,
    setPage,
    shown: useMemo(
      () => matching.slice(shownPage * FINDINGS_PER_PAGE, (shownPage + 1) * FINDINGS_PER_PAGE),
      [matching, shownPage],
    ),
  };
}

export type Findings = ReturnType<typeof useFindings>;

/** Grouped by severity, what was accepted last; within one, the audit's own order of harm stands. */
export function sortByHarm({ findings, facts }: CheckReport, accepted: Acceptances): readonly ShownFinding[] {
  const all = findings.map((finding, key): ShownFinding => {
    const acceptance = accepted.of(finding);
    return { finding, ...facts[key], acceptance, group: acceptance ? "accepted" : finding.severity, key };
  });
  return GROUPS.flatMap((wanted) => all.filter(({ group }) => group === wanted));
}

function groupCounts(all: readonly ShownFinding[]): Readonly<Record<Group, number>> {
  const counts = { stop: 0, breach: 0, warn: 0, note: 0, accepted: 0 };
  for (const { group } of all) counts[group] += 1;
  return counts;
}

/** One thing that the list can be narrowed to, and how many findings it leaves. */
export interface Choice {
  readonly value: string;
  readonly count: number;
}

/** All that the list can be narrowed to. */
export function choicesIn(all: readonly ShownFinding[]) {
  return {
    rules: countsOf(all, ({ finding }) => finding.rule),
    cylinders: countsOf(all, ({ finding }) => finding.serial),
    filledBy: countsOf(all, ({ filledBy }) => filledBy ?? ""),
    /** `2026-10`, the latest first. */
    months: countsOf(all, ({ finding }) => finding.fillDate.slice(0, 7)).toReversed(),
  };
}

function countsOf(all: readonly ShownFinding[], of: (shown: ShownFinding) => string): readonly Choice[] {
  const counts = new Map<string, number>();
  for (const shown of all) {
    const value = of(shown);
    if (value !== "") counts.set(value, (counts.get(value) ?? 0) + 1);
  }
  return [...counts]
    .map(([value, count]) => ({ value, count }))
    .sort((one, other) => one.value.localeCompare(other.value, "en", { numeric: true }));
}
