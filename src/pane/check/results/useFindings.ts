import { useDeferredValue, useEffect, useMemo, useState } from "react";
import { SEVERITIES, type Finding, type Severity } from "../../../audit/finding";
import type { CellValue } from "../../../sheet/sheet";
import type { CheckReport } from "../report";
import { placeName } from "../useJump";

/** So many findings stand on the screen at once; five thousand would make every key slow. */
export const FINDINGS_PER_PAGE = 50;

export interface ShownFinding {
  readonly finding: Finding;
  readonly held: CellValue | undefined;
  /** Its place in the report. */
  readonly key: number;
}

export interface Filter {
  /** None chosen shows all. */
  readonly severities: readonly Severity[];
  /** A rule's id, or "" for all. */
  readonly rule: string;
  readonly text: string;
}

const NO_FILTER: Filter = { severities: [], rule: "", text: "" };

/** The findings of a report: by harm, as filtered, a page at a time. */
export function useFindings(report: CheckReport) {
  const [filter, setFilter] = useState(NO_FILTER);
  const [page, setPage] = useState(0);
  const text = useDeferredValue(filter.text);
  const byHarm = useMemo(() => sortByHarm(report), [report]);
  const matching = useMemo(
    () => byHarm.filter(matcher({ severities: filter.severities, rule: filter.rule, text })),
    [byHarm, filter.severities, filter.rule, text],
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
    counts: useMemo(() => severityCounts(report.findings), [report]),
    rules: useMemo(() => ruleCounts(report.findings), [report]),
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

/** Grouped by severity; within one, the audit's own order of harm stands. */
function sortByHarm({ findings, held }: CheckReport): readonly ShownFinding[] {
  const all = findings.map((finding, key) => ({ finding, held: held[key], key }));
  return SEVERITIES.flatMap((severity) => all.filter(({ finding }) => finding.severity === severity));
}

function matcher({ severities, rule, text }: Filter): (shown: ShownFinding) => boolean {
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  return ({ finding }) => {
    if (severities.length > 0 && !severities.includes(finding.severity)) return false;
    if (rule !== "" && finding.rule !== rule) return false;
    if (words.length === 0) return true;
    const { serial, message, todo, fillDate, source, cell } = finding;
    const said = [finding.rule, serial, message, todo, fillDate, source, placeName(cell)]
      .join(" ")
      .toLowerCase();
    return words.every((word) => said.includes(word));
  };
}

function severityCounts(findings: readonly Finding[]): Readonly<Record<Severity, number>> {
  const counts = { stop: 0, breach: 0, warn: 0, note: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  return counts;
}

function ruleCounts(
  findings: readonly Finding[],
): readonly { readonly rule: string; readonly count: number }[] {
  const counts = new Map<string, number>();
  for (const { rule } of findings) counts.set(rule, (counts.get(rule) ?? 0) + 1);
  return [...counts]
    .map(([rule, count]) => ({ rule, count }))
    .sort((a, b) => a.rule.localeCompare(b.rule, "en"));
}
