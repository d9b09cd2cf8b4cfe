import {
  BooleanNumber,
  type ICellData,
  InterceptorEffectEnum,
  type IStyleData,
  type Nullable,
  type Workbook as EngineWorkbook,
} from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/preset-sheets-core";
import type { CellAddress, CellValue } from "../../sheet/sheet";
import { Pace } from "../file/pace";
import { isSameValue, MARK_LOOK } from "../marking";
import type { CellToMark } from "../workbook";
import type { Engine } from "./engine";
import { ownDataOf, withOwnData } from "./ownCellData";

/** The look of a mark, which the engine lays over the cell's own. */
const LOOK: IStyleData = {
  bg: { rgb: MARK_LOOK.fill },
  cl: { rgb: MARK_LOOK.fontColour },
  bl: BooleanNumber.TRUE,
  ul: { s: BooleanNumber.TRUE },
};

/** Draws marked cells as such. Only the drawing changes. Call it once there is a workbook in the grid. */
export function drawMarks({ univer }: Engine): void {
  univer
    .__getInjector()
    .get(SheetInterceptorService)
    .intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
      effect: InterceptorEffectEnum.Style,
      handler: (cell, { worksheet, row, col }, next) => {
        if (!ownDataOf(worksheet.getCellRaw(row, col)).marked) return next(cell);
        return next({ ...cell, interceptorStyle: { ...cell?.interceptorStyle, ...LOOK } });
      },
    });
}

/** Marks cells that still hold what they held when they were judged; answers with the others. */
export function markCells(
  workbook: EngineWorkbook,
  cells: readonly CellToMark[],
  holds: (cell: CellAddress) => CellValue,
): readonly CellAddress[] {
  const leftOut: CellAddress[] = [];
  for (const { cell, held } of cells) {
    const matrix = workbook.getSheetBySheetName(cell.sheet)?.getCellMatrix();
    if (!matrix || !isSameValue(holds(cell), held)) {
      leftOut.push(cell);
      continue;
    }
    const there: Nullable<ICellData> = matrix.getValue(cell.row, cell.column);
    const marked: ICellData = there ?? {};
    withOwnData(marked, { marked: true });
    if (!there) matrix.setValue(cell.row, cell.column, marked);
  }
  return leftOut;
}

const ROWS_A_STEP = 100;

/** Takes every mark of a workbook away; answers how many there were. */
export async function clearMarks(workbook: EngineWorkbook): Promise<number> {
  const pace = new Pace();
  let cleared = 0;
  for (const sheet of workbook.getSheets()) {
    const rows = Object.values(sheet.getCellMatrix().getMatrix()) as Record<number, Nullable<ICellData>>[];
    for (const [at, row] of rows.entries()) {
      if (at % ROWS_A_STEP === 0) await pace.step(ROWS_A_STEP);
      for (const cell of Object.values(row)) {
        if (!cell?.custom || !ownDataOf(cell).marked) continue;
        withOwnData(cell, { marked: undefined });
        cleared += 1;
      }
    }
  }
  return cleared;
}
