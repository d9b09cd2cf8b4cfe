import type { LogColumn, LogSheet } from "./log";
import { logColumnOf } from "./columns/logColumn";
import type { Knowledge, SettledColumn } from "./settle/open";
import { settleTable } from "./settle/settle";
import type { SheetPlan } from "./sheetPlan";
import type { Steps } from "../sheet/steps";
import { TableReading, type RowsRead } from "./rows/tableReading";

/** A sheet read: what it is, and what its rows hold. */
export interface SheetReading extends RowsRead {
  readonly sheet: LogSheet;
}

/** Reads one sheet as planned, a few rows at a time. */
export function* readSheet(plan: SheetPlan, knowledge: Knowledge): Steps<SheetReading> {
  const into: RowsRead = { rowKinds: [], fills: [], cylinders: [], unreadable: [] };
  const columns: LogColumn[] = [];
  for (const tablePlan of plan.tables) {
    const { kind, proposals, table } = tablePlan;
    yield table.firstRow / plan.sheet.rows.length;
    const settled: ReadonlyMap<number, SettledColumn> =
      kind === "neither" ? new Map() : settleTable(plan, tablePlan, knowledge);
    yield* new TableReading(plan, tablePlan, settled, into).read();
    const rows = plan.tables.length > 1 ? { first: table.firstRow, last: table.lastRow } : undefined;
    columns.push(...proposals.map((proposal) => logColumnOf(proposal, settled.get(proposal.column), rows)));
  }
  const kind = plan.tables.find((table) => table.kind !== "neither")?.kind ?? "neither";
  const sheet: LogSheet = {
    name: plan.sheet.name,
    kind,
    ...(kind === "neither" ? { why: whyNeither(plan) } : {}),
    columns,
    rowKinds: into.rowKinds,
    hiddenRows: plan.sheet.rows.filter((row) => row.hidden === true).length,
    headingsChanged: plan.headingsChanged,
    source: plan.original,
  };
  return { ...into, sheet };
}

function whyNeither(plan: SheetPlan): string {
  return `“${plan.sheet.name}” ${whatItLacks(plan)}. Say what its columns are, or leave the sheet out.`;
}

/** Why a sheet is not part of the log, in a sentence. */
export function whyLeftOut(plan: SheetPlan): string {
  if (plan.own !== undefined)
    return `“${plan.sheet.name}” was left out: Brimbook wrote it (${plan.own}), and it is no log.`;
  return `“${plan.sheet.name}” was left out: it ${whatItLacks(plan)}. To have it read, say what its columns are.`;
}

function whatItLacks({ sheet, tables }: SheetPlan): string {
  if (sheet.rows.length === 0) return "is empty";
  return tables.some(({ table }) => table.firstHeading !== undefined)
    ? "has headings, but they are those of neither fills nor cylinders"
    : "has no headings of fills or cylinders in its first rows";
}
