import type { Acceptances } from "../../../audit/acceptance";
import type { CylinderAtRisk } from "../../../audit/recall";
import { SEVERITY_WORDS } from "../../kit/SeverityMark";
import { placeName } from "../useJump";
import { dayInWords } from "./dayInWords";

/** Cylinders with at least one finding that the shop has not accepted, with those only; and how many others there are. */
export function openRisks(
  cylinders: readonly CylinderAtRisk[],
  accepted: Acceptances,
): { readonly open: readonly CylinderAtRisk[]; readonly letStand: number } {
  const open = cylinders.flatMap((cylinder) => {
    const findings = cylinder.findings.filter((finding) => accepted.of(finding) === undefined);
    return findings.length > 0 ? [{ ...cylinder, findings }] : [];
  });
  return { open, letStand: cylinders.length - open.length };
}

/** The owner, or that nobody is named. */
export function ownerInWords(owner: string | undefined): string {
  return owner ?? "owner not in the log";
}

/** A list to telephone by, as plain text. */
export function riskText(title: string, cylinders: readonly CylinderAtRisk[]): string {
  const lines = cylinders.map(({ serial, owner, fillDate, findings }) => {
    const filled = fillDate === "" ? "day of the last fill not known" : `last filled ${dayInWords(fillDate)}`;
    const wrong = findings.map(
      ({ severity, message, todo, cell }) =>
        `  ${SEVERITY_WORDS[severity]}: ${message} ${todo} [${placeName(cell)}]`,
    );
    return [`${serial}, ${ownerInWords(owner)}, ${filled}`, ...wrong].join("\n");
  });
  return [`${title}: ${cylinders.length}`, "", ...lines].join("\n");
}
