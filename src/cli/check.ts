import { audit } from "../audit/audit";
import type { AuditResult } from "../audit/finding";
import type { Log } from "../log/log";
import { cellName } from "../sheet/sheet";
import { checkLines } from "./checkLines";
import { EXIT, type Command, type ExitCode } from "./command";
import { CommandProblem } from "./problem";
import { readLogFile, rulesOf, SHOP_OPTIONS } from "./logFile";

/** The audit of a log in a file. */
export const check: Command = {
  name: "check",
  usage: "check LOG --rules US [--units us] [--as-of 2026-10-31] [--json]",
  says:
    "Checks every fill of a log. Exit code 0: nothing found, hydro, visual and oxygen rating judged for every fill; " +
    "1: findings; 3: nothing found, but one of those could not be judged for some fill; 2: cannot be read, or rules missing.",
  options: { ...SHOP_OPTIONS, json: { type: "boolean" } },

  async run(given, terminal) {
    const file = await readLogFile(given, terminal);
    const { log, options, notices } = file;
    const rules = rulesOf(file);
    if (log.fills.length === 0 && log.cylinders.length === 0) throw noLog(log);
    const result = audit(log, rules, options);
    if (given.has("json")) terminal.print(JSON.stringify(asJson(log, result), null, 2));
    else for (const line of [...notices, ...checkLines(log, result, rules)]) terminal.print(line);
    return exitCode(result);
  },
};

function noLog({ sheets }: Log): CommandProblem {
  const why = sheets.find((sheet) => sheet.why !== undefined)?.why;
  return new CommandProblem(
    `No fill and no cylinder could be read in this file, so nothing was checked.${why === undefined ? "" : ` ${why}`}`,
  );
}

function exitCode({ findings, fullyJudged }: AuditResult): ExitCode {
  if (findings.length > 0) return EXIT.findings;
  return fullyJudged ? EXIT.nothingFound : EXIT.notFullyJudged;
}

function asJson(log: Log, { findings, notChecked, overrides }: AuditResult): unknown {
  return {
    rows: log.rows,
    notChecked: notChecked.map(({ rule, count, why }) => ({ rule, count, why })),
    findings: findings.map(({ rule, severity, basis, source, cell, serial, fillDate, message, todo }) => ({
      rule,
      severity,
      basis,
      source,
      sheet: cell.sheet,
      cell: cellName(cell),
      row: cell.row + 1,
      serial,
      fillDate,
      message,
      todo,
    })),
    overrides,
  };
}
