import type { Sheet } from "../sheet/sheet";
import type { LogContext } from "./context";
import type { Cylinder, Fill, Log, LogSheet, RowKind, UnreadableRow } from "./log";
import { readSheet } from "./readSheet";
import { knowledgeOf } from "./settle/settle";
import { planSheet } from "./sheetPlan";

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
  const plans = wanted.map((sheet) => planSheet(sheet, context));
  const knowledge = knowledgeOf(plans, context);
  for (const plan of plans) {
    const reading = readSheet(plan, knowledge);
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

function countsOf(sheets: readonly LogSheet[]): Readonly<Record<RowKind, number>> {
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
