import type { Field, LogColumn, LogSheet } from "./log";

/** The column in which a field of this row stands; undefined where the sheet has none for it. */
export function columnOf(sheet: LogSheet, field: Field, row: number): LogColumn | undefined {
  return sheet.columns.find(
    (column) =>
      column.field === field &&
      column.further !== true &&
      (column.rows === undefined || (row >= column.rows.first && row <= column.rows.last)),
  );
}
