import { SEVERITY_WORDS } from "../../kit/SeverityMark";
import { countRows, reconciliationLine, type CheckReport } from "../report";
import { ruleInWords } from "../../../audit/rules/ruleInWords";
import { placeName } from "../useJump";
import { dayInWords } from "./dayInWords";
import type { ShownFinding } from "./filter";
import { GROUPS } from "./useFindings";

/** The findings as plain text, for an e-mail or a notebook: as on screen, with what was not checked. */
export function findingsText(
  report: CheckReport,
  all: readonly ShownFinding[],
  findings: readonly ShownFinding[],
): string {
  const lines = [
    "Brimbook: check of the fill log",
    reconciliationLine(countRows(report.sheets)),
    GROUPS.map(
      (wanted) => `${SEVERITY_WORDS[wanted]} ${all.filter(({ group }) => group === wanted).length}`,
    ).join(", "),
    "A check of what was written, not of the gas: analyse every cylinder.",
    "",
    ...report.notChecked.map(
      ({ rule, count, why }) => `Not checked: ${count} (${ruleInWords(rule)}), ${why}`,
    ),
    ...(findings.length < all.length ? [`Showing ${findings.length} of ${all.length} findings.`] : []),
    "",
    ...findings.map(({ finding, acceptance }) => {
      const { severity, rule, serial, fillDate, cell, message, todo, basis, source } = finding;
      const about = [serial, fillDate, placeName(cell)].filter(Boolean).join(", ");
      const letStand = acceptance
        ? ` Accepted by ${acceptance.by} on ${dayInWords(acceptance.on)}: ${acceptance.reason}`
        : "";
      return `${SEVERITY_WORDS[severity]}: ${message} ${todo}${letStand} [${about}; rule ${rule}, ${basis}: ${source}]`;
    }),
  ];
  return lines.join("\n");
}
