import type { Area } from "../../sheet/sheet";
import { WorkbookProblem } from "../workbook";
import type { Session } from "./session";

/** How far a sheet reaches, and whether any of its rows may be hidden. */
export interface Outline {
  readonly name: string;
  readonly hidden: boolean;
  /** The rectangle that holds all entries; absent in an empty sheet. */
  readonly used?: Area;
  readonly someRowsHidden: boolean;
}

/** A sheet as its tab shows it; the id stays when it is renamed. */
export interface Tab {
  readonly id: string;
  readonly name: string;
  readonly visibility: string;
}

/** The sheets in the order of their tabs. */
export function listTabs(session: Session): Promise<readonly Tab[]> {
  return session.read("the list of sheets", async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/id,items/name,items/visibility");
    await context.sync();
    return worksheets.items.map(({ id, name, visibility }) => ({ id, name, visibility }));
  });
}

/** How a sheet is called in a sentence. */
export const sheetNamed = (name: string) => `the sheet "${name}"`;

/** The sheet by this name as it stands in Excel now, with its visibility loaded; refused where it is gone. */
export async function findSheet(context: Excel.RequestContext, name: string): Promise<Excel.Worksheet> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(name);
  sheet.load("name,visibility");
  await context.sync();
  if (sheet.isNullObject) {
    throw new WorkbookProblem(
      `There is no sheet "${name}" in this workbook any more. It may have been renamed or deleted: read the log again.`,
    );
  }
  return sheet;
}

/** Asks for a sheet's size before anything is read, since Excel hands over only so much at once. */
export function readOutline(session: Session, name: string): Promise<Outline> {
  return session.read(sheetNamed(name), async (context) => {
    const sheet = await findSheet(context, name);
    const used = sheet.getUsedRangeOrNullObject(true);
    used.load("rowIndex,columnIndex,rowCount,columnCount,rowHidden");
    await context.sync();
    const outline = { name: sheet.name, hidden: sheet.visibility !== "Visible" };
    if (used.isNullObject) return { ...outline, someRowsHidden: false };
    return { ...outline, used: areaOf(used), someRowsHidden: used.rowHidden !== false };
  });
}

export const areaOf = (range: Excel.Range): Area => ({
  firstRow: range.rowIndex,
  firstColumn: range.columnIndex,
  lastRow: range.rowIndex + range.rowCount - 1,
  lastColumn: range.columnIndex + range.columnCount - 1,
});
