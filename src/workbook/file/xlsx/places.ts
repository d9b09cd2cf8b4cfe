import type { Area } from "../../../sheet/sheet";
import { FileFault } from "../fault";
import { LIMITS } from "../limits";

/** The place of a cell from its name, such as `AB12`; counts from 0. */
export function cellPlace(name: string): { row: number; column: number } {
  let column = 0;
  let at = 0;
  for (; at < name.length; at++) {
    const letter = name.charCodeAt(at) & ~32;
    if (letter < 65 || letter > 90) break;
    column = column * 26 + letter - 64;
  }
  const row = Number(name.slice(at));
  if (column < 1 || column > LIMITS.columns || !Number.isInteger(row) || row < 1 || row > LIMITS.rows) {
    throw new FileFault(`it names a cell "${name.slice(0, 20)}", which no sheet has`);
  }
  return { row: row - 1, column: column - 1 };
}

/** `A1:C3` or `A1`; undefined where it is neither. */
export function readArea(reference: string): Area | undefined {
  const [first = "", last = first, ...more] = reference.replaceAll("$", "").split(":");
  if (more.length > 0 || !/^[A-Za-z]{1,3}\d{1,7}$/.test(first) || !/^[A-Za-z]{1,3}\d{1,7}$/.test(last)) {
    return undefined;
  }
  const from = cellPlace(first);
  const to = cellPlace(last);
  return {
    firstRow: Math.min(from.row, to.row),
    firstColumn: Math.min(from.column, to.column),
    lastRow: Math.max(from.row, to.row),
    lastColumn: Math.max(from.column, to.column),
  };
}
