import type { CostReport } from "../../costs/report";
import { groupedBy, sumOf, type CostGroup, type CostSum, type Grouping } from "../../costs/sums";
import { UNIT_NAMES, volume } from "../../gas/units";
import type { DraftCell, SheetDraft } from "../../sheet/draft/draft";
import type { Block, TableChart, TableColumn } from "../../sheet/draft/blocks";
import { CHART_COLOURS, FORMATS } from "../../sheet/draft/looks";
import { sheetOf } from "../../sheet/draft/sheetOf";
import { eachFillSheet } from "./eachFill";
import { gasBookSheet } from "./gasBookSheet";
import { costPage, periodInWords, type CostSheetOptions } from "./page";
import { howItWasWorkedOut } from "./howItWasWorkedOut";
import { notCostedSheet } from "./notCosted";
import { pricesUsedSheet } from "./pricesUsed";
import { tryItSheet } from "./tryIt";

/** The sheets on what fills cost: sums, each fill, what was not costed, prices used, one to play with, the gas book. */
export function costSheets(report: CostReport, options: CostSheetOptions): readonly SheetDraft[] {
  return [
    summarySheet(report, options),
    eachFillSheet(report, options),
    notCostedSheet(report, options),
    pricesUsedSheet(report),
    tryItSheet(report),
    ...(report.book ? [gasBookSheet(report, report.book)] : []),
  ];
}

function summarySheet(report: CostReport, { customers }: CostSheetOptions): SheetDraft {
  const { log, month } = report;
  const sum = sumOf(log.costed);
  const groupings: readonly Grouping[] = [
    ...(month === undefined ? (["month"] as const) : []),
    "mix",
    "size",
    ...(customers ? (["customer"] as const) : []),
  ];
  return sheetOf(
    `Fill costs ${month ?? "all"}`,
    [
      { kind: "title", lines: [`Fill costs, ${periodInWords(report)}`] },
      { kind: "facts", facts: factsOf(report, sum) },
      ...groupings.flatMap((grouping) => groupBlocks(grouping, report)),
      { kind: "section", lines: ["How it was worked out"] },
      { kind: "quiet", lines: howItWasWorkedOut(report) },
    ],
    costPage(report),
  );
}

function factsOf({ log }: CostReport, sum: CostSum): readonly (readonly [string, DraftCell])[] {
  const money = (value: number): DraftCell => ({ value, format: FORMATS.money });
  return [
    ["Fills costed", sum.fills],
    ["Not costed", log.notCosted.length],
    ["Cost", money(sum.cost)],
    ["Charged", money(sum.charged)],
    ["Margin", money(sum.margin)],
    ["Unbilled", sum.unbilled],
    ["Cost of unbilled fills", money(sum.unbilledCost)],
    ["Charge not known", sum.chargeNotKnown],
    ["In no cost here", log.leftOut.length === 0 ? "nothing" : log.leftOut.join(", ")],
  ];
}

const TITLES: Readonly<Record<Grouping, string>> = {
  month: "By month",
  mix: "By mix",
  customer: "By customer",
  size: "By size of cylinder",
};
const HEADINGS: Readonly<Record<Grouping, string>> = {
  month: "Month",
  mix: "Mix",
  customer: "Customer",
  size: "Cylinder",
};

function groupBlocks(grouping: Grouping, report: CostReport): readonly Block[] {
  const groups = groupedBy(grouping, report.log.costed);
  const unit = UNIT_NAMES[report.units].volume;
  const columns: readonly TableColumn[] = [
    { heading: HEADINGS[grouping] },
    { heading: "Fills", format: FORMATS.whole },
    { heading: `Oxygen (${unit})`, format: FORMATS.whole },
    { heading: `Helium (${unit})`, format: FORMATS.whole },
    { heading: "Compressor (h)", format: FORMATS.oneDecimal },
    { heading: "Cost", format: FORMATS.money },
    { heading: "Cost of one", format: FORMATS.money },
    { heading: "Charged", format: FORMATS.money },
    { heading: "Margin", format: FORMATS.money },
    { heading: "Unbilled", format: FORMATS.whole },
    { heading: "Charge not known", format: FORMATS.whole },
  ];
  const row = (group: CostGroup): readonly DraftCell[] => [
    group.name,
    group.fills,
    volume(group.oxygenL, report.units),
    volume(group.heliumL, report.units),
    group.compressorHours,
    group.cost,
    group.cost / group.fills,
    group.charged,
    group.margin,
    group.unbilled,
    group.chargeNotKnown,
  ];
  const says = `Cost and charge ${TITLES[grouping].toLowerCase()}: ${groups
    .slice(0, 5)
    .map(({ name, cost, charged }) => `${name} cost ${cost.toFixed(2)}, charged ${charged.toFixed(2)}`)
    .join("; ")}.`;
  return [
    { kind: "section", lines: [TITLES[grouping]] },
    {
      kind: "table",
      name: `Costs_by_${grouping}`,
      columns,
      rows: groups.map(row),
      empty: "No fill was costed.",
      ...(grouping === "mix" && { chart: chartOf(says) }),
    },
  ];
}

/** Of the table of mixes: columns 5 and 7 are cost and charge. */
function chartOf(says: string): TableChart {
  return {
    kind: "columns",
    title: "Cost and charge by mix",
    axes: ["Mix", "Money"],
    rowsHigh: 14,
    says,
    series: [
      { name: "Cost", colour: CHART_COLOURS[0], categories: 0, values: 5 },
      { name: "Charged", colour: CHART_COLOURS[1], categories: 0, values: 7 },
    ],
  };
}
