import { CellValueType, type ICellData, type Nullable } from "@univerjs/core";
import type { CellValue } from "../../sheet/sheet";

/** What a spreadsheet writes into a cell for an error. */
const ERROR_TEXT = /^#(N\/A|[A-Z][A-Z0-9/_]*[!?])$/;

/** A value as the engine stores it: always with its type, or it would read "007" as 7. */
export function engineCell(value: CellValue): ICellData {
  if (value === null) return {};
  if (typeof value === "number") return { v: value, t: CellValueType.NUMBER };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  if (typeof value === "object") return { v: value.error, t: CellValueType.STRING };
  /* Forced text stays text even where it reads like an error. */
  return { v: value, t: ERROR_TEXT.test(value) ? CellValueType.FORCE_STRING : CellValueType.STRING };
}

/** The value in a cell of the engine. */
export function cellValue(cell: Nullable<ICellData>): CellValue {
  if (!cell) return null;
  const { v: stored, t: type } = cell;
  if (stored === null || stored === undefined) return richText(cell);
  if (type === CellValueType.BOOLEAN) return stored === true || Number(stored) === 1 || stored === "TRUE";
  if (type === CellValueType.NUMBER && typeof stored !== "number") return Number(stored);
  if (typeof stored !== "string") return stored;
  if (stored === "") return null;
  return type !== CellValueType.FORCE_STRING && ERROR_TEXT.test(stored) ? { error: stored } : stored;
}

/** Text typed with line breaks or formatting inside the cell is kept as a small document. */
function richText(cell: ICellData): string | null {
  const text = cell.p?.body?.dataStream.replace(/\r\n$/, "").replaceAll("\r", "\n");
  return text ? text : null;
}
