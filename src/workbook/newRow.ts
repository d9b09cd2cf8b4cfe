import { isBlank, type SheetRow } from "../sheet/sheet";

/** A row near the end of a sheet, with the formulas in it, without their equals signs. */
export interface EndRow extends SheetRow {
  readonly formulas: readonly (string | undefined)[];
}

/** How far up from the end totals are looked for. */
export const END_ROWS = 60;

/** Ranges of the formula's own sheet, in texts and behind names of sheets left alone. */
const RANGES =
  /"[^"]*"|(?:'[^']*'|[\w.]+)!\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?|(?<![\w.$])(\$?[A-Z]{1,3}\$?)(\d+):(\$?[A-Z]{1,3}\$?)(\d+)(?![\w(.])/gi;

/**
 * The row that a new one is put into, of a sheet that ends in `rows`, whose first is row `first` of the sheet: below
 * the last one that is no total. A row is a total where `isTotals` says so, or where a formula in it looks at the rows
 * above it.
 */
export function placeOfNewRow(
  rows: readonly EndRow[],
  first: number,
  isTotals: (row: SheetRow) => boolean,
): number {
  const last = rows.findLastIndex((row, at) => !isEmpty(row) && !isTotals(row) && !looksUp(row, first + at));
  const end = rows.findLastIndex((row) => !isEmpty(row));
  return first + (last < 0 ? end : last) + 1;
}

function isEmpty({ values, formulas }: EndRow): boolean {
  return values.every(isBlank) && formulas.every((formula) => formula === undefined);
}

function looksUp({ formulas }: EndRow, row: number): boolean {
  return formulas.some((formula) => rangesIn(formula ?? "").some(({ from, to }) => from < to && to <= row));
}

/** First and last rows of the ranges in a formula, counted from 1. */
function rangesIn(formula: string): readonly { readonly from: number; readonly to: number }[] {
  return [...formula.matchAll(RANGES)].flatMap(([, , from, , to]) =>
    from === undefined ? [] : [{ from: Number(from), to: Number(to) }],
  );
}

/**
 * A formula of a total that takes in the new row as well: ranges that ended in the row above it end in it. Undefined
 * where there is none such.
 *
 * @param newRow counted from 0
 */
export function takingIn(formula: string, newRow: number): string | undefined {
  const stretched = formula.replace(
    RANGES,
    (range, left?: string, from?: string, right?: string, to?: string) =>
      left !== undefined && Number(from) < Number(to) && Number(to) === newRow
        ? `${left}${from}:${right}${newRow + 1}`
        : range,
  );
  return stretched === formula ? undefined : stretched;
}
