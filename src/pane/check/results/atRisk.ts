import type { Acceptances } from "../../../audit/judge/acceptance";
import type { DueLists } from "../../../audit/lists/dueLists";
import type { CylinderAtRisk, AuditResult } from "../../../audit/judge/finding";
import { notToFillNext, openRisks } from "../../../audit/lists/recall";
import { placeName } from "../useJump";
import type { ListedCylinder } from "./CylinderList";
import { dayInWords } from "./dayInWords";

/** Whose telephone should ring: for each cylinder the gravest of what is wrong, and what to do. */
export function toCall(recall: readonly CylinderAtRisk[], accepted: Acceptances): readonly ListedCylinder[] {
  return openRisks(recall, accepted).map(({ serial, owner, fillDate, findings }) => {
    const [{ message, todo, severity, cell }] = findings as [CylinderAtRisk["findings"][number]];
    const filled = fillDate === "" ? "Day of the last fill not known" : `Last filled ${dayInWords(fillDate)}`;
    return {
      serial,
      owner,
      mark: severity,
      says: `${message} ${todo}`,
      about: `${filled} · ${placeName(cell)}`,
      cell,
      findings: findings.length,
    };
  });
}

/** What to turn away at the counter: by what is wrong with the vessel, and by what is out of date today. */
export function toTurnAway(
  { doNotFill }: AuditResult,
  due: DueLists | undefined,
  accepted: Acceptances,
): readonly ListedCylinder[] {
  const open = openRisks(doNotFill, accepted);
  const nothingDue = { asOf: "", outOfDate: [], dueWithin: [], notKnown: [] };
  return notToFillNext({ doNotFill: open }, due ?? nothingDue).map(({ serial, owner, reasons, cell }) => ({
    serial,
    owner,
    mark: "breach" as const,
    says: reasons.join(" "),
    about: placeName(cell),
    cell,
  }));
}
