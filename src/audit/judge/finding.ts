import type { Basis } from "../../cylinders/countryRules";
import type { CellAddress } from "../../sheet/sheet";
import type { Override } from "../shop/limits";
import type { CylinderAtRisk } from "../lists/recall";

export type { Basis } from "../../cylinders/countryRules";

/** Ordered by harm. */
export const SEVERITIES = ["stop", "breach", "warn", "note"] as const;
export type Severity = (typeof SEVERITIES)[number];

export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  readonly basis: Basis;
  /** The published source, short: "49 CFR 180.205(c)". */
  readonly source: string;
  readonly cell: CellAddress;
  /** As the log writes it; the shop number where it has none, else empty. */
  readonly serial: string;
  /** ISO date of the fill; empty where the finding is about the register. */
  readonly fillDate: string;
  /** One sentence of what is wrong. */
  readonly message: string;
  /** One sentence of what to do. */
  readonly todo: string;
  /** What it rests on, as one short text: another one once the cells say something else. */
  readonly evidence: string;
  /** The fault alone, where the sentence also names the one fill: what the fills of one cylinder have in common. */
  readonly fault?: string;
  /** Of a doubt of a whole column: every cell that has it. */
  readonly cells?: readonly CellAddress[];
}

/** Fills that a rule could not judge, and why. Unknown is never a pass. */
export interface NotChecked {
  readonly rule: string;
  readonly count: number;
  readonly why: string;
  /** The first few cells, to look at. */
  readonly cells: readonly CellAddress[];
  /** Every cell, as runs down a column; none where the log has no such column. */
  readonly runs: readonly CellRun[];
}

/** Cells one below the other, from the first to the last row. */
export interface CellRun extends CellAddress {
  readonly lastRow: number;
}

export interface AuditResult {
  readonly findings: readonly Finding[];
  readonly notChecked: readonly NotChecked[];
  /** Whether hydro, visual and oxygen rating were judged for every fill. */
  readonly fullyJudged: boolean;
  /** Cylinders whose last fill is dangerous and has not been replaced since: call the owners first. */
  readonly recall: readonly CylinderAtRisk[];
  /** Cylinders that were last filled although something is wrong with the vessel, which the next fill will not cure. */
  readonly doNotFill: readonly CylinderAtRisk[];
  /** The shop's own figures by which it was judged, in place of those of the country or the trade. */
  readonly overrides: readonly Override[];
}
