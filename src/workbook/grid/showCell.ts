import type { Engine } from "./engine";

type EngineSheets = NonNullable<ReturnType<Engine["api"]["getActiveWorkbook"]>>;
type EngineSheet = NonNullable<ReturnType<EngineSheets["getSheetBySheetId"]>>;

/** Rows that stay in sight above a cell that was scrolled to. */
const ROWS_ABOVE = 3;
/** Row numbers and scroll bar. */
const EDGES_PIXELS = 70;
/** Some seconds: a cell that cannot be scrolled to by then keeps the cursor. */
const FRAMES_TO_DRAW = 200;

/** Puts the cursor on a cell and scrolls to it where it is out of sight, with as much of its row as there is room. */
export async function showCell(
  engine: Engine,
  workbook: EngineSheets,
  sheetId: string,
  row: number,
  column: number,
): Promise<void> {
  const sheet = workbook.getSheetBySheetId(sheetId)!;
  if (row >= sheet.getMaxRows()) sheet.setRowCount(row + 100);
  if (column >= sheet.getMaxColumns()) sheet.setColumnCount(column + 10);
  const inSight = workbook.getActiveSheet().getSheetId() === sheetId && isInSight(sheet, row, column);
  workbook.setActiveSheet(sheet);
  sheet.getRange(row, column).activate();
  if (!inSight && (await isDrawn(sheet))) {
    const room = engine.container.clientWidth - EDGES_PIXELS;
    sheet.scrollToCell(Math.max(0, row - ROWS_ABOVE), firstColumnShown(sheet, column, room));
  }
}

/** The engine scrolls only what it has drawn once; a workbook just opened takes a few frames to get there. */
async function isDrawn(sheet: EngineSheet): Promise<boolean> {
  for (let frame = 0; frame < FRAMES_TO_DRAW; frame++) {
    if (visibleRange(sheet)) return true;
    await new Promise(requestAnimationFrame);
  }
  return false;
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
  const range = visibleRange(sheet);
  return (
    range !== undefined &&
    row >= range.startRow &&
    row < range.endRow &&
    column >= range.startColumn &&
    column < range.endColumn
  );
}

/** Whatever the engine's types say, it is undefined before the first drawing. */
function visibleRange(sheet: EngineSheet) {
  return sheet.getVisibleRange() ?? undefined;
}
