import type { Area } from "../sheet/sheet";

/** The rows of a selection, as every host has them: first and last of each area. */
export type RowSpan = Pick<Area, "firstRow" | "lastRow">;

/** Each row of these areas once, from top to bottom, none beyond the last that holds anything. */
export function rowsOf(areas: readonly RowSpan[], lastRow: number): number[] {
  const rows = new Set<number>();
  for (const area of areas)
    for (let row = area.firstRow; row <= Math.min(area.lastRow, lastRow); row += 1) rows.add(row);
  return [...rows].sort((one, other) => one - other);
}
