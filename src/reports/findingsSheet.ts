import { ruleInWords } from "../audit/rules/ruleInWords";
import type { Acceptance } from "../audit/judge/acceptance";
import type { AuditResult, Finding } from "../audit/judge/finding";
import type { Block, TableColumn } from "../sheet/draft/blocks";
import type { DraftCell, Paper, SheetDraft } from "../sheet/draft/draft";
import { FORMATS, LOOKS } from "../sheet/draft/looks";
import { sheetOf } from "../sheet/draft/sheetOf";
import { BASIS_WORDS, isoDayCell, linkCell, severityCell } from "./cells";
import { counted } from "../words/counts";
import { noLongerFoundBlocks } from "./noLongerFound";

export interface ListedFinding {
  readonly finding: Finding;
  /** Empty where the log names nobody. */
  readonly filledBy: string;
  readonly acceptance: Acceptance | undefined;
}

export interface FindingsSheetInput extends Pick<AuditResult, "notChecked" | "overrides"> {
  /** Those to list, the gravest first. */
  readonly findings: readonly ListedFinding[];
  /** What the shop accepted earlier, and this check does not find. */
  readonly noLongerFound: readonly Acceptance[];
  /** How many the check found in all. */
  readonly found: number;
  /** ISO date of the check. */
  readonly asOf: string;
  /** Whose rules: `United States`. */
  readonly rules: string;
  /** `612 rows = 598 fills + …` */
  readonly rows: string;
  readonly paper: Paper;
  /** The program that wrote it, with its version. */
  readonly program: string;
}

/** So many findings are written; a log with more is better read by filter. */
export const MOST_FINDINGS_WRITTEN = 5000;

/** The findings of a check as a sheet of the workbook itself, each with a way to its cell. */
export function findingsSheet(input: FindingsSheetInput): SheetDraft {
  const { findings, asOf, program } = input;
  const written = findings.slice(0, MOST_FINDINGS_WRITTEN);
  return sheetOf(
    `Findings ${asOf}`,
    [
      { kind: "title", lines: [`Findings of ${asOf}`] },
      { kind: "facts", facts: factsOf(input) },
      {
        kind: "caution",
        lines: [
          "This judges what was written, not the gas: analyse every cylinder. Its markings and your local rules come first.",
        ],
      },
      {
        kind: "table",
        name: "Findings",
        columns: FINDING_COLUMNS,
        rows: written.map(findingCells),
        empty: "Nothing was found in what was checked.",
      },
      { kind: "section", lines: ["Not checked: what could not be judged is not passed"] },
      notCheckedTable(input),
      ...noLongerFoundBlocks("Accepted_before", input.noLongerFound),
      ...overridesOf(input),
    ],
    { paper: input.paper, landscape: true, footer: `Findings of ${asOf} (${program})`, own: "findings" },
  );
}

function factsOf(input: FindingsSheetInput): readonly (readonly [string, DraftCell])[] {
  const { findings, found, rules, rows, notChecked, asOf } = input;
  const accepted = findings.filter(({ acceptance }) => acceptance).length;
  const shown = Math.min(findings.length, MOST_FINDINGS_WRITTEN);
  const others =
    shown < found ? ` Listed: ${counted(shown, "finding")} of ${counted(found, "finding")}.` : "";
  const unjudged = notChecked.reduce((sum, { count }) => sum + count, 0);
  return [
    ["As of", isoDayCell(asOf)],
    ["Rules of", rules],
    ["Rows", rows],
    ["Open", `${counted(findings.length - accepted, "finding")}.${others}`],
    ["Accepted", `${counted(accepted, "finding")}, with a reason of the shop`],
    ["Not checked", counted(unjudged, "judgement")],
  ];
}

const FINDING_COLUMNS: readonly TableColumn[] = [
  { heading: "Severity" },
  { heading: "What is wrong", mostCharacters: 36 },
  { heading: "What to do", mostCharacters: 30 },
  { heading: "Cylinder" },
  { heading: "Filled on" },
  { heading: "Filled by" },
  { heading: "Cell", mostCharacters: 18 },
  { heading: "Rule", mostCharacters: 22 },
  { heading: "Who says so", mostCharacters: 22 },
  { heading: "Accepted", mostCharacters: 22 },
];

function findingCells({ finding, filledBy, acceptance }: ListedFinding): readonly DraftCell[] {
  const { severity, message, todo, serial, fillDate, cell, rule, basis, source } = finding;
  return [
    severityCell(severity),
    message,
    todo,
    serial,
    isoDayCell(fillDate),
    filledBy,
    linkCell(cell, undefined),
    ruleInWords(rule),
    `${BASIS_WORDS[basis]}: ${source}`,
    acceptance ? `${acceptance.reason} (${acceptance.by}, ${acceptance.on})` : "",
  ];
}

function notCheckedTable({ notChecked }: FindingsSheetInput): Block {
  return {
    kind: "table",
    name: "Not_checked",
    columns: [
      { heading: "Fills", format: FORMATS.whole, style: { horizontal: "right" } },
      { heading: "Why", mostCharacters: 36 },
      { heading: "Rule", mostCharacters: 30 },
      { heading: "First cell" },
    ],
    rows: notChecked.map(({ rule, count, why, cells: [first] }) => [
      count,
      why,
      ruleInWords(rule),
      first ? linkCell(first, undefined) : "",
    ]),
    empty: "Every rule could be judged for every fill.",
  };
}

function overridesOf({ overrides }: FindingsSheetInput): readonly Block[] {
  if (overrides.length === 0) return [];
  return [
    { kind: "section", lines: ["Figures of this shop's own"] },
    {
      kind: "table",
      name: "Own_figures",
      columns: [
        { heading: "Figure", style: LOOKS.text },
        { heading: "What it is", mostCharacters: 36 },
        { heading: "Instead of", mostCharacters: 30 },
        { heading: "Source" },
      ],
      rows: overrides.map(({ name, figure, instead, source, problem }) => [
        problem === undefined ? figure : `${figure}: not used. ${problem}`,
        name,
        instead,
        source,
      ]),
      empty: "",
    },
  ];
}
