import type { Sheet } from "../sheet/sheet";
import type { LogContext } from "./context";
import type { Log, RowCounts, RowKind } from "./log";
import { readSheet, whyLeftOut, type SheetReading } from "./readSheet";
import { knowledgeOf } from "./settle/settle";
import { onlyTheLog, planSheet, type SheetPlan } from "./sheetPlan";
import { allAtOnce, part, type Steps } from "../sheet/steps";

/**
 * Reads the sheets of a workbook as one log: which column means what, every row typed, every doubt kept.
 * Pure: the same cells and context give the same log, on every machine and in every time zone.
 *
 * A sheet of something else, such as a price list, is left out beside a log unless somebody said to use it: it is
 * listed and said so, and its rows are not counted. So is, everywhere, a sheet that Brimbook wrote.
 */
export function readLog(sheets: readonly Sheet[], context: LogContext = {}): Log {
  return allAtOnce(readLogSteps(sheets, context));
}

/** The same, a few rows at a time. */
export function* readLogSteps(sheets: readonly Sheet[], context: LogContext = {}): Steps<Log> {
  const useOf = (name: string): boolean | undefined =>
    context.choices?.find((choice) => choice.sheet === name)?.use;
  const isChosen = (name: string): boolean => useOf(name) === true;
  const used = sheets.filter((sheet) => useOf(sheet.name) !== false);
  const drafts: SheetPlan[] = [];
  for (const sheet of used) {
    yield 0;
    drafts.push(planSheet(sheet, context, isChosen(sheet.name)));
  }
  const plans = onlyTheLog(drafts, isChosen);
  yield 0;
  const knowledge = knowledgeOf(plans, context);
  const rows = used.reduce((sum, sheet) => sum + sheet.rows.length, 0);
  const readings: SheetReading[] = [];
  let done = 0;
  for (const plan of plans) {
    const after = done + plan.sheet.rows.length;
    readings.push(yield* part(done / rows, after / rows, readSheet(plan, knowledge)));
    done = after;
  }
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
    "struck out": 0,
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
    ...(counts["struck out"] > 0 ? { struckOut: counts["struck out"] } : {}),
    blank: counts.blank,
    headings: counts.heading,
    totals: counts.totals,
    unreadable: counts.unreadable,
  };
}
