import { CellValueType } from "@univerjs/core";
import type { CellValue, SheetRow } from "../../sheet/sheet";
import { END_ROWS, placeOfNewRow, takingIn, type EndRow } from "../newRow";
import type { Engine } from "./engine";
import type { SheetReader } from "./fromGrid";

type ShownSheet = NonNullable<
  ReturnType<NonNullable<ReturnType<Engine["api"]["getActiveWorkbook"]>>["getSheetByName"]>
>;

/** The row to write into; where totals stand there, they have been moved down, and look at it too. */
export function makeRoom(
  shown: ShownSheet,
  reader: SheetReader,
  isTotals: (row: SheetRow) => boolean,
): number {
  const last = reader.lastFilledRow();
  if (last < 0) return 0;
  const first = Math.max(0, last + 1 - END_ROWS);
  const rows = Array.from({ length: last + 1 - first }, (_, at): EndRow => reader.endRow(first + at));
  const row = placeOfNewRow(rows, first, isTotals);
  if (row >= shown.getMaxRows()) shown.insertRowsAfter(shown.getMaxRows() - 1, 1);
  if (row > last) return row;
  shown.insertRowsAfter(row - 1, 1);
  for (let moved = row + 1; moved <= last + 1; moved++) {
    for (const [column, formula] of reader.endRow(moved).formulas.entries()) {
      const stretched = takingIn(formula ?? "", row);
      if (stretched !== undefined) shown.getRange(moved, column).setValue({ f: `=${stretched}` });
    }
  }
  return row;
}

/** Text stays text, whatever it looks like: 18/45 is no date and a serial no number. */
export function written(value: CellValue) {
  if (typeof value === "string") return { v: value, t: CellValueType.STRING };
  return typeof value === "object" ? { v: null } : { v: value };
}
