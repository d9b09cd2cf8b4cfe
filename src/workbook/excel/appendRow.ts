import { storedValue } from "../../sheet/draft/draft";
import type { CellAddress } from "../../sheet/sheet";
import type { CellWrite } from "../workbook";
import { findSheet, sheetNamed } from "./outline";
import type { Session } from "./session";

/** Writes one row below the last that holds anything; a table that ends there grows with it, as when it is typed. */
export function appendRow(
  session: Session,
  name: string,
  cells: readonly CellWrite[],
  dateSystem: 1900 | 1904,
): Promise<CellAddress> {
  return session.act(sheetNamed(name), async (context) => {
    const sheet = await findSheet(context, name);
    const used = sheet.getUsedRangeOrNullObject(true);
    used.load("rowIndex,rowCount");
    await context.sync();
    const row = used.isNullObject ? 0 : used.rowIndex + used.rowCount;
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
