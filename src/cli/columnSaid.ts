import { plain } from "../log/cells/cell";
import { isAbout } from "../log/columns/choices";
import { DUE_CHOICES, FULL_PRESSURE_CHOICES } from "../log/columns/columns";
import type { ColumnSaid } from "../log/context";
import { KINDS } from "../log/fieldKinds";
import type { Field, Log } from "../log/log";
import { fieldWord } from "../words/fields";
import { CommandProblem } from "./problem";

const EXAMPLE = `--column "Out=bar" or --column "Gas=analysed mix"`;

/** `Out=bar`: what `--column` says of every column with that heading. */
export function readColumnSaid(text: string): ColumnSaid {
  const at = text.lastIndexOf("=");
  const [heading, answer] = [text.slice(0, at).trim(), text.slice(at + 1).trim()];
  if (at < 0 || heading === "" || answer === "")
    throw new CommandProblem(`"${text}": write a heading and what holds for it, such as ${EXAMPLE}.`);
  const said = ANSWERS.get(bare(answer));
  if (said) return { answers: {}, ...said, heading };
  throw new CommandProblem(
    `"${answer}" says nothing of a column. Write a unit (psi, bar, F, C, ft, m), day first, month first, year first, ` +
      `last test, next due, not read, or what it holds: ${FIELDS.map((field) => fieldWord(field).toLowerCase()).join(", ")}.`,
  );
}

/** Throws CommandProblem where something was said of a heading that the log does not have. */
export function refuseUnknownHeadings(said: readonly ColumnSaid[], { sheets }: Log): void {
  const columns = sheets.flatMap((sheet) => sheet.columns);
  for (const each of said) {
    if (columns.some((column) => isAbout(each, column))) continue;
    const headings = [...new Set(columns.map(({ heading }) => heading).filter((heading) => heading !== ""))];
    throw new CommandProblem(
      `No column of this log is headed "${each.heading}". Its headings: ${headings.slice(0, 40).join(", ")}.`,
    );
  }
}

type Answer = Partial<Pick<ColumnSaid, "field" | "answers">>;

const FIELDS = Object.keys(KINDS) as Field[];

const WRITTEN: readonly (readonly [written: string, answer: Answer])[] = [
  ...FIELDS.map((field) => [field, { field }] as const),
  ...FIELDS.map((field) => [fieldWord(field), { field }] as const),
  ...[...DUE_CHOICES, ...FULL_PRESSURE_CHOICES].map(([choice, field]) => [choice, { field }] as const),
  ...["psi", "bar", "°F", "°C", "ft", "m"].map((unit) => [unit, { answers: { unit } }] as const),
  ["F", { answers: { unit: "°F" } }],
  ["C", { answers: { unit: "°C" } }],
  ["day first", { answers: { "date order": "day first" } }],
  ["month first", { answers: { "date order": "month first", "stamp order": "month first" } }],
  ["year first", { answers: { "stamp order": "year first" } }],
  ["last test", { answers: { "stamp means": "last test" } }],
  ["next due", { answers: { "stamp means": "next due" } }],
  ["not read", { field: null }],
];

const ANSWERS: ReadonlyMap<string, Answer> = new Map(
  WRITTEN.map(([written, answer]) => [bare(written), answer]),
);

/** Hyphens spare the quotation marks on a command line. */
function bare(text: string): string {
  return plain(text).replace(/[\s-]+/g, " ");
}
