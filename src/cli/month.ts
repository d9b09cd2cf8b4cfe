import { writeFile } from "node:fs/promises";
import { dirname, relative, resolve } from "node:path";
import { Temporal } from "temporal-polyfill";
import type { CountryRules } from "../cylinders/countryRules";
import { counted } from "../words/counts";
import { monthReport, type MonthReport } from "../reports/month/monthReport";
import { PROGRAM, unitsOf } from "../reports/month/options";
import { monthsOf } from "../reports/month/period";
import type { SheetDraft } from "../sheet/draft/draft";
import { FileWorkbook } from "../workbook/file/fileWorkbook";
import { writeXlsx } from "../workbook/file/writeXlsx";
import { EXIT, type Command, type Given, type Terminal } from "./command";
import { readLogFile, rulesOf, type LogFile } from "./logFile";
import { HOW_TO_READ, LOG_OPTIONS } from "./logOptions";
import { CommandProblem } from "./problem";

/** The report of one month as a workbook of its own; the log is only read. */
export const month: Command = {
  name: "month",
  usage:
    `month LOG 2026-10 --rules US --out report.xlsx ${HOW_TO_READ} [--as-of 2026-10-31] [--shop NAME] ` +
    "[--prepared-by NAME] [--paper A4] [--names]",
  says:
    "Writes the compliance report of a month as a workbook. --names names owners and receivers; --prepared-by signs it, " +
    "with a checksum of its figures. The same log, day and rules give the same file, byte by byte.",
  options: {
    ...LOG_OPTIONS,
    out: { type: "string" },
    shop: { type: "string" },
    "prepared-by": { type: "string" },
    paper: { type: "string" },
    names: { type: "boolean" },
  },

  async run(given, terminal) {
    const [name, written, ...more] = given.words;
    if (more.length > 0) throw new CommandProblem(`"${more[0]}" is one word too many. Write: ${month.usage}`);
    const wanted = readMonth(written);
    const out = readOut(given, terminal, name);
    const file = await readLogFile({ ...given, words: name === undefined ? [] : [name] }, terminal);
    const rules = rulesOf(file);
    if (!monthsOf(file.log).some((each) => each.month.equals(wanted))) throw noFills(wanted, file);
    const logFile = relative(dirname(out), resolve(terminal.folder, name!)).replaceAll("\\", "/");
    const report = await monthReport(file.log, rules, optionsOf(given, file, rules, wanted, logFile));
    await save(out, report.drafts);
    for (const line of [...file.notices, ...summary(report, given.value("out")!)]) terminal.print(line);
    return EXIT.nothingFound;
  },
};

function optionsOf(
  given: Given,
  { options, settings, units, asOf }: LogFile,
  rules: CountryRules,
  wanted: Temporal.PlainYearMonth,
  logFile: string,
) {
  return {
    month: wanted,
    asOf,
    units: units ?? unitsOf(rules),
    paper: readPaper(given.value("paper")) ?? rules.habits.paper,
    names: given.has("names"),
    shopName: given.value("shop") ?? settings.shopName,
    audit: options,
    accepted: settings.accepted,
    logFile,
    preparedBy: given.value("prepared-by"),
    program: PROGRAM,
  };
}

async function save(out: string, drafts: readonly SheetDraft[]): Promise<void> {
  const workbook = new FileWorkbook({ sheets: [], settings: new Map(), leftOut: [] });
  await workbook.addSheets(drafts);
  const bytes = await writeXlsx(workbook.content);
  /* Never over what is there: it may be another log, a signed report, or by a link the log itself. */
  await writeFile(out, bytes, { flag: "wx" }).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "EEXIST")
      throw new CommandProblem(
        `“${out}” is there already: give the report another name, or move that file away.`,
      );
    throw new CommandProblem(
      `“${out}” cannot be written (${error.code ?? error.message}): check the folder, and close the file if it is open.`,
    );
  });
}

function summary(
  { month: { fills }, findings, result, checksum }: MonthReport,
  out: string,
): readonly string[] {
  return [
    `${out}: ${counted(fills.length, "fill")}, ${counted(findings.open.length, "open finding")}, ` +
      `${findings.accepted.length} accepted, ${counted(result.notChecked.length, "reason")} why something was not checked.`,
    `Checksum of its figures: ${checksum}`,
  ];
}

function readMonth(text: string | undefined): Temporal.PlainYearMonth {
  if (text === undefined) throw new CommandProblem("Name the month after the file, such as 2026-10.");
  try {
    if (/^\d{4}-\d{2}$/.test(text)) return Temporal.PlainYearMonth.from(text, { overflow: "reject" });
  } catch {
    // told below
  }
  throw new CommandProblem(`"${text}" is no month: write it as 2026-10.`);
}

function readOut(given: Given, { folder }: Terminal, log: string | undefined): string {
  const out = given.value("out");
  if (out === undefined) throw new CommandProblem("Say where the report goes: add --out report.xlsx.");
  if (!/\.xlsx$/i.test(out))
    throw new CommandProblem(`"${out}" is no .xlsx file: give it a name such as report.xlsx.`);
  const path = resolve(folder, out);
  if (log !== undefined && path === resolve(folder, log))
    throw new CommandProblem("The report would be written over the log: give it another name.");
  return path;
}

function readPaper(text: string | undefined): "A4" | "Letter" | undefined {
  if (text === undefined) return undefined;
  const paper = (["A4", "Letter"] as const).find((each) => each.toLowerCase() === text.toLowerCase());
  if (paper) return paper;
  throw new CommandProblem(`"${text}" is no paper: write A4 or Letter.`);
}

function noFills(wanted: Temporal.PlainYearMonth, { log }: LogFile): CommandProblem {
  const months = monthsOf(log).map(({ month }) => month.toString());
  return new CommandProblem(
    months.length === 0
      ? "No fill of this log has a date that can be read: see what read says of its columns."
      : `The log has no fills in ${wanted.toString()}: choose one of ${months.slice(0, 12).join(", ")}.`,
  );
}
