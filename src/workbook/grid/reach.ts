import { columnIndex } from "../../sheet/sheet";

/** How many rows a sheet of the grid has. */
export const ROWS = { atLeast: 2000, beyondUse: 1000, most: 1_048_576 };

/** How many columns it has: more than these slow down its drawing. */
export const COLUMNS = { atLeast: 52, beyondUse: 10, referencedAtMost: 256 };

export interface Reach {
  readonly rows: number;
  readonly columns: number;
}

/** What only looks like a reference: text such as "EAN32", and names of sheets. */
const QUOTED = /"[^"]*"|'[^']*'/g;
const REFERENCE = /\$?\b([A-Z]{1,3})\$?([1-9]\d{0,6})\b(?!\()/gi;

/** How many rows and columns formulas look at: a reference beyond the grid would be an error in it. */
export function reachOf(formulas: Iterable<string>): Reach {
  let rows = 0;
  let columns = 0;
  for (const formula of formulas) {
    for (const [, letters, number] of formula.replace(QUOTED, "").matchAll(REFERENCE)) {
      rows = Math.max(rows, Number(number));
      columns = Math.max(columns, columnIndex(letters!) + 1);
    }
  }
  return { rows, columns };
}
