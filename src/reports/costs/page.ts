import type { CostReport } from "../../costs/report";
import type { LogSheet } from "../../log/log";
import type { ReportPage } from "../../sheet/draft/sheetOf";

export interface CostSheetOptions {
  /** Whether customers are named; as a rule they are not. */
  readonly customers: boolean;
  /** The sheets of the log, to lead from a fill to its cell. */
  readonly sheets: readonly LogSheet[];
}

/** What all these sheets print like. */
export function costPage({ paper, month }: CostReport): ReportPage {
  return {
    paper,
    landscape: true,
    footer: month === undefined ? "Fill costs" : `Fill costs, ${month}`,
    own: "fill costs",
  };
}

export function periodInWords({ month }: CostReport): string {
  return month ?? "all fills of the log";
}
