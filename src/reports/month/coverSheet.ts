import { SEVERITIES, type AuditResult, type Basis } from "../../audit/judge/finding";
import type { Shop } from "../../audit/shop/shop";
import { dateText } from "../../words/inSentences";
import type { CountryRules } from "../../cylinders/countryRules";
import type { Log } from "../../log/log";
import type { Block, FactsBlock } from "../../sheet/draft/blocks";
import type { DraftCell, SheetDraft } from "../../sheet/draft/draft";
import { FORMATS, LOOKS } from "../../sheet/draft/looks";
import { sheetOf } from "../../sheet/draft/sheetOf";
import { severityCell } from "../cells";
import { counted } from "../../words/counts";
import { airBlocks } from "./air";
import type { SortedFindings } from "./findingSheets";
import type { CylinderLists } from "./listSheets";
import type { MonthOfFills } from "./monthFills";
import { numberingText } from "./numbering";
import type { MonthOptions } from "./options";
import { pageOf } from "./page";
import type { Period } from "./period";

/** All that the cover sums up. */
export interface Cover {
  readonly log: Log;
  readonly rules: CountryRules;
  readonly shop: Shop;
  readonly month: MonthOfFills;
  readonly result: AuditResult;
  readonly findings: SortedFindings;
  readonly lists: CylinderLists;
  readonly period: Period;
}

/** A number that stands for one wording of the rules; a checksum that stands for one set of figures. */
export interface Marks {
  readonly rulesMark: string;
  /** Absent until the figures stand. */
  readonly checksum?: string;
}

const FILL_IN: DraftCell = { value: null, style: LOOKS.fillIn };
const CAUTIONS = [
  "This report says what the log says. It is no inspection of a cylinder, a compressor or a gas, and a fill that is not listed is not thereby safe.",
  "What could not be read or judged is listed as not checked; it is never counted as passed.",
  "Local codes, the cylinder's markings and licensed practice come first. Every cylinder is analysed by blender and diver before it is breathed.",
];

export function coverSheet(cover: Cover, options: MonthOptions, marks: Marks): SheetDraft {
  const { period } = cover;
  const blocks: readonly Block[] = [
    { kind: "title", lines: [`Fill report, ${period.text}`] },
    ...(options.shopName === undefined ? [] : [{ kind: "section" as const, lines: [options.shopName] }]),
    { kind: "facts", facts: facts(cover, options, marks) },
    { kind: "section", lines: ["Findings"] },
    findingsBlock(cover),
    ...overrideBlocks(cover),
    ...airBlocks(cover.shop, period),
    { kind: "section", lines: ["Sign-off"] },
    signOff(options, marks),
    { kind: "caution", lines: CAUTIONS },
  ];
  return sheetOf(`Month ${period.iso}`, blocks, { ...pageOf(options, period, false), onePage: true });
}

function facts(
  { log, rules, month, result, findings, lists, period }: Cover,
  options: MonthOptions,
  { rulesMark }: Marks,
): FactsBlock["facts"] {
  const { rows } = log;
  const shop: FactsBlock["facts"] = options.shopName === undefined ? [["Shop", FILL_IN]] : [];
  return [
    ...shop,
    ["Period", `${dateText(period.first)} to ${dateText(period.last)}`],
    ["As the log stood on", dateText(options.asOf)],
    ["Rules", `${rules.name}, wording ${rulesMark} (${options.program})`],
    ["Fills", fillsText(month)],
    ["Rows of the log", `${rows.total.toLocaleString("en-US")} = ${rowParts(log)}`],
    ["Fill numbers", numberingText(month.fills, log)],
    ["Open findings", findings.open.length === 0 ? "none" : counted(findings.open.length, "finding")],
    [
      "Not checked",
      result.notChecked.length === 0
        ? "nothing"
        : `${counted(result.notChecked.length, "reason")}; hydro, visual and oxygen rating were ${result.fullyJudged ? "" : "not "}judged for every fill`,
    ],
    ["Call first", counted(lists.recall.length, "cylinder")],
    ["Do not fill", counted(lists.notToFill.length, "cylinder")],
  ];
}

