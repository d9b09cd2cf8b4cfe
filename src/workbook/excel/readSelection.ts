import { rowsOf, type RowSpan } from "../selectedRows";
import { WorkbookProblem, type SelectedRows } from "../workbook";
import type { Session } from "./session";

/** So many rows Excel is asked about at once, whether they are in sight. */
const MOST_ROWS = 100_000;

/** The rows selected on the sheet in front, each once; those hidden or filtered away are only counted. */
export function readSelection(session: Session): Promise<SelectedRows> {
  return session.read("the selected cells", async (context) => {
    const sheet = context.workbook.worksheets.getActiveWorksheet();
    const used = sheet.getUsedRangeOrNullObject(true);
    const { areas } = context.workbook.getSelectedRanges();
    sheet.load("name");
    used.load("rowIndex,rowCount");
    areas.load("items/rowIndex,items/rowCount");
    await context.sync();
    const lastRow = used.isNullObject ? -1 : used.rowIndex + used.rowCount - 1;
    const rows = rowsOf(areas.items.map(spanOf), lastRow);
    const [first] = rows;
    const last = rows.at(-1);
    if (first === undefined || last === undefined) return { sheet: sheet.name, rows, outOfSight: 0 };
    if (last - first >= MOST_ROWS)
      throw new WorkbookProblem(
        `The selection reaches over ${last - first + 1} rows: select only those that are meant.`,
      );
    const range = sheet.getRangeByIndexes(first, 0, last + 1 - first, 1);
    const properties = range.getRowProperties({ rowHidden: true });
    await context.sync();
    // eslint-disable-next-line office-addins/load-object-before-read -- a method's result comes with the sync alone
    const inSight = rows.filter((row) => properties.value[row - first]?.rowHidden !== true);
    return { sheet: sheet.name, rows: inSight, outOfSight: rows.length - inSight.length };
  });
}

function spanOf({ rowIndex, rowCount }: Excel.Range): RowSpan {
  return { firstRow: rowIndex, lastRow: rowIndex + rowCount - 1 };
}
