import type { CellStyle } from "../cellStyle";
import type { Area } from "../sheet";
import { styledCell, type SheetDraft } from "./draft";

export interface StyledArea {
  readonly style: CellStyle;
  readonly area: Area;
}

/** The looks of a sheet as few rectangles: a host that is asked for each cell apart would take its time. */
export function styledAreas({ rows }: Pick<SheetDraft, "rows">): readonly StyledArea[] {
  const done: StyledArea[] = [];
  let open: StyledArea[] = [];
  rows.forEach(({ cells }, row) => {
    const before = open;
    open = runsOf(cells.map((cell) => styledCell(cell).style)).map(({ style, first, last }): StyledArea => {
      const above = before.find(
        (each) => each.style === style && each.area.firstColumn === first && each.area.lastColumn === last,
      );
      const firstRow = above?.area.firstRow ?? row;
      return { style, area: { firstRow, firstColumn: first, lastRow: row, lastColumn: last } };
    });
    done.push(...before.filter((each) => !open.some((next) => continues(next, each))));
  });
  return [...done, ...open];
}

function continues(next: StyledArea, each: StyledArea): boolean {
  return (
    next.style === each.style &&
    next.area.firstRow === each.area.firstRow &&
    next.area.firstColumn === each.area.firstColumn &&
    next.area.lastColumn === each.area.lastColumn
  );
}

function runsOf(
  styles: readonly (CellStyle | undefined)[],
): readonly { readonly style: CellStyle; readonly first: number; readonly last: number }[] {
  const runs: { style: CellStyle; first: number; last: number }[] = [];
  styles.forEach((style, column) => {
    const last = runs.at(-1);
    if (style === undefined) return;
    if (last?.style === style && last.last === column - 1) last.last = column;
    else runs.push({ style, first: column, last: column });
  });
  return runs;
}
