import { isBlank, type Sheet } from "../sheet/sheet";
import type { Cell } from "./cells/cell";
import { readCell, UNSETTLED, type Kind } from "./fieldKinds";

/** The different cells of a column, as far as it takes to know what it holds. */
export interface ColumnSample {
  readonly cells: readonly Cell[];
}

const ROWS_LOOKED_AT = 4000;
const DIFFERENT_CELLS = 300;

/** Different cells of a column below its headings, from rows spread evenly over the sheet. */
export function sampleOf(sheet: Sheet, column: number, firstRow: number): ColumnSample {
  const step = Math.max(1, Math.floor((sheet.rows.length - firstRow) / ROWS_LOOKED_AT));
  const cells = new Map<unknown, Cell>();
  for (let at = firstRow; at < sheet.rows.length && cells.size < DIFFERENT_CELLS; at += step) {
    const row = sheet.rows[at]!;
    const value = row.values[column];
    if (value === undefined || value === null || cells.has(value) || isBlank(value)) continue;
    cells.set(value, { value, format: row.formats?.[column], dateSystem: sheet.dateSystem });
  }
  return { cells: [...cells.values()] };
}

/** Share of the cells that can be read as this kind, be it with a doubt; 0 for an empty column. */
export function shareRead(sample: ColumnSample, kind: Kind): number {
  let read = 0;
  let said = 0;
  for (const cell of sample.cells) {
    const reading = readCell(cell, kind, UNSETTLED);
    if (reading.kind === "blank") continue;
    said++;
    if (reading.kind !== "unreadable") read++;
  }
  return said === 0 ? 0 : read / said;
}

/** Share of cells whose text fits a pattern. */
export function shareOf(sample: ColumnSample, fits: (cell: Cell) => boolean): number {
  return sample.cells.length === 0 ? 0 : sample.cells.filter(fits).length / sample.cells.length;
}
