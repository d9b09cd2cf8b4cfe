import type { Area, CellValue } from "../../sheet/sheet";
import { WorkbookProblem, type CellInHand } from "../workbook";
import { findSheet, sheetNamed } from "./outline";
import { cellValue } from "./rows";
import type { Session } from "./session";

/** More cells than any formula of ours takes as a table. */
const CELLS_AT_ONCE = 10_000;

/** The cell the user is on, with its formula or that of the cell it is spilled from. */
export function readCellInHand(session: Session): Promise<CellInHand> {
  return session.read("the selected cell", async (context) => {
    const sheet = context.workbook.worksheets.getActiveWorksheet();
    const cell = context.workbook.getActiveCell();
    const parent = cell.getSpillParentOrNullObject();
    cell.load("rowIndex,columnIndex,values,valueTypes,formulas");
    parent.load("rowIndex,formulas");
    sheet.load("name");
    await context.sync();
    const written: unknown = (parent.isNullObject ? cell : parent).formulas[0]![0];
    const isFormula = typeof written === "string" && written.startsWith("=");
    return {
      address: { sheet: sheet.name, row: cell.rowIndex, column: cell.columnIndex },
      value: cellValue(cell.values[0]![0], cell.valueTypes[0]![0]),
      ...(isFormula && { formula: written.slice(1) }),
      down: parent.isNullObject ? 0 : cell.rowIndex - parent.rowIndex,
    };
  });
}

/** The values of an area, row by row. */
export function readArea(session: Session, name: string, area: Area): Promise<CellValue[][]> {
  const rowCount = area.lastRow + 1 - area.firstRow;
  const columnCount = area.lastColumn + 1 - area.firstColumn;
  return session.read(sheetNamed(name), async (context) => {
    if (rowCount * columnCount > CELLS_AT_ONCE) {
      throw new WorkbookProblem(`The range has ${rowCount * columnCount} cells: name a smaller one.`);
    }
    const sheet = await findSheet(context, name);
    const range = sheet.getRangeByIndexes(area.firstRow, area.firstColumn, rowCount, columnCount);
    range.load("values,valueTypes");
    await context.sync();
    const { values, valueTypes: types } = range;
    return values.map((row, at) => row.map((value, column) => cellValue(value, types[at]![column])));
  });
}
