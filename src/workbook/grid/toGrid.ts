import {
  BooleanNumber,
  type ICellData,
  type IWorkbookData,
  type IWorksheetData,
  LocaleType,
} from "@univerjs/core";
import { showsDate } from "../../sheet/numberFormat";
import { NEVER_CALCULATED, type CellValue } from "../../sheet/sheet";
import type { CellOrigin, RowContent, SheetContent, WorkbookContent } from "../file/content";
import { engineCell } from "./cells";
import { addOwnData } from "./ownCellData";
import { COLUMNS, reachOf, ROWS, type Reach } from "./reach";
import { columnPixels, rowPixels } from "./sizes";
import { StyleTable } from "./styles";
import { TYPEFACE } from "./typeface";

/** Its digits are as wide as those of the standard font that column widths are counted in. */
const USUAL_LOOK = { ff: TYPEFACE, fs: 11 };

/** A workbook as the engine loads it, some rows at a time: yields how many. */
export function* gridData(content: WorkbookContent, id: string): Generator<number, IWorkbookData, undefined> {
  const looks = new StyleTable();
  const reach = reachOf(formulasOf(content));
  const sheets: (Partial<IWorksheetData> & { id: string })[] = [];
  for (const [index, sheet] of content.sheets.entries())
    sheets.push({ ...(yield* sheetData(sheet, looks, reach)), id: `sheet${index}` });
  return {
    id,
    name: id,
    appVersion: "0.25.1",
    locale: LocaleType.EN_US,
    styles: looks.styles,
    sheetOrder: sheets.map((sheet) => sheet.id),
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
  };
}

/** One sheet for a workbook that is open: its cells carry their styles themselves. Made as a workbook is. */
export function* gridSheet(sheet: SheetContent): Generator<number, Partial<IWorksheetData>, undefined> {
  const looks = new StyleTable();
  const formulas = formulasOf({ sheets: [sheet] });
  const data = yield* sheetData(sheet, looks, reachOf(formulas));
  for (const row of Object.values(data.cellData ?? {})) {
    for (const cell of Object.values(row as Record<number, ICellData>)) {
      if (typeof cell.s === "string") cell.s = looks.styles[cell.s] ?? null;
    }
  }
  return data;
}

/** About a millisecond. */
const ROWS_A_STEP = 100;

function* sheetData(
  sheet: SheetContent,
  looks: StyleTable,
  reach: Reach,
): Generator<number, Partial<IWorksheetData>, undefined> {
  const columnsUsed = sheet.rows.reduce(
    (widest, row) => Math.max(widest, row.values.length, row.styles?.length ?? 0),
    sheet.columns.length,
  );
  const cellData: IWorksheetData["cellData"] = {};
  const rowData: IWorksheetData["rowData"] = {};
  for (const [index, row] of sheet.rows.entries()) {
    if (index % ROWS_A_STEP === 0) yield ROWS_A_STEP;
    const cells = rowCells(row, sheet.dateSystem, looks);
    if (cells) cellData[index] = cells;
    if (row.hidden || row.heightPt !== undefined) {
      rowData[index] = {
        ...(row.hidden && { hd: BooleanNumber.TRUE }),
        ...(row.heightPt !== undefined && { h: rowPixels(row.heightPt), ia: BooleanNumber.FALSE }),
      };
    }
  }
  addOwnData(sheet, (row, column) => ((cellData[row] ??= {})[column] ??= {}));
  return {
    name: sheet.name,
    hidden: sheet.hidden ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    rowCount: Math.min(ROWS.most, Math.max(ROWS.atLeast, sheet.rows.length + ROWS.beyondUse, reach.rows)),
    columnCount: Math.max(
      COLUMNS.atLeast,
      columnsUsed + COLUMNS.beyondUse,
      Math.min(reach.columns, COLUMNS.referencedAtMost),
    ),
    defaultStyle: USUAL_LOOK,
    defaultRowHeight: rowPixels(15),
    defaultColumnWidth: columnPixels(10),
    ...(sheet.report && { showGridlines: BooleanNumber.FALSE }),
    cellData,
    rowData,
    columnData: Object.fromEntries(
      sheet.columns.flatMap((column, index) =>
        column
          ? [
              [
                index,
                {
                  ...(column.widthCharacters !== undefined && { w: columnPixels(column.widthCharacters) }),
                  ...(column.hidden && { hd: BooleanNumber.TRUE }),
                },
              ],
            ]
          : [],
      ),
    ),
    mergeData: sheet.merges.map((area) => ({
      startRow: area.firstRow,
      endRow: area.lastRow,
      startColumn: area.firstColumn,
      endColumn: area.lastColumn,
    })),
    freeze: {
      xSplit: sheet.frozenColumns,
      ySplit: sheet.frozenRows,
      startColumn: sheet.frozenColumns > 0 ? sheet.frozenColumns : -1,
      startRow: sheet.frozenRows > 0 ? sheet.frozenRows : -1,
    },
  };
}

function rowCells(
  row: RowContent,
  dateSystem: 1900 | 1904,
  looks: StyleTable,
): Record<number, ICellData> | undefined {
  const cells: Record<number, ICellData> = {};
  const length = Math.max(row.values.length, row.styles?.length ?? 0);
  let any = false;
  for (let column = 0; column < length; column++) {
    const cell = contentCell(row, column, dateSystem);
    const look = looks.idOf(row.styles?.[column], row.formats?.[column]);
    if (look !== undefined) cell.s = look;
    if (cell.v === undefined && cell.f === undefined && cell.s === undefined) continue;
    cells[column] = cell;
    any = true;
  }
  return any ? cells : undefined;
}

/** A spilled value is left out: the formula it comes from finds its way free and spills again. */
function contentCell(row: RowContent, column: number, dateSystem: 1900 | 1904): ICellData {
  const origin: CellOrigin | undefined = row.origins?.[column];
  if (origin === "spill") return {};
  const stored = row.values[column] ?? null;
  const value = typeof stored === "object" && stored?.error === NEVER_CALCULATED ? null : stored;
  const cell = engineCell(dateSystem === 1904 ? countedFrom1900(value, row.formats?.[column]) : value);
  if (origin) cell.f = `=${origin.formula}`;
  return cell;
}

/** The engine counts days from 1900 alone; the same day is 1462 more there than counted from 1904. */
function countedFrom1900(value: CellValue, format: string | undefined): CellValue {
  return typeof value === "number" && showsDate(format) ? value + 1462 : value;
}

function* formulasOf(content: Pick<WorkbookContent, "sheets">): Generator<string> {
  for (const { rows } of content.sheets) {
    for (const { origins = [] } of rows) {
      for (const origin of origins) {
        if (origin && origin !== "spill") yield origin.formula;
      }
    }
  }
}
