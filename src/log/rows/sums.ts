import type { CellValue, Sheet, SheetRow } from "../../sheet/sheet";
import { isTooLong, tidy } from "../cells/cell";
import { numbersIn } from "../cells/numbers";

/** How far a sum reaches up; beyond, a number alone is not compared. */
const ROWS_SUMMED = 2000;

/**
 * Whether the numbers of a row are the sum or the average of those above them, up to `firstRow`: a total without a
 * label.
 */
export function sumsUp(sheet: Sheet, row: SheetRow, at: number, firstRow: number): boolean {
  return row.values.some((value, column) => {
    const total = amountIn(value);
    return total !== undefined && isSum(total, column, sheet, at, firstRow);
  });
}

function isSum(total: number, column: number, sheet: Sheet, at: number, firstRow: number): boolean {
  const numbers: number[] = [];
  /** Amounts kept as text, which a spreadsheet's own sum leaves out; in text files all are. */
  const texts: number[] = [];
  for (let above = at - 1; above >= firstRow && at - above <= ROWS_SUMMED; above--) {
    const value = sheet.rows[above]!.values[column];
    const amount = amountIn(value);
    if (amount !== undefined) (typeof value === "number" ? numbers : texts).push(amount);
  }
  return sumsTo(total, numbers) || (texts.length > 0 && sumsTo(total, [...numbers, ...texts]));
}

/** The average of equal numbers is one more of them: no proof. */
function sumsTo(total: number, amounts: readonly number[]): boolean {
  if (amounts.length < 2) return false;
  const sum = amounts.reduce((each, other) => each + other, 0);
  const differ = amounts.some((amount) => amount !== amounts[0]);
  return near(total, sum) || (differ && near(total, sum / amounts.length));
}

function amountIn(value: CellValue | undefined): number | undefined {
  if (typeof value === "number") return value;
  return typeof value === "string" && !isTooLong(value)
    ? numbersIn(tidy(value.replace(/[$€£]/g, "")))[0]
    : undefined;
}

function near(one: number, other: number): boolean {
  return Math.abs(one - other) <= 0.005 + Math.abs(other) * 1e-9;
}
