import { isBlank, type Sheet } from "../../sheet/sheet";
import { asItStands, withFilled, type FilledSheet, type Filling } from "./filledCells";

/** No sheet kept by hand has as many; a hostile one may. */
const MOST_CELLS_FILLED = 200_000;

/**
 * A date written once for the whole day, in one tall cell, holds for every row beside it. Rows that hold nothing else
 * stay blank.
 */
export function filledDown(original: Sheet): FilledSheet {
  const fillings: Filling[] = [];
  for (const { firstRow, lastRow, firstColumn: column } of original.merges) {
    const value = original.rows[firstRow]?.values[column];
    if (value === undefined || value === null) continue;
    const last = Math.min(lastRow, original.rows.length - 1);
    for (let row = firstRow + 1; row <= last && fillings.length < MOST_CELLS_FILLED; row++) {
      if (!original.rows[row]!.values.every(isBlank))
        fillings.push({ row, column, of: { row: firstRow, column } });
    }
  }
  return withFilled(asItStands(original), fillings, "from the merged cell above");
}
