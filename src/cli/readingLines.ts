import type { Log, LogColumn, LogSheet } from "../log/log";
import { reconciliationLine } from "../pane/check/report";
import { cellName, columnLetters } from "../sheet/sheet";

const UNREADABLE_SHOWN = 50;
const KINDS = {
  fills: "a fill log",
  register: "a register of cylinders",
  flat: "a fill log with the cylinders in its rows",
  neither: "neither a fill log nor a register",
} as const;

/** How a log was understood, as text. */
export function readingLines(log: Log): readonly string[] {
  return [...log.sheets.flatMap(sheetLines), ...rowLines(log)];
}

/** How the rows add up, and every row that could not be read. */
export function rowLines({ rows, unreadable }: Log): readonly string[] {
  const shown = unreadable.slice(0, UNREADABLE_SHOWN);
  const rest = unreadable.length - shown.length;
  return [
    `${reconciliationLine(rows)}.`,
    ...shown.map((row) => `  not read: ${row.sheet}!${cellName(row)}  ${row.why}`),
    ...(rest > 0 ? [`  and ${rest} more; --json with "read" lists them all.`] : []),
  ];
}

function sheetLines({
  name,
  kind,
  why,
  leftOut,
  columns,
  hiddenRows,
  headingsChanged,
}: LogSheet): readonly string[] {
  if (leftOut && why !== undefined) return [why, ""];
  return [
    `${name}: ${KINDS[kind]}${why === undefined ? "" : ` (${why.replace(/\.$/, "")})`}.`,
    ...columns.map(columnLine),
    ...(hiddenRows > 0 ? [`  ${hiddenRows} hidden rows were read like the others.`] : []),
    ...(headingsChanged
      ? ["  The headings have changed since its columns were chosen: choose them again."]
      : []),
    "",
  ];
}

function columnLine({ column, heading, field, unit, confidence, question }: LogColumn): string {
  const read = field === undefined ? "not read" : `${field}${unit === undefined ? "" : `, ${unit}`}`;
  const sure = field === undefined ? "" : ` (${Math.round(confidence * 100)} %)`;
  const asked = question === undefined ? "" : ` - ${question.sentence}`;
  return `  ${columnLetters(column).padEnd(3)}${heading.padEnd(24)} ${read}${sure}${asked}`;
}
