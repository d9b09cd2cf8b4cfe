import type { Sheet } from "../sheet/sheet";
import type { LogContext } from "./context";
import type { Log, RowCounts, RowKind } from "./log";
import { readSheet, whyLeftOut, type SheetReading } from "./readSheet";
import { knowledgeOf } from "./settle/settle";
import { onlyTheLog, planSheet } from "./sheetPlan";

/**
 * Reads the sheets of a workbook as one log: which column means what, every row typed, every doubt kept.
 * Pure: the same cells and context give the same log, on every machine and in every time zone.
 *
 * A sheet of something else, such as a price list, is left out beside a log unless somebody said to use it: it is
 * listed and said so, and its rows are not counted. So is, everywhere, a sheet that Brimbook wrote.
 */
export function readLog(sheets: readonly Sheet[], context: LogContext = {}): Log {
  const useOf = (name: string): boolean | undefined =>
    context.choices?.find((choice) => choice.sheet === name)?.use;
  const isChosen = (name: string): boolean => useOf(name) === true;
  const plans = onlyTheLog(
    sheets
      .filter((sheet) => useOf(sheet.name) !== false)
      .map((sheet) => planSheet(sheet, context, isChosen(sheet.name))),
    isChosen,
  );
  const knowledge = knowledgeOf(plans, context);
  const readings = plans.map((plan) => readSheet(plan, knowledge));
  const hasLog = readings.some(({ sheet }) => sheet.kind !== "neither");
  const isLeftOut = ({ sheet }: SheetReading, at: number): boolean =>
    plans[at]!.own !== undefined || (hasLog && sheet.kind === "neither" && !isChosen(sheet.name));
  const read = readings.filter((reading, at) => !isLeftOut(reading, at));
  return {
    sheets: readings.map((reading, at) =>
      isLeftOut(reading, at)
        ? { ...reading.sheet, leftOut: true, why: whyLeftOut(plans[at]!) }
        : reading.sheet,
    ),
    fills: read.flatMap(({ fills }) => fills),
    cylinders: read.flatMap(({ cylinders }) => cylinders),
    unreadable: read.flatMap(({ unreadable }) => unreadable),
    rows: countsOf(read),
  };
}

function countsOf(read: readonly SheetReading[]): RowCounts {
  const counts: Record<RowKind, number> = {
    fill: 0,
    cylinder: 0,
    "not filled": 0,
    blank: 0,
    heading: 0,
    totals: 0,
    unreadable: 0,
  };
  for (const { rowKinds } of read) for (const kind of rowKinds) counts[kind]++;
  return {
    total: read.reduce((total, { sheet }) => total + sheet.source.rows.length, 0),
    fills: counts.fill,
    cylinders: counts.cylinder,
    ...(counts["not filled"] > 0 ? { notFilled: counts["not filled"] } : {}),
    blank: counts.blank,
    headings: counts.heading,
    totals: counts.totals,
    unreadable: counts.unreadable,
  };
}
