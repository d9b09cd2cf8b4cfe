import { cellName } from "../../sheet/sheet";
import type { Finding } from "./finding";

/**
 * A finding that the shop has looked into and lets stand, with its reason. It holds for this very finding only, and only
 * as it was: once the cells say something else, the finding is open again.
 */
export interface Acceptance {
  readonly rule: string;
  readonly serial: string;
  /** ISO date of the fill; empty where the finding is about the register. */
  readonly fillDate: string;
  readonly sheet: string;
  /** `B7`: where the log is sorted anew, the finding stands elsewhere and is open again. */
  readonly cell: string;
  /** What the finding rested on. */
  readonly evidence: string;
  readonly reason: string;
  /** Who accepted it, and on which day, as an ISO date. */
  readonly by: string;
  readonly on: string;
}

/** Which finding is meant: the same one in the next check, as long as rule, cylinder, day, cell and evidence are the same. */
export type FindingIdentity = Pick<
  Acceptance,
  "rule" | "serial" | "fillDate" | "sheet" | "cell" | "evidence"
>;

export function identityOf({ rule, serial, fillDate, cell, evidence }: Finding): FindingIdentity {
  return { rule, serial, fillDate, sheet: cell.sheet, cell: cellName(cell), evidence };
}

/** The identity as one text, to look it up by. */
export function identityKey({ rule, serial, fillDate, sheet, cell, evidence }: FindingIdentity): string {
  return JSON.stringify([rule, serial, fillDate, sheet, cell, evidence]);
}

/** The same finding, whatever it rests on: a new acceptance of it takes the place of an older one. */
function placeKey(identity: FindingIdentity): string {
  return identityKey({ ...identity, evidence: "" });
}

/** What was accepted, to be asked of each finding. */
export interface Acceptances {
  of(finding: Finding): Acceptance | undefined;
}

export function acceptancesOf(accepted: readonly Acceptance[] = []): Acceptances {
  if (accepted.length === 0) return { of: () => undefined };
  const byKey = new Map(accepted.map((acceptance) => [identityKey(acceptance), acceptance]));
  return { of: (finding) => byKey.get(identityKey(identityOf(finding))) };
}

/** How many of these findings are accepted, and by whom: what a workbook that came from elsewhere brings with it. */
export interface AcceptedCount {
  readonly count: number;
  /** Each once, in the order of the list. */
  readonly by: readonly string[];
}

export function countAccepted(accepted: Acceptances, findings: readonly Finding[]): AcceptedCount {
  const held = findings.flatMap((finding) => accepted.of(finding) ?? []);
  return { count: held.length, by: [...new Set(held.map(({ by }) => by))] };
}

/** What was accepted and is not among these findings: mended, changed, moved to another row, or judged otherwise now. */
export function noLongerFound(
  accepted: readonly Acceptance[] = [],
  findings: readonly Finding[],
): readonly Acceptance[] {
  if (accepted.length === 0) return [];
  const found = new Set(findings.map((finding) => identityKey(identityOf(finding))));
  return accepted.filter((acceptance) => !found.has(identityKey(acceptance)));
}

/** The list with this one in it, in place of an earlier one for the same finding. */
export function withAcceptance<A extends FindingIdentity>(
  accepted: readonly A[],
  acceptance: A,
): readonly A[] {
  return [...withoutAcceptance(accepted, acceptance), acceptance];
}

/** The list without the one for this finding. */
export function withoutAcceptance<A extends FindingIdentity>(
  accepted: readonly A[],
  of: FindingIdentity,
): readonly A[] {
  const place = placeKey(of);
  return accepted.filter((each) => placeKey(each) !== place);
}
