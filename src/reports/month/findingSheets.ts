import { ruleInWords } from "../../audit/rules/ruleInWords";
import { acceptancesOf, noLongerFound, type Acceptance } from "../../audit/judge/acceptance";
import type { AuditResult, Finding } from "../../audit/judge/finding";
import type { DraftCell, SheetDraft } from "../../sheet/draft/draft";
import type { TableColumn } from "../../sheet/draft/blocks";
import { FORMATS, LOOKS } from "../../sheet/draft/looks";
import { sheetOf } from "../../sheet/draft/sheetOf";
import { BASIS_WORDS, isoDayCell, linkCell, severityCell } from "../cells";
import { noLongerFoundBlocks } from "../noLongerFound";
import type { MonthOptions } from "./options";
import type { Period } from "./period";
import { pageOf } from "./page";

/** The findings of a month: those that stand open, and those that somebody has accepted with a reason. */
export interface SortedFindings {
  readonly open: readonly Finding[];
  readonly accepted: readonly {
    readonly finding: Finding;
    readonly reason: string;
    readonly by: string;
    readonly on: string;
  }[];
  /** What was accepted of fills of the month, and is not found in them now. */
  readonly noLongerFound: readonly Acceptance[];
}

export function sortedFindings(
  { findings }: AuditResult,
  { accepted }: MonthOptions,
  period: Period,
): SortedFindings {
  const acceptances = acceptancesOf(accepted);
  const ofMonth = accepted?.filter(({ fillDate }) => fillDate.startsWith(period.iso));
  const of = findings.map((finding) => ({ finding, acceptance: acceptances.of(finding) }));
  return {
    open: of.flatMap(({ finding, acceptance }) => (acceptance ? [] : [finding])),
    accepted: of.flatMap(({ finding, acceptance }) =>
      acceptance ? [{ finding, reason: acceptance.reason, by: acceptance.by, on: acceptance.on }] : [],
    ),
    noLongerFound: noLongerFound(ofMonth, findings),
  };
}

/** As narrow as they can be: the wider a sheet, the smaller it is printed. */
const FILL_IN: readonly TableColumn[] = [
  { heading: "Action taken", style: LOOKS.fillIn, leastCharacters: 14 },
  { heading: "By", style: LOOKS.fillIn },
  { heading: "Closed on", style: LOOKS.fillIn, format: FORMATS.date, leastCharacters: 10 },
];

const WHAT: readonly TableColumn[] = [
  { heading: "Severity" },
  { heading: "What is wrong", mostCharacters: 34 },
  { heading: "Cylinder" },
  { heading: "Filled on" },
  { heading: "Cell", mostCharacters: 18 },
];

export function findingsSheet({ open }: SortedFindings, period: Period, options: MonthOptions): SheetDraft {
  return sheetOf(
    `Findings ${period.iso}`,
    [
      { kind: "title", lines: [`Findings, ${period.text}`] },
      {
        kind: "quiet",
        lines: [
          "Ordered by harm. Each is judged by what the log says of the day of the fill. Write in what was done, by whom, and when it was closed.",
        ],
      },
      {
        kind: "table",
        name: `Findings_${period.iso}`,
        columns: [
          ...WHAT,
          { heading: "What to do", mostCharacters: 28 },
          { heading: "Who says so", mostCharacters: 20 },
          ...FILL_IN,
        ],
        rows: open.map((finding) => [
          ...whatCells(finding, options),
          finding.todo,
          `${BASIS_WORDS[finding.basis]}: ${finding.source}`,
          "",
          "",
          "",
        ]),
        empty: `Nothing is open for ${period.text}. See "Not checked" for what could not be judged.`,
      },
    ],
    pageOf(options, period, true),
  );
}

function whatCells(finding: Finding, { logFile }: MonthOptions): readonly DraftCell[] {
  return [
    severityCell(finding.severity),
    finding.message,
    finding.serial,
    isoDayCell(finding.fillDate),
    linkCell(finding.cell, logFile),
  ];
}

/** Undefined where nothing was accepted. */
export function acceptedSheet(
  { accepted, noLongerFound: gone }: SortedFindings,
  period: Period,
  options: MonthOptions,
): SheetDraft | undefined {
  if (accepted.length + gone.length === 0) return undefined;
  return sheetOf(
    `Accepted ${period.iso}`,
    [
      { kind: "title", lines: [`Accepted findings, ${period.text}`] },
      {
        kind: "quiet",
        lines: [
          "Found by the check and let stand by the shop, with its reason. They are in no count of open findings.",
        ],
      },
      {
        kind: "table",
        name: `Accepted_${period.iso}`,
        columns: [...WHAT, { heading: "Reason" }, { heading: "Accepted by" }, { heading: "On" }],
        rows: accepted.map(({ finding, reason, by, on }) => [
          ...whatCells(finding, options),
          reason,
          by,
          isoDayCell(on),
        ]),
        empty: "Nothing that was accepted is found now.",
      },
      ...noLongerFoundBlocks(`Accepted_before_${period.iso}`, gone),
    ],
    pageOf(options, period, true),
  );
}

export function notCheckedSheet(
  { notChecked }: AuditResult,
  period: Period,
  options: MonthOptions,
): SheetDraft {
  return sheetOf(
    `Not checked ${period.iso}`,
    [
      { kind: "title", lines: [`Not checked, ${period.text}`] },
      {
        kind: "quiet",
        lines: [
          "What could not be read or judged is not passed. The cell is the first of several to look at.",
        ],
      },
      {
        kind: "table",
        name: `Not_checked_${period.iso}`,
        columns: [
          { heading: "Rule", mostCharacters: 48 },
          { heading: "Why", mostCharacters: 52 },
          { heading: "Fills", format: FORMATS.whole, style: { horizontal: "right" } },
          { heading: "Cell", mostCharacters: 24 },
        ],
        rows: notChecked.map(({ rule, why, count, cells: [first] }) => [
          ruleInWords(rule),
          why,
          count,
          first ? linkCell(first, options.logFile) : "",
        ]),
        empty: "Every rule could be judged for every fill.",
      },
    ],
    pageOf(options, period, false),
  );
}
