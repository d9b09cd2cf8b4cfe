import { ruleInWords } from "../../audit/rules/ruleInWords";
import type { TableBlock, TableChart } from "../../sheet/draft/blocks";
import type { SheetDraft } from "../../sheet/draft/draft";
import { CHART_COLOURS, FORMATS } from "../../sheet/draft/looks";
import { sheetOf } from "../../sheet/draft/sheetOf";
import type { FillMethod } from "../../log/log";
import type { Finding } from "../../audit/judge/finding";
import { MIX_KINDS, mixKind, type MixKind, type MonthFill, type MonthOfFills } from "./monthFills";
import type { MonthOptions } from "./options";
import { pageOf } from "./page";
import type { Period } from "./period";

const RIGHT = { style: { horizontal: "right" }, format: FORMATS.whole } as const;
const METHODS: readonly (readonly [FillMethod | undefined, string])[] = [
  ["air", "Air"],
  ["premix", "Premixed bank"],
  ["continuous", "Continuous"],
  ["partial pressure", "Partial pressure"],
  ["membrane", "Membrane"],
  [undefined, "Not known"],
];
const MOST_KINDS_OF_FINDING = 20;

/** How many fills of each mix, by method and week, and what was found most; each chart with its table. */
export function fillsSheet(
  month: MonthOfFills,
  findings: readonly Finding[],
  period: Period,
  options: MonthOptions,
): SheetDraft {
  return sheetOf(
    `Fills ${period.iso}`,
    [
      { kind: "title", lines: [`Fills, ${period.text}`] },
      {
        kind: "quiet",
        lines: ["Each fill once, a twin set too. The mix is the one analysed, else the one ordered."],
      },
      { kind: "section", lines: ["By mix and method"] },
      byMethod(month.fills, period),
      { kind: "section", lines: ["By week"] },
      byWeek(month.fills, period),
      { kind: "section", lines: ["Findings by kind"] },
      byFinding(findings, period),
    ],
    pageOf(options, period, false),
  );
}

function byMethod(fills: readonly MonthFill[], { iso, text }: Period): TableBlock {
  const count = (kind: MixKind | undefined, method: FillMethod | undefined | "all") =>
    fills.filter(
      (fill) =>
        (kind === undefined || mixKind(fill.mix) === kind) && (method === "all" || methodOf(fill) === method),
    ).length;
  const used = METHODS.filter(([method]) => count(undefined, method) > 0);
  const row = (name: string, kind: MixKind | undefined) => [
    name,
    ...used.map(([method]) => count(kind, method)),
    count(kind, "all"),
  ];
  return {
    kind: "table",
    name: `Fills_by_method_${iso}`,
    columns: [
      { heading: "Mix" },
      ...used.map(([, heading]) => ({ heading, ...RIGHT })),
      { heading: "All fills", ...RIGHT },
    ],
    rows: kindsIn(fills).map((kind) => row(kind, kind)),
    below: [row("All", undefined)],
    empty: `The log has no fills in ${text}.`,
  };
}

function methodOf({ filled }: MonthFill): FillMethod | undefined {
  const { method } = filled.fill.fields;
  return method.kind === "value" ? method.value : undefined;
}

/** Weeks are counted from the first of the month, so that every fill of the month is in one of them. */
function byWeek(fills: readonly MonthFill[], { iso, text, first, last }: Period): TableBlock {
  const kinds = kindsIn(fills);
  const starts = [0, 7, 14, 21, 28].filter((start) => first + start <= last);
  const rows = starts.map((start) => {
    const [from, to] = [first + start, Math.min(first + start + 6, last)];
    const ofWeek = fills.filter(({ day }) => day >= from && day <= to);
    return [
      `${from - first + 1} to ${to - first + 1}`,
      ...kinds.map((kind) => ofWeek.filter(({ mix }) => mixKind(mix) === kind).length),
    ];
  });
  return {
    kind: "table",
    name: `Fills_by_week_${iso}`,
    columns: [{ heading: "Days" }, ...kinds.map((heading) => ({ heading, ...RIGHT }))],
    rows: fills.length === 0 ? [] : rows,
    empty: `The log has no fills in ${text}.`,
    chart: {
      kind: "stacked",
      title: `Fills per week by mix, ${text}`,
      axes: ["Days of the month", "Fills"],
      says: `Fills in each week of ${text}, by mix; the table below holds the figures.`,
      rowsHigh: 16,
      ...wholeSteps(
        rows.map(([, ...counts]) => counts.reduce<number>((sum, count) => sum + Number(count), 0)),
      ),
      series: kinds.map((name, index) => ({
        name,
        categories: 0,
        values: index + 1,
        colour: CHART_COLOURS[MIX_KINDS.indexOf(name) % CHART_COLOURS.length]!,
      })),
    },
  };
}

function byFinding(findings: readonly Finding[], { iso, text }: Period): TableBlock {
  const counts = new Map<string, number>();
  for (const { rule } of findings) counts.set(rule, (counts.get(rule) ?? 0) + 1);
  const ordered = [...counts].sort(([, one], [, other]) => other - one);
  const rest = ordered.slice(MOST_KINDS_OF_FINDING).reduce((sum, [, count]) => sum + count, 0);
  const rows = ordered
    .slice(0, MOST_KINDS_OF_FINDING)
    .map(([rule, count]): [string, number] => [ruleInWords(rule), count]);
  if (rest > 0) rows.push(["All other kinds", rest]);
  return {
    kind: "table",
    name: `Findings_by_kind_${iso}`,
    columns: [
      { heading: "Kind", mostCharacters: 60 },
      { heading: "Findings", ...RIGHT },
    ],
    rows,
    empty: `Nothing is open for ${text}.`,
    chart: {
      kind: "bars",
      title: `Findings by kind, ${text}`,
      axes: ["", "Findings"],
      says: `How many findings of each kind stand open in ${text}; the table below holds the figures.`,
      rowsHigh: 8 + rows.length,
      ...wholeSteps(rows.map(([, count]) => count)),
      series: [{ name: "Findings", categories: 0, values: 1, colour: CHART_COLOURS[0] }],
    },
  };
}

/** So few that a spreadsheet would mark halves between them. */
const FEW = 10;

function wholeSteps(counts: readonly number[]): Pick<TableChart, "step"> {
  return Math.max(...counts) <= FEW ? { step: 1 } : {};
}

function kindsIn(fills: readonly MonthFill[]): readonly MixKind[] {
  const found = new Set(fills.map(({ mix }) => mixKind(mix)));
  return MIX_KINDS.filter((kind) => found.has(kind));
}
