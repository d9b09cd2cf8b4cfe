import { isBlank, type CellValue, type SheetRow } from "../../sheet/sheet";
import type { LogColumn } from "../log";
import { namesTotals } from "./rowKind";

/** Whether a row is named a total, and is not one of a cylinder on a day: customers may be called Total Diving. */
export function isTotalsRow(
  { values }: SheetRow,
  columns: readonly Pick<LogColumn, "column" | "field">[],
): boolean {
  if (!values.some(isTotal)) return false;
  const has = (...fields: readonly LogColumn["field"][]) =>
    columns.some(({ column, field }) => {
      const value = values[column];
      return fields.includes(field) && !isBlank(value) && !isTotal(value);
    });
  return !(has("date") && has("serial", "shopNumber"));
}

function isTotal(value: CellValue | undefined): boolean {
  return typeof value === "string" && namesTotals(value);
}
