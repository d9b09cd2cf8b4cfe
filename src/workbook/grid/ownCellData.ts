import type { ICellData, Nullable } from "@univerjs/core";
import type { CellLink } from "../../sheet/draft/draft";
import type { SheetContent } from "../file/content";

/**
 * What Brimbook knows of a cell besides what stands in it. The engine carries it with the cell, wherever rows and
 * columns are put, and neither calculates with it nor draws it.
 */
export interface OwnCellData {
  readonly marked?: true;
  readonly link?: CellLink;
}

export function ownDataOf(cell: Nullable<ICellData>): OwnCellData {
  return (cell?.custom?.brimbook ?? {}) as OwnCellData;
}

/** The cell's own data with these changes; a cell without any is left without. */
export function withOwnData(
  cell: ICellData,
  changes: { [Key in keyof OwnCellData]: OwnCellData[Key] | undefined },
) {
  const custom: Record<string, unknown> = { ...cell.custom };
  const own = Object.entries({ ...ownDataOf(cell), ...changes }).filter(([, value]) => value !== undefined);
  if (own.length > 0) custom.brimbook = Object.fromEntries(own);
  else delete custom.brimbook;
  if (Object.keys(custom).length > 0) cell.custom = custom;
  else delete cell.custom;
}

/** Puts links and marks of a sheet on its cells; cells that are blank come to be. */
export function addOwnData(
  { links = [], marks = [] }: Pick<SheetContent, "links" | "marks">,
  cellAt: (row: number, column: number) => ICellData,
): void {
  for (const { row, column, link } of links) withOwnData(cellAt(row, column), { link });
  for (const { firstRow, lastRow, firstColumn, lastColumn } of marks) {
    for (let row = firstRow; row <= lastRow; row++)
      for (let column = firstColumn; column <= lastColumn; column++)
        withOwnData(cellAt(row, column), { marked: true });
  }
}
