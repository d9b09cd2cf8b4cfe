import { acceptancesOf, countAccepted, type Acceptance } from "../audit/judge/acceptance";
import { audit } from "../audit/audit";
import { runName } from "../audit/judge/cellRuns";
import { faultsOf } from "../audit/judge/oneFault";
import type { CylinderAtRisk, AuditResult, Finding } from "../audit/judge/finding";
import type { CountryRules } from "../cylinders/countryRules";
import type { Log } from "../log/log";
import { wordQuestions } from "../log/questions/wordQuestions";
import { acceptedRisks, openRisks, type AcceptedRisk } from "../audit/lists/recall";
import { cellName, type CellAddress } from "../sheet/sheet";
import { checkLines } from "./checkLines";
import { EXIT, type Command, type ExitCode } from "./command";
import { CommandProblem } from "./problem";
import { fillsAfter, readLogFile, rulesOf, type LogFile } from "./logFile";
import { HOW_TO_READ, LOG_OPTIONS } from "./logOptions";

/** The audit of a log in a file. */
export const check: Command = {
  name: "check",
  usage: `check LOG --rules US ${HOW_TO_READ} [--as-of 2026-10-31] [--names] [--json]`,
  says:
    "Checks every fill of a log; --names names the owners of cylinders to call back. Exit code 0: nothing found, hydro, " +
    "visual and oxygen rating judged for every fill; 1: findings; 3: nothing found, but one of those could not be judged " +
    "for some fill; 2: cannot be read, is no log but a report of Brimbook's own, or rules missing.",
  options: { ...LOG_OPTIONS, names: { type: "boolean" }, json: { type: "boolean" } },

  async run(given, terminal) {
    const file = await readLogFile(given, terminal);
    const { log, options, notices } = file;
    const rules = rulesOf(file);
    if (log.fills.length === 0 && log.cylinders.length === 0) throw noLog(log);
    const result = audit(log, rules, options);
    const names = given.has("names");
    if (given.has("json")) terminal.print(JSON.stringify(asJson(file, rules, result, names), null, 2));
    else for (const line of [...notices, ...checkLines(file, result, rules, names)]) terminal.print(line);
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

function asJson(
  file: LogFile,
  rules: CountryRules,
  { findings, notChecked, overrides, recall }: AuditResult,
  names: boolean,
): unknown {
  const { log, units, asOf, settings } = file;
  const accepted = acceptancesOf(settings.accepted);
  return {
    file: file.name,
    rules: rules.country,
    units,
    asOf: asOf.toString(),
    fillsAfterAsOf: fillsAfter(file),
    questions: wordQuestions(log).map(({ field, word, choices, cells }) => ({
      field,
      word,
      choices,
      cells: cells.map(placeOf),
    })),
    rows: log.rows,
    recall: [...openRisks(recall, accepted), ...acceptedRisks(recall, accepted)].map((cylinder) =>
      recalled(cylinder, names),
    ),
    accepted: countAccepted(accepted, findings),
    notChecked: notChecked.map(({ rule, count, why, runs }) => ({
      rule,
      count,
      why,
      cells: runs.map((run) => ({ sheet: run.sheet, cells: runName(run) })),
    })),
    faults: faultsOf(findings).map(({ rule, severity, message, todo, cells }) => ({
      rule,
      severity,
      message,
      todo,
      cells: cells.map(placeOf),
    })),
    findings: findings.map((finding) => described(finding, accepted.of(finding))),
    overrides,
  };
}

function described(
  { rule, severity, basis, source, cell, serial, fillDate, message, todo }: Finding,
  acceptance: Acceptance | undefined,
): unknown {
  return {
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
    ...(acceptance ? { accepted: { reason: acceptance.reason, by: acceptance.by, on: acceptance.on } } : {}),
  };
}

function recalled(cylinder: CylinderAtRisk | AcceptedRisk, names: boolean): unknown {
  const { serial, owner, lastFill, fillDate, findings } = cylinder;
  return {
    serial,
    ...(names && owner !== undefined ? { owner } : {}),
    fillDate,
    sheet: lastFill.sheet,
    row: lastFill.row + 1,
    rules: findings.map(({ rule }) => rule),
    ...("accepted" in cylinder && {
      accepted: cylinder.accepted.map(({ reason, by, on }) => ({ reason, by, on })),
    }),
  };
}

function placeOf(cell: CellAddress): { sheet: string; cell: string; row: number } {
  return { sheet: cell.sheet, cell: cellName(cell), row: cell.row + 1 };
}
