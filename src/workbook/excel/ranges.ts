import type { Area } from "../../sheet/sheet";

/** The cells of an area. */
export function rangeOf(sheet: Excel.Worksheet, area: Area): Excel.Range {
  const { firstRow, firstColumn, lastRow, lastColumn } = area;
  return sheet.getRangeByIndexes(firstRow, firstColumn, lastRow + 1 - firstRow, lastColumn + 1 - firstColumn);
}
