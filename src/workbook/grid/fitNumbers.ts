import { CellValueType, InterceptorEffectEnum } from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/preset-sheets-core";
import type { Engine } from "./engine";

/** A digit of the usual look, and what stays free beside them. */
const DIGIT_PIXELS = 7.5;
const FREE_PIXELS = 6;
/** More digits than these are never shown without a format. */
const MOST_CHARACTERS = 11;

/**
 * Lets numbers without a format show as many decimals as have room, as spreadsheets do; the engine would show them
 * all. Only the drawing changes. Call it once there is a workbook in the grid.
 */
export function fitNumbers({ univer }: Engine): void {
  univer
    .__getInjector()
    .get(SheetInterceptorService)
    .intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
      /* After the formats (0), which turn numbers to text, and before the engine's end of the chain (-1). */
      priority: -0.5,
      effect: InterceptorEffectEnum.Value,
      handler: (cell, { worksheet, col }, next) => {
        if (cell?.t !== CellValueType.NUMBER || typeof cell.v !== "number") return next(cell);
        const room = Math.floor((worksheet.getColumnWidth(col) - FREE_PIXELS) / DIGIT_PIXELS);
        return next({ ...cell, v: fitted(cell.v, room) });
      },
    });
}

/** The number with as many decimals as fit into so many characters; whole as it is where not even that fits. */
export function fitted(value: number, characters: number): string | number {
  const room = Math.min(characters, MOST_CHARACTERS);
  const whole = Math.trunc(value).toString().length + (value < 0 && value > -1 ? 1 : 0);
  const decimals = room - whole - 1;
  if (Number.isInteger(value) || String(value).length <= room || Math.abs(value) < 1e-4 || whole > room)
    return value;
  return String(Number(value.toFixed(Math.max(0, Math.min(decimals, 10)))));
}
