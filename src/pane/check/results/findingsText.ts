import { SEVERITIES } from "../../../audit/finding";
import { SEVERITY_WORDS } from "../../kit/SeverityMark";
import { countRows, reconciliationLine, type CheckReport } from "../report";
import { ruleInWords } from "../ruleWords";
import { placeName } from "../useJump";
import type { ShownFinding } from "./useFindings";

/** The findings as plain text, for an e-mail or a notebook: as on screen, with what was not checked. */
export function findingsText(report: CheckReport, findings: readonly ShownFinding[]): string {
  const lines = [
    "Brimbook: check of the fill log",
    reconciliationLine(countRows(report.sheets)),
    SEVERITIES.map(
      (severity) =>
        `${SEVERITY_WORDS[severity]} ${report.findings.filter((finding) => finding.severity === severity).length}`,
    ).join(", "),
    "A check of what was written, not of the gas: analyse every cylinder.",
    "",
    ...report.notChecked.map(
      ({ rule, count, why }) => `Not checked: ${count} (${ruleInWords(rule)}), ${why}`,
    ),
    ...(findings.length < report.findings.length
      ? [`Showing ${findings.length} of ${report.findings.length} findings.`]
      : []),
    "",
    ...findings.map(({ finding }) => {
      const { severity, rule, serial, fillDate, cell, message, todo, basis, source } = finding;
      const about = [serial, fillDate, placeName(cell)].filter(Boolean).join(", ");
      return `${SEVERITY_WORDS[severity]}: ${message} ${todo} [${about}; rule ${rule}, ${basis}: ${source}]`;
    }),
  ];
  return lines.join("\n");
}
