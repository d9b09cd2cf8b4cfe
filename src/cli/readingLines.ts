import type { Units } from "../gas/units";
import { FROM_DAY_ABOVE } from "../log/tables/dayHeadings";
import { wordQuestions } from "../log/questions/wordQuestions";
import type { ColumnQuestion, Log, LogColumn, LogSheet } from "../log/log";
import { confidenceWord, fieldWord } from "../words/fields";
import { reconciliationLine } from "../reports/reconciliation";
import { counted } from "../words/counts";
import { cellName, columnLetters } from "../sheet/sheet";

const UNREADABLE_SHOWN = 50;
const KINDS = {
  fills: "a fill log",
  register: "a register of cylinders",
  flat: "a fill log with the cylinders in its rows",
  neither: "neither a fill log nor a register",
} as const;

/** How a log was understood, as text. */
export function readingLines(log: Log, units: Units | undefined): readonly string[] {
  return [...log.sheets.flatMap((sheet) => sheetLines(sheet, units)), ...rowLines(log), ...dayLines(log)];
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

/** What of a log was left out, not understood, taken as usual, or is to be asked: each once, however many sheets. */
export function doubtLines(log: Log, units: Units | undefined): readonly string[] {
  const { sheets } = log;
  const read = sheets.filter(({ kind }) => kind !== "neither");
  const columns = read.flatMap((sheet) => sheet.columns);
  return [
    ...sheets.flatMap(({ leftOut, why }) => (leftOut && why !== undefined ? [`  ${why}`] : [])),
    ...strangerLines(read),
    ...dayLines(log),
    ...new Set(columns.flatMap((column) => doubtsOf(column, units).map((line) => `  ${line}`))),
    ...wordLines(log),
  ];
}

/** Words that nobody has said the meaning of, each once, with what to write. */
function wordLines(log: Log): readonly string[] {
  return wordQuestions(log).map(({ field, word, choices, cells }) => {
    const cell = cells[0]!;
    const count = cells.length === 1 ? "" : ` and ${counted(cells.length - 1, "other cell", "other cells")}`;
    return (
      `  What does “${word}” under ${fieldWord(field)} mean (${cell.sheet}!${cellName(cell)}${count})? ` +
      `Add --word "${fieldWord(field)}: ${word} = …" with one of: ${choices.join(", ")}.`
    );
  });
}

/** Fills that have no day of their own. */
function dayLines({ fills }: Log): readonly string[] {
  const headed = fills.filter(
    ({ fields: { date } }) => date.kind === "value" && date.note === FROM_DAY_ABOVE,
  ).length;
  return headed === 0
    ? []
    : [
        `  ${counted(headed, "fill has its day", "fills have their day")} from a row above that holds nothing else.`,
      ];
}

/** Columns that nobody understood, sheets that have the same ones together. */
function strangerLines(sheets: readonly LogSheet[]): readonly string[] {
  const sheetsOf = new Map<string, string[]>();
  for (const { name, columns } of sheets) {
    const names = columns.filter(isStranger).map(columnName).join(", ");
    if (names !== "") sheetsOf.set(names, [...(sheetsOf.get(names) ?? []), name]);
  }
  return [...sheetsOf].map(([names, of]) => `  Columns not read in ${of.join(", ")}: ${names}.`);
}

/** Nobody said that it is not to be read. */
function isStranger({ field, confidence, question }: LogColumn): boolean {
  return field === undefined && confidence < 1 && question === undefined;
}

function sheetLines(sheet: LogSheet, units: Units | undefined): readonly string[] {
  const { name, kind, why, leftOut, columns, hiddenRows, headingsChanged } = sheet;
  if (leftOut && why !== undefined) return [why, ""];
  return [
    `${name}: ${KINDS[kind]}${why === undefined ? "" : ` (${why.replace(/\.$/, "")})`}.`,
    ...columns.flatMap((column) => [
      columnLine(column),
      ...doubtsOf(column, units).map((line) => `        ${line}`),
    ]),
    ...(hiddenRows > 0
      ? [`  ${counted(hiddenRows, "hidden row was", "hidden rows were")} read like the others.`]
      : []),
    ...(headingsChanged
      ? ["  The headings have changed since its columns were chosen: choose them again."]
      : []),
    "",
  ];
}

function columnLine({ column, heading, field, unit, confidence }: LogColumn): string {
  const read =
    field === undefined
      ? "not read"
      : `${fieldWord(field)}${unit === undefined ? "" : `, ${unit}`} (${confidenceWord(confidence)})`;
  return `  ${columnLetters(column).padEnd(3)}${heading.padEnd(24)} ${read}`;
}

/** What was taken as usual, and what is asked, each with what to write. */
function doubtsOf(column: LogColumn, units: Units | undefined): readonly string[] {
  const { assumed, question } = column;
  return [
    ...(assumed === undefined ? [] : [`${assumed} If not, say so with --dates, --units or --column.`]),
    ...(question === undefined
      ? []
      : [`${question.sentence} Add ${answersTo(question, column, units).join(" or ")}.`]),
  ];
}

/** What to write on the command line to answer what is asked of a column. */
function answersTo(
  { about, choices }: ColumnQuestion,
  column: LogColumn,
  units: Units | undefined,
): readonly string[] {
  if (about === "date order") return choices.map((choice) => `--dates ${choice.replace(" ", "-")}`);
  if (about === "unit" && units === undefined) return ["--units us", "--units metric"];
  return choices.map((choice) => `--column "${bareName(column)}=${choice}"`);
}

function columnName(column: LogColumn): string {
  return column.heading === "" ? `column ${columnLetters(column.column)}` : `“${column.heading}”`;
}

function bareName({ heading, column }: LogColumn): string {
  return heading === "" ? columnLetters(column) : heading;
}
