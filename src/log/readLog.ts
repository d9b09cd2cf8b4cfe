import type { Sheet } from "../sheet/sheet";
import type { LogContext } from "./context";
import type { Cylinder, Fill, Log, LogSheet, UnreadableRow } from "./log";
import { readSheet } from "./readSheet";
import { countsOf } from "./rows";

/**
 * Reads the sheets of a workbook as one log: which column means what, every row typed, every doubt kept.
 * Pure: the same cells and context give the same log, on every machine and in every time zone.
 */
export function readLog(sheets: readonly Sheet[], context: LogContext = {}): Log {
  const wanted = sheets.filter(
    (sheet) => context.choices?.find((choice) => choice.sheet === sheet.name)?.use !== false,
  );
  const logSheets: LogSheet[] = [];
  const fills: Fill[] = [];
  const cylinders: Cylinder[] = [];
  const unreadable: UnreadableRow[] = [];
  for (const sheet of wanted) {
    const reading = readSheet(sheet, context);
    logSheets.push(reading.sheet);
    for (const fill of reading.fills) fills.push(fill);
    for (const cylinder of reading.cylinders) cylinders.push(cylinder);
    for (const row of reading.unreadable) unreadable.push(row);
  }
  const counts = countsOf(logSheets);
  return {
    sheets: logSheets,
    fills,
    cylinders,
    unreadable,
    rows: {
      total: wanted.reduce((total, sheet) => total + sheet.rows.length, 0),
      fills: counts.fill,
      cylinders: counts.cylinder,
      blank: counts.blank,
      headings: counts.heading,
      totals: counts.totals,
      unreadable: counts.unreadable,
    },
  };
}
