import { isBlank, type CellValue, type Sheet, type SheetRow } from "../sheet/sheet";

/** A sheet whose cells merged downwards each hold what the merged cell shows. */
export interface FilledSheet {
  readonly sheet: Sheet;
  readonly original: Sheet;
  /** Whether a cell has what it holds from a merged cell above it. */
  readonly isMerged: (row: number, column: number) => boolean;
}

/** No sheet kept by hand has as many; a hostile one may. */
const MOST_CELLS_FILLED = 200_000;

/**
 * A date written once for the whole day, in one tall cell, holds for every row beside it. Rows that hold nothing else
 * stay blank.
 */
export function filledDown(original: Sheet): FilledSheet {
  const rows = new Map<number, { values: CellValue[]; formats: (string | undefined)[] }>();
  const filled = new Map<number, Set<number>>();
  let cells = 0;
  for (const { firstRow, lastRow, firstColumn } of original.merges) {
    const value = original.rows[firstRow]?.values[firstColumn];
    if (value === undefined || value === null) continue;
    const last = Math.min(lastRow, original.rows.length - 1);
    for (let at = firstRow + 1; at <= last && cells < MOST_CELLS_FILLED; at++) {
      const row = original.rows[at]!;
      if (row.values.every(isBlank)) continue;
      const copy = rows.get(at) ?? { values: [...row.values], formats: [...(row.formats ?? [])] };
      while (copy.values.length <= firstColumn) copy.values.push(null);
      copy.values[firstColumn] = value;
      copy.formats[firstColumn] = original.rows[firstRow]!.formats?.[firstColumn];
      rows.set(at, copy);
      filled.set(at, (filled.get(at) ?? new Set()).add(firstColumn));
      cells++;
    }
  }
  if (rows.size === 0) return { sheet: original, original, isMerged: () => false };
  const sheet = {
    ...original,
    rows: original.rows.map((row, at): SheetRow => {
      const copy = rows.get(at);
      return copy ? { ...row, ...copy } : row;
    }),
  };
  return { sheet, original, isMerged: (row, column) => filled.get(row)?.has(column) === true };
}
