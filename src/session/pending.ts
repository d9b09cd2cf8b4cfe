import type { WorkbookChange } from "../workbook/workbook";

/** Rows of a sheet, the last included; counted from 0. */
export interface RowSpan {
  readonly firstRow: number;
  readonly lastRow: number;
}

/** More places apart than this are read as one. */
const MOST_SPANS = 50;

/** What is to be read again, gathered from what the host tells. */
export class Pending {
  /** The whole workbook. */
  all = false;
  /** The list of sheets. */
  list = false;
  /** Sheet by sheet: all of it, or these rows. */
  readonly sheets = new Map<string, "whole" | readonly RowSpan[]>();

  get isEmpty(): boolean {
    return !this.all && !this.list && this.sheets.size === 0;
  }

  add(change: WorkbookChange): void {
    if (change.kind === "sheets") {
      this.list = true;
      return;
    }
    const before = this.sheets.get(change.sheet) ?? [];
    if (change.kind === "sheet" || before === "whole") this.sheets.set(change.sheet, "whole");
    else this.sheets.set(change.sheet, joined([...before, change]));
  }
}

/** The same rows, from top to bottom, in few spans. */
function joined(spans: readonly RowSpan[]): readonly RowSpan[] {
  const apart: { firstRow: number; lastRow: number }[] = [];
  for (const { firstRow, lastRow } of [...spans].sort((one, other) => one.firstRow - other.firstRow)) {
    const last = apart.at(-1);
    if (last && (firstRow <= last.lastRow + 1 || apart.length === MOST_SPANS))
      last.lastRow = Math.max(last.lastRow, lastRow);
    else apart.push({ firstRow, lastRow });
  }
  return apart;
}
