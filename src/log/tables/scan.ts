import { isBlank, type CellValue, type Sheet } from "../../sheet/sheet";
import { isTooLong } from "../cells/cell";
import type { Table } from "./table";

/** Part of a column that belongs together: the rows of one table. */
export interface ColumnRange {
  readonly sheet: Sheet;
  readonly table: Table;
  readonly column: number;
}

type Filled = Exclude<CellValue, null>;

/** Visits every cell of a column that holds something, headings and endless texts left out, from the top. */
export function forEachCell(
  { sheet, table, column }: ColumnRange,
  visit: (value: Filled, format: string | undefined) => void,
): void {
  for (let at = table.firstRow; at <= table.lastRow; at++) {
    const row = sheet.rows[at]!;
    const value = row.values[column];
    if (value === undefined || value === null || value === "" || table.headingRows.has(at)) continue;
    if (isTooLong(value)) continue;
    visit(value, row.formats?.[column]);
  }
}

/** Visits every different text of a column once. */
export function forEachText(range: ColumnRange, visit: (text: string) => void): void {
  const seen = new Set<string>();
  forEachCell(range, (value) => {
    if (typeof value !== "string" || seen.has(value) || isBlank(value)) return;
    seen.add(value);
    visit(value);
  });
}
