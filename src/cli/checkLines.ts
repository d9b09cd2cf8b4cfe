import type { AuditResult, Finding } from "../audit/finding";
import { SEVERITIES } from "../audit/finding";
import type { CountryRules } from "../cylinders/countryRules";
import type { Log } from "../log/log";
import { counted } from "../pane/check/report";
import { ruleInWords } from "../pane/check/ruleWords";
import { cellName } from "../sheet/sheet";
import { rowLines } from "./readingLines";

const CAUTION =
  "This is a check of what the log says, not of the cylinders. Local codes, the cylinder's markings and licensed " +
  "practice come first; a fill that is not listed is not thereby safe.";

/** The audit as text: what was read, the findings by harm, what could not be judged, and the caution. */
export function checkLines(log: Log, result: AuditResult, rules: CountryRules): readonly string[] {
  return [
    `Rules: ${rules.name}.`,
    ...rowLines(log),
    "",
    ...findingLines(result.findings),
    ...notCheckedLines(result),
    "",
    CAUTION,
  ];
}

function findingLines(findings: readonly Finding[]): readonly string[] {
  if (findings.length === 0) return ["Nothing found."];
  return SEVERITIES.flatMap((severity) => {
    const ofSeverity = findings.filter((finding) => finding.severity === severity);
    if (ofSeverity.length === 0) return [];
    return [`${WORDS[severity]} (${ofSeverity.length})`, ...ofSeverity.flatMap(oneFinding), ""];
  });
}

const WORDS = { stop: "STOP", breach: "BREACH", warn: "WARN", note: "NOTE" } as const;

function oneFinding({ rule, source, basis, cell, message, todo }: Finding): readonly string[] {
  return [
    `  ${cell.sheet}!${cellName(cell)}  ${message}`,
    `      ${todo}`,
    `      ${ruleInWords(rule)}; ${basis}: ${source}`,
  ];
}

function notCheckedLines({ notChecked, fullyJudged }: AuditResult): readonly string[] {
  if (notChecked.length === 0) {
    return fullyJudged ? ["Hydro, visual and oxygen rating were judged for every fill."] : [NOT_JUDGED];
  }
  return [
    "NOT CHECKED",
    ...notChecked.map(({ rule, count, why }) => `  ${ruleInWords(rule)}: ${counted(count, "fill")}, ${why}`),
    ...(fullyJudged ? [] : [NOT_JUDGED]),
  ];
}

const NOT_JUDGED = "Hydro, visual and oxygen rating were not judged for every fill: unknown is not a pass.";
