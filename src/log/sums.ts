import type { Sheet, SheetRow } from "../sheet/sheet";
import { numbersIn } from "./cells/numbers";

/** How far a sum reaches up; beyond, a number alone is not compared. */
const ROWS_SUMMED = 2000;

/**
 * Whether the numbers of a row are the sum or the average of those above them, up to `firstRow`: a total without a
 * label.
 */
export function sumsUp(sheet: Sheet, row: SheetRow, at: number, firstRow: number): boolean {
  return row.values.some(
    (total, column) => typeof total === "number" && isSum(total, column, sheet, at, firstRow),
  );
}

function isSum(total: number, column: number, sheet: Sheet, at: number, firstRow: number): boolean {
  let numbers = 0;
  let sum = 0;
  /** Amounts kept as text, which a spreadsheet's own sum leaves out. */
  let inTexts = 0;
  for (let above = at - 1; above >= firstRow && at - above <= ROWS_SUMMED; above--) {
    const value = sheet.rows[above]!.values[column];
    if (typeof value === "string") inTexts += numbersIn(value.replace(/[^\d.,-]/g, ""))[0] ?? 0;
    if (typeof value !== "number") continue;
    sum += value;
    numbers++;
  }
  if (numbers + (inTexts > 0 ? 1 : 0) < 2) return false;
  return near(total, sum) || near(total, sum + inTexts) || near(total, sum / numbers);
}

function near(one: number, other: number): boolean {
  return Math.abs(one - other) <= 0.005 + Math.abs(other) * 1e-9;
}
