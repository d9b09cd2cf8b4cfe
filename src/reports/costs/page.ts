import type { CostReport } from "../../costs/report";
import type { LogSheet } from "../../log/log";

export interface CostSheetOptions {
  /** Whether customers are named; as a rule they are not. */
  readonly customers: boolean;
  /** The sheets of the log, to lead from a fill to its cell. */
  readonly sheets: readonly LogSheet[];
}

/** What all these sheets print like. */
export function costPage({ units, month }: CostReport) {
  const paper = units === "us" ? ("Letter" as const) : ("A4" as const);
  return { paper, landscape: true, footer: month === undefined ? "Fill costs" : `Fill costs, ${month}` };
}

export function periodInWords({ month }: CostReport): string {
  return month ?? "all fills of the log";
}
