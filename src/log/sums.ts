import type { Sheet, SheetRow } from "../sheet/sheet";

/** How far a sum reaches up; beyond, a number alone is not compared. */
const ROWS_SUMMED = 2000;

/**
 * Whether the numbers of a row are the sum or the average of those above them, up to `firstRow`: a total without a
 * label.
 */
export function sumsUp(sheet: Sheet, row: SheetRow, at: number, firstRow: number): boolean {
  const columns = row.values.flatMap((value, column) => (typeof value === "number" ? [column] : []));
  return columns.some((column) => {
    const total = row.values[column] as number;
    let sum = 0;
    let numbers = 0;
    for (let above = at - 1; above >= firstRow && at - above <= ROWS_SUMMED; above--) {
      const value = sheet.rows[above]!.values[column];
      if (typeof value !== "number") continue;
      sum += value;
      numbers++;
    }
    return numbers >= 2 && (near(total, sum) || near(total, sum / numbers));
  });
}

function near(one: number, other: number): boolean {
  return Math.abs(one - other) <= 0.005 + Math.abs(other) * 1e-9;
}
