import type { LogContext } from "../../src/log/context";
import { describeLog, type ReadingDescription, type SheetDescription } from "../../src/log/describeLog";
import type { Field, LogColumn } from "../../src/log/log";
import { readLog } from "../../src/log/readLog";
import { sheetOf, type FixtureCell, type FixtureSheet } from "./sheets";

/** One sheet with these headings and rows, read and described. */
export function readTable(
  headings: readonly string[],
  rows: readonly (readonly FixtureCell[])[],
  context: LogContext = {},
  more: Partial<FixtureSheet> = {},
): SheetDescription {
  return describeLog(readLog([sheetOf([headings, ...rows], more)], context)).sheets[0]!;
}

/**
 * A column of a fill log (or of a register), with what makes its rows fills (or cylinders) beside it; how each of its
 * cells was read.
 */
export function readColumn(
  heading: string,
  cells: readonly FixtureCell[],
  context: LogContext = {},
  more: Partial<FixtureSheet> & { readonly of?: "fills" | "register" } = {},
): readonly Partial<ReadingDescription>[] {
  const { sheet, field } = columnRead(heading, cells, context, more);
  return sheet.rows.slice(1).map((row) => row.fields[field!] ?? {});
}

/** The same, as the column was understood. */
export function understood(
  heading: string,
  cells: readonly FixtureCell[],
  context: LogContext = {},
  more: Partial<FixtureSheet> & { readonly of?: "fills" | "register" } = {},
): LogColumn {
  const beside = more.of === "register" ? IN_REGISTER : IN_FILLS;
  const rows = cells.map((cell) => [...beside.map(([, value]) => value), cell]);
  const log = readLog([sheetOf([[...beside.map(([name]) => name), heading], ...rows], more)], context);
  return log.sheets[0]!.columns[2]!;
}

const IN_FILLS: readonly (readonly [string, FixtureCell])[] = [
  ["Fill method", "air"],
  ["Filled by", "R."],
];
const IN_REGISTER: readonly (readonly [string, FixtureCell])[] = [
  ["Serial number", "A10001"],
  ["Alloy", "6061"],
];

function columnRead(
  heading: string,
  cells: readonly FixtureCell[],
  context: LogContext,
  more: Partial<FixtureSheet> & { readonly of?: "fills" | "register" },
): { sheet: SheetDescription; field: Field | null } {
  const beside = more.of === "register" ? IN_REGISTER : IN_FILLS;
  const sheet = readTable(
    [...beside.map(([name]) => name), heading],
    cells.map((cell) => [...beside.map(([, value]) => value), cell]),
    context,
    more,
  );
  return { sheet, field: sheet.columns[2]!.field };
}

/** What each reading says, in one word or value: for tables of expectations. */
export function said(reading: Partial<ReadingDescription>): unknown {
  if (reading.unreadable !== undefined) return "unreadable";
  if (reading.choices !== undefined) return { either: reading.choices };
  return reading.value ?? "blank";
}
