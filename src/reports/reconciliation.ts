import type { RowCounts } from "../log/log";
import { count, counted } from "../words/counts";

const PARTS: readonly {
  of: Exclude<keyof RowCounts, "total" | "unreadable">;
  one: string;
  several: string;
}[] = [
  { of: "fills", one: "fill", several: "fills" },
  { of: "cylinders", one: "cylinder", several: "cylinders" },
  { of: "notFilled", one: "row not filled", several: "rows not filled" },
  { of: "struckOut", one: "row struck out", several: "rows struck out" },
  { of: "headings", one: "heading", several: "headings" },
  { of: "totals", one: "totals row", several: "totals rows" },
  { of: "blank", one: "blank", several: "blank" },
];

/** What the readable rows are, in words: `598 fills`, `4 headings`. Kinds that do not occur are left out. */
export function reconciliation(rows: RowCounts): readonly string[] {
  return PARTS.flatMap(({ of, one, several }) => {
    const rowsOf = rows[of] ?? 0;
    return rowsOf > 0 ? [counted(rowsOf, one, several)] : [];
  });
}

/** The whole sum: `612 rows = 598 fills + 4 headings + 10 blank + 0 unreadable`. */
export function reconciliationLine(rows: RowCounts): string {
  const parts = [...reconciliation(rows), `${count(rows.unreadable)} unreadable`];
  return `${counted(rows.total, "row")} = ${parts.join(" + ")}`;
}
