import type { DueLists } from "../../audit/lists/dueLists";
import type { AuditResult } from "../../audit/judge/finding";
import type { HousePatterns } from "../../audit/lists/housePatterns";
import type { Receipt } from "../../counter/receive/receipt";
import type { Waiting } from "../../counter/receive/waitingRows";
import type { LogColumn, RowCounts, SheetKind, UnreadableRow } from "../../log/log";
import type { CellValue } from "../../sheet/sheet";
import type { ListedPrices } from "../../counter/plan/prices";
import type { Answer } from "./questions";

export { count, counted } from "../../words/counts";
export { reconciliation, reconciliationLine } from "../../reports/reconciliation";

/** How one sheet was understood, without its rows: small enough to hand about. */
export interface SheetReading {
  readonly name: string;
  readonly kind: SheetKind;
  /** Why it is neither a log nor a register, in a sentence. */
  readonly why: string | undefined;
  readonly columns: readonly LogColumn[];
  readonly rows: RowCounts;
  readonly hiddenRows: number;
  /** Choices were remembered for this sheet, but its headings have changed since. */
  readonly headingsChanged: boolean;
}

/** How the sheets were understood. */
export interface LogReading {
  readonly sheets: readonly SheetReading[];
  readonly unreadable: readonly UnreadableRow[];
}

/** A log, read and judged. */
export interface CheckReport extends LogReading, AuditResult {
  /** Whose rules it was judged by, as a code. */
  readonly country: string;
  /** What else is to be known of each finding, in the order of the findings. */
  readonly facts: readonly FindingFacts[];
  /** What is on record of the cylinders asked for, in the order asked. */
  readonly receipts?: readonly Receipt[];
  /** The price list of the workbook, where it has one. */
  readonly prices?: ListedPrices;
  /** What the rows asked for say of cylinders that wait to be filled. */
  readonly waiting?: Waiting;
  /** Which cylinders are out of date today or fall due; absent where nothing was judged. */
  readonly due?: DueLists;
  /** Ordered against analysed; absent where nothing was judged. */
  readonly patterns?: HousePatterns;
  /** The answer to the question asked. */
  readonly answer?: Answer;
}

export interface FindingFacts {
  /** What its cell held when it was judged. */
  readonly held: CellValue;
  /** Who filled, as the log names them; empty where it does not, or the finding is about the register. */
  readonly filledBy: string;
}

/** The sum over several sheets. */
export function countRows(sheets: readonly SheetReading[]): RowCounts {
  const sum = (of: (rows: RowCounts) => number) => sheets.reduce((so, { rows }) => so + of(rows), 0);
  return {
    total: sum((rows) => rows.total),
    fills: sum((rows) => rows.fills),
    cylinders: sum((rows) => rows.cylinders),
    notFilled: sum((rows) => rows.notFilled ?? 0),
    struckOut: sum((rows) => rows.struckOut ?? 0),
    blank: sum((rows) => rows.blank),
    headings: sum((rows) => rows.headings),
    totals: sum((rows) => rows.totals),
    unreadable: sum((rows) => rows.unreadable),
  };
}
