import type { Basis } from "../../cylinders/countryRules";
import type { CellAddress } from "../../sheet/sheet";
import type { Override } from "../shop/limits";
import type { Severity } from "./severity";

export type { Basis } from "../../cylinders/countryRules";

export * from "./severity";

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

/** A cylinder that somebody has to be called about, or that must not be filled as it is. */
export interface CylinderAtRisk {
  /** Or its shop number, as findings have it; `no serial` where the log has neither. */
  readonly serial: string;
  /** It has no serial in the log, so that no later fill is known to be of it. */
  readonly nameless?: true;
  /** As the last fill names the owner, else the register; undefined where nobody does. */
  readonly owner: string | undefined;
  /** The cell of its last fill that names it, and that fill's ISO date; empty where it could not be read. */
  readonly lastFill: CellAddress;
  readonly fillDate: string;
  /** What is wrong, the worst first. */
  readonly findings: readonly Finding[];
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
