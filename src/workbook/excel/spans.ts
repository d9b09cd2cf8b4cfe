import type { RowSpan } from "../selectedRows";

/** More areas apart than this are read faster as a whole sheet. */
const MOST_SPANS = 40;

/**
 * The rows of an address as an event of Excel names it: `B7`, `A1:C9,E4`, `'Fill log'!5:8`. Undefined where it means
 * whole columns, or nothing that we know.
 */
export function rowsOfAddress(address: string): RowSpan[] | undefined {
  const spans = address.split(",").map((part) => {
    const corners = part.slice(part.lastIndexOf("!") + 1).split(":");
    const rows = corners.map(
      (corner) => Number(/^\$?[A-Z]{0,3}\$?([1-9]\d*)$/i.exec(corner.trim())?.[1]) - 1,
    );
    const span = { firstRow: Math.min(...rows), lastRow: Math.max(...rows) };
    return Number.isNaN(span.firstRow) ? undefined : span;
  });
  return spans.every((span) => span !== undefined) ? spans : undefined;
}

/** The same rows in as few spans as possible, from top to bottom; undefined where they are too many. */
export function joined(spans: readonly RowSpan[]): RowSpan[] | undefined {
  const apart: { firstRow: number; lastRow: number }[] = [];
  for (const { firstRow, lastRow } of [...spans].sort((one, other) => one.firstRow - other.firstRow)) {
    const last = apart.at(-1);
    if (last && firstRow <= last.lastRow + 1) last.lastRow = Math.max(last.lastRow, lastRow);
    else apart.push({ firstRow, lastRow });
  }
  return apart.length > MOST_SPANS ? undefined : apart;
}
