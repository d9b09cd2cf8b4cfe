/** Options that say something of the shop and of its log. */
export const LOG_OPTIONS = {
  rules: { type: "string" },
  units: { type: "string" },
  dates: { type: "string" },
  column: { type: "string", multiple: true },
  word: { type: "string", multiple: true },
  sheet: { type: "string", multiple: true },
  "not-sheet": { type: "string", multiple: true },
  "as-of": { type: "string" },
} as const;

/** Those that say how its cells are to be read, as usage lines have them. */
export const HOW_TO_READ = '[--units us] [--dates day-first] [--column "Out=bar"]';

/** The same in words, for the help. */
export const LOG_OPTIONS_IN_WORDS: readonly string[] = [
  "--rules US            whose rules: a country of docs/rules.md. Needed unless the workbook keeps it.",
  "--units us            or metric: what bare numbers are in, where neither heading nor cell says it.",
  "--dates day-first     or month-first: how dates such as 9/10/2026 are written in this log.",
  '--column "Out=bar"    what holds for a column, by its heading: a unit, what it holds ("Gas=analysed mix"),',
  '                      "Hydro=next due", "Notes=not read". May be given several times.',
  '--word "Status: BER = out of service"',
  "                      what a word of the log means that no table knows; check lists what is open, with what to type.",
  "--sheet NAME          read this sheet although it does not look like a log; --not-sheet NAME leaves one out.",
  "--as-of 2026-10-31    the day the log is looked at; today unless given.",
];