function fillsText({ fills, cylinders, undated }: MonthOfFills): string {
  const twins =
    cylinders.length > fills.length
      ? `; ${counted(cylinders.length, "cylinder")} filled, as a twin set is two`
      : "";
  const doubtful =
    undated.length === 0
      ? ""
      : `; ${counted(undated.length, "fill")} of the log without a date that can be read, checked here and in no figure`;
  return `${counted(fills.length, "fill")}${twins}${doubtful}`;
}

function rowParts({ rows }: Log): string {
  const parts: readonly (readonly [number, string, string?])[] = [
    [rows.fills, "fill"],
    [rows.cylinders, "cylinder"],
    [rows.notFilled ?? 0, "row not filled", "rows not filled"],
    [rows.struckOut ?? 0, "row struck out", "rows struck out"],
    [rows.headings, "heading"],
    [rows.totals, "row of totals", "rows of totals"],
    [rows.blank, "blank", "blank"],
  ];
  const named = parts
    .filter(([count]) => count > 0)
    .map(([count, one, several]) => counted(count, one, several));
  return [...named, `${rows.unreadable.toLocaleString("en-US")} not read`].join(" + ");
}

/** Law apart from what the trade or the house asks for. */
function findingsBlock({ findings, result, period }: Cover): Block {
  const right = { style: { horizontal: "right" }, format: FORMATS.whole } as const;
  const { open, accepted } = findings;
  const count = (severity: string, basis?: Basis) =>
    open.filter((each) => each.severity === severity && (basis === undefined || each.basis === basis)).length;
  const rows = SEVERITIES.map((severity): readonly DraftCell[] => [
    severityCell(severity),
    count(severity),
    count(severity, "law"),
    count(severity, "practice"),
    count(severity, "house"),
    accepted.filter(({ finding }) => finding.severity === severity).length,
  ]);
  const notChecked = result.notChecked.reduce((sum, each) => sum + each.count, 0);
  return {
    kind: "table",
    name: `Month_${period.iso}`,
    columns: [
      { heading: "Severity" },
      { heading: "Open", ...right },
      { heading: "Against the law", ...right },
      { heading: "Against trade practice", ...right },
      { heading: "Against house policy", ...right },
      { heading: "Accepted with a reason", ...right },
    ],
    rows: [...rows, [{ value: "Not checked", style: { bold: true } }, notChecked, null, null, null, null]],
    empty: "",
  };
}

function overrideBlocks({ result, period }: Cover): readonly Block[] {
  const { overrides } = result;
  if (overrides.length === 0)
    return [{ kind: "facts", facts: [["Changed settings", "none: the rules stand as they came"]] }];
  return [
    { kind: "section", lines: ["Changed settings"] },
    {
      kind: "table",
      name: `Settings_${period.iso}`,
      columns: [
        { heading: "Setting" },
        { heading: "In this shop" },
        { heading: "Instead of" },
        { heading: "Who says so" },
      ],
      rows: overrides.map(({ name, figure, instead, source, problem }) => [
        name,
        problem === undefined ? figure : `${figure}, not used: ${problem}`,
        instead,
        source,
      ]),
      empty: "",
    },
  ];
}

function signOff({ preparedBy, asOf }: MonthOptions, { checksum }: Marks): Block {
  const signed: FactsBlock["facts"] =
    preparedBy === undefined || checksum === undefined
      ? [
          ["Prepared by", FILL_IN],
          ["On", FILL_IN],
        ]
      : [
          ["Prepared by", `${preparedBy}, ${dateText(asOf)}`],
          [
            "Checksum",
            `${checksum}\nof every figure in this report: the same log, day and rules give the same one again.`,
          ],
        ];
  return {
    kind: "facts",
    facts: [
      ...signed,
      ["Signature", FILL_IN],
      ["Reviewed by", FILL_IN],
      ["On", FILL_IN],
      ["Signature", FILL_IN],
    ],
  };
}
