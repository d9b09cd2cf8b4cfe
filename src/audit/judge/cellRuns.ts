import { cellName, type CellAddress } from "../../sheet/sheet";
import type { CellRun } from "./finding";

interface ColumnOfCells {
  readonly sheet: string;
  readonly column: number;
  readonly rows: number[];
}

/** Gathers cells as they come, a million of them where need be, to be told as runs down a column. */
export class CellRuns {
  readonly #columns: ColumnOfCells[] = [];
  #last: ColumnOfCells | undefined;

  add({ sheet, row, column }: CellAddress): void {
    const rows = this.#rowsOf(sheet, column);
    if (rows.at(-1) !== row) rows.push(row);
  }

  /** Column by column in the order in which they came first, each from top to bottom. */
  all(): readonly CellRun[] {
    return this.#columns.flatMap(({ sheet, column, rows }) => {
      const runs: { sheet: string; column: number; row: number; lastRow: number }[] = [];
      for (const row of rows.toSorted((one, other) => one - other)) {
        const run = runs.at(-1);
        if (run !== undefined && row <= run.lastRow + 1) run.lastRow = row;
        else runs.push({ sheet, column, row, lastRow: row });
      }
      return runs;
    });
  }

  #rowsOf(sheet: string, column: number): number[] {
    let found = this.#last;
    if (found === undefined || found.column !== column || found.sheet !== sheet) {
      found = this.#columns.find((each) => each.column === column && each.sheet === sheet);
      if (found === undefined) this.#columns.push((found = { sheet, column, rows: [] }));
      this.#last = found;
    }
    return found.rows;
  }
}

/** `B7`, or `B7:B12`. */
export function runName({ row, lastRow, column }: CellRun): string {
  const first = cellName({ row, column });
  return lastRow === row ? first : `${first}:${cellName({ row: lastRow, column })}`;
}
