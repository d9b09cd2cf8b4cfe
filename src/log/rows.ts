import type { LogSheet, RowKind } from "./log";
import type { Reading } from "./reading";

/** `Total`, `Sub-total October`, `Summe`, `Average`: a row that sums others up. */
const TOTALS =
  /^(?:grand |sub-? ?|running |monthly |weekly |daily )*(?:totals?|sum|summe|gesamt|gesamtsumme|zwischensumme|somme|suma|average|avg|mean|count|mittelwert|durchschnitt|moyenne|promedio|media)\b/i;

/** Whether a cell's text names a row of totals. */
export function namesTotals(text: string): boolean {
  return text.length < 40 && TOTALS.test(text.trim());
}

/** What a row counts for: how many of its fields were read, and how many were tried. */
export function saysSomething(reading: Reading<unknown> | undefined): boolean {
  return reading !== undefined && (reading.kind === "value" || reading.kind === "ambiguous");
}

export function countsOf(sheets: readonly Pick<LogSheet, "rowKinds">[]): Readonly<Record<RowKind, number>> {
  const counts: Record<RowKind, number> = {
    fill: 0,
    cylinder: 0,
    blank: 0,
    heading: 0,
    totals: 0,
    unreadable: 0,
  };
  for (const sheet of sheets) for (const kind of sheet.rowKinds) counts[kind]++;
  return counts;
}
