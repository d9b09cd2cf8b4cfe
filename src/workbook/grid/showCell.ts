import type { Engine } from "./engine";

type EngineSheets = NonNullable<ReturnType<Engine["api"]["getActiveWorkbook"]>>;
type EngineSheet = NonNullable<ReturnType<EngineSheets["getSheetBySheetId"]>>;

/** Rows that stay in sight above a cell that was scrolled to. */
const ROWS_ABOVE = 3;
/** Row numbers and scroll bar. */
const EDGES_PIXELS = 70;

/** Puts the cursor on a cell and scrolls to it where it is out of sight, with as much of its row as there is room. */
export function showCell(
  engine: Engine,
  workbook: EngineSheets,
  sheetId: string,
  row: number,
  column: number,
): void {
  const sheet = workbook.getSheetBySheetId(sheetId)!;
  if (row >= sheet.getMaxRows()) sheet.setRowCount(row + 100);
  if (column >= sheet.getMaxColumns()) sheet.setColumnCount(column + 10);
  const inSight = workbook.getActiveSheet().getSheetId() === sheetId && isInSight(sheet, row, column);
  workbook.setActiveSheet(sheet);
  sheet.getRange(row, column).activate();
  if (!inSight) {
    const room = engine.container.clientWidth - EDGES_PIXELS;
    sheet.scrollToCell(Math.max(0, row - ROWS_ABOVE), firstColumnShown(sheet, column, room));
  }
}

/** The leftmost column from which this one still has room. */
function firstColumnShown(sheet: EngineSheet, column: number, roomPixels: number): number {
  const zoom = sheet.getZoom();
  let first = column;
  let taken = sheet.getColumnWidth(column) * zoom;
  while (first > 0) {
    taken += sheet.getColumnWidth(first - 1) * zoom;
    if (taken > roomPixels) break;
    first--;
  }
  return first;
}

function isInSight(sheet: EngineSheet, row: number, column: number): boolean {
  /* Whatever the types say, it is undefined before the first drawing. */
  const range = sheet.getVisibleRange() ?? undefined;
  return (
    range !== undefined &&
    row >= range.startRow &&
    row < range.endRow &&
    column >= range.startColumn &&
    column < range.endColumn
  );
}
