import { isBlank, type Sheet } from "../../sheet/sheet";
import { asSeen, isTooLong, type Cell } from "../cells/cell";
import { readStamps } from "../cells/stamp";
import { readCell, UNSETTLED, type Kind } from "../fieldKinds";
import type { Table } from "../tables/table";

/** The different cells of a column, as far as it takes to know what it holds. */
export interface ColumnSample {
  readonly cells: readonly Cell[];
}

const ROWS_LOOKED_AT = 4000;
const DIFFERENT_CELLS = 300;

/** Different cells of a column below its headings, from rows spread evenly over the table. */
export function sampleOf(sheet: Sheet, table: Table, column: number): ColumnSample {
  const step = Math.max(1, Math.floor((table.lastRow - table.firstRow) / ROWS_LOOKED_AT));
  const cells = new Map<unknown, Cell>();
  const first = table.firstHeading ?? Infinity;
  for (let at = table.firstRow; at <= table.lastRow && cells.size < DIFFERENT_CELLS; at += step) {
    const row = sheet.rows[at]!;
    const value = row.values[column];
    if (value === undefined || value === null || cells.has(value) || isTooLong(value)) continue;
    if (isBlank(value)) continue;
    // Titles stand above the headings, and headings may come again.
    if (at <= first || table.headingRows.has(at)) continue;
    cells.set(value, asSeen({ value, format: row.formats?.[column], dateSystem: sheet.dateSystem }));
  }
  return { cells: [...cells.values()] };
}

/** Share of the cells that can be read as this kind, be it with a doubt; 0 for an empty column. */
export function shareRead(sample: ColumnSample, kind: Kind): number {
  let read = 0;
  let said = 0;
  for (const cell of sample.cells) {
    const reading =
      kind === "stamp" ? readStamps(cell, UNSETTLED.stamp)[0]! : readCell(cell, kind, UNSETTLED);
    if (reading.kind === "blank") continue;
    said++;
    if (reading.kind !== "unreadable" && reading.kind !== "unknown word") read++;
  }
  return said === 0 ? 0 : read / said;
}

/** Share of the cells that fit. */
export function shareOf(sample: ColumnSample, fits: (cell: Cell) => boolean): number {
  return sample.cells.length === 0 ? 0 : sample.cells.filter(fits).length / sample.cells.length;
}

/** A number that is not whole in per cent: analyses are, orders are not. */
export function hasDecimals({ value }: Cell): boolean {
  if (typeof value === "string") return /\d[.,]\d/.test(value);
  return typeof value === "number" && !Number.isInteger(Number((value < 1 ? value * 100 : value).toFixed(6)));
}
