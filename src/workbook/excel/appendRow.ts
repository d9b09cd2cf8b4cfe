import { storedValue } from "../../sheet/draft/draft";
import type { Area, CellAddress, CellValue, CellWrite, SheetRow } from "../../sheet/sheet";
import { END_ROWS, placeOfNewRow, takingIn, type EndRow } from "../newRow";
import { areaOf, findSheet, sheetNamed } from "./outline";
import { rangeOf } from "./ranges";
import type { Session } from "./session";

/**
 * Writes one row below the last that holds anything; a table that ends there grows with it, as when it is typed. Above
 * totals a row is put in, and their sums take it in.
 */
export function appendRow(
  session: Session,
  name: string,
  cells: readonly CellWrite[],
  dateSystem: 1900 | 1904,
  isTotals: (row: SheetRow) => boolean = () => false,
): Promise<CellAddress> {
  return session.act(sheetNamed(name), async (context) => {
    const sheet = await findSheet(context, name);
    const used = sheet.getUsedRangeOrNullObject(true);
    used.load("rowIndex,rowCount,columnIndex,columnCount");
    await context.sync();
    const row = used.isNullObject ? 0 : await madeRoom(context, sheet, areaOf(used), isTotals);
    for (const { column, value, format } of cells) {
      const cell = sheet.getRangeByIndexes(row, column, 1, 1);
      if (format !== undefined) cell.numberFormat = [[format]];
      // Behind an apostrophe text stays text, whatever it looks like: 18/45 is no date and a serial no number.
      const stored = storedValue({ value, ...(format !== undefined && { format }) }, dateSystem);
      cell.formulas = [[typeof stored === "string" ? `'${stored}` : stored]];
    }
    const column = Math.min(...cells.map((each) => each.column));
    if (sheet.visibility === "Visible") {
      sheet.activate();
      sheet.getRangeByIndexes(row, column, 1, 1).select();
    }
    await context.sync();
    return { sheet: name, row, column };
  });
}

/** The row to write into; where totals stand there, they have been moved down, and look at it too. */
async function madeRoom(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  used: Area,
  isTotals: (row: SheetRow) => boolean,
): Promise<number> {
  const first = Math.max(used.firstRow, used.lastRow + 1 - END_ROWS);
  const end = rangeOf(sheet, { ...used, firstRow: first });
  end.load("values,formulas");
  await context.sync();
  const rows = end.values.map((values, at) => endRow(values, end.formulas[at]!, used.firstColumn));
  const place = placeOfNewRow(rows, first, isTotals);
  if (place > used.lastRow) return place;
  sheet.getRangeByIndexes(place, 0, 1, 1).getEntireRow().insert("Down");
  const moved = rangeOf(sheet, { ...used, firstRow: place + 1, lastRow: used.lastRow + 1 });
  moved.load("formulas");
  await context.sync();
  for (const [at, formulas] of moved.formulas.entries()) {
    for (const [column, formula] of formulas.entries()) {
      const stretched = takingIn(formulaIn(formula) ?? "", place);
      if (stretched === undefined) continue;
      const cell = sheet.getRangeByIndexes(place + 1 + at, used.firstColumn + column, 1, 1);
      cell.formulas = [[`=${stretched}`]];
    }
  }
  return place;
}

function endRow(values: readonly unknown[], formulas: readonly unknown[], firstColumn: number): EndRow {
  const before = Array.from({ length: firstColumn }, () => null);
  return {
    values: [...before, ...values.map((value) => (value === "" ? null : (value as CellValue)))],
    formulas: [...before.map(() => undefined), ...formulas.map(formulaIn)],
  };
}

function formulaIn(entry: unknown): string | undefined {
  return typeof entry === "string" && entry.startsWith("=") ? entry.slice(1) : undefined;
}
