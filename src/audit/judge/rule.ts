import type { Cylinder, Field, Fill } from "../../log/log";
import type { CylinderOnRecord } from "../record/cylinderOnRecord";
import type { Basis, Severity } from "./finding";
import type { Shop } from "../shop/shop";
import type { CylinderPast } from "../walk/past";
import type { RowInLog } from "../walk/rowInLog";

/** One cylinder in one fill; a twin set is filled as two. */
export interface FilledCylinder {
  readonly fill: Fill;
  /** Empty where it could not be read. */
  readonly serial: string;
  /** Day number of the fill; undefined where its date could not be read. */
  readonly day: number | undefined;
  /** Whether the log's register holds it, where the log has a register. */
  readonly register: "found" | "not found" | "none";
  readonly cylinder: CylinderOnRecord;
  /** What the log shows of the cylinder up to just before this fill, its fills taken in the order they were made. */
  readonly past: CylinderPast;
  /** The rows around the fill's, and what their headings say of added gases. */
  readonly row: RowInLog;
  /** A serial of the register that this one may be a slip of. */
  readonly suggestion?: string;
  /** What there is to know of how it was found. */
  readonly note?: string;
}

/** A field of the fill's own row, or of what the log says of the cylinder. */
export interface Place {
  /** The cylinder's row; absent for the fill's own. */
  readonly record?: Cylinder;
  readonly field: Field;
  /** Where the field stands in several columns. */
  readonly column?: number;
}

/** What a rule says of one filled cylinder. */
export type Verdict =
  | { readonly kind: "pass" }
  /** The country asks nothing of the kind for this cylinder or fill. */
  | { readonly kind: "does not apply" }
  | NotJudged
  | Fault;

/** Unknown is never a pass. */
export interface NotJudged {
  readonly kind: "not judged";
  /** Nothing stands there; where the sheet has no such column, that is what is said. */
  readonly blank?: true;
  /** Short, the same for all fills with this lack, so that they can be counted: "hydro is blank". */
  readonly why: string;
  /** The whole sentence for this one cell, where there is more to say. */
  readonly detail?: string;
  readonly at: Place;
}

export interface Fault {
  readonly kind: "fault";
  /** Where nothing stands, if that is the fault: where the sheet has no such column, the fill is not checked instead. */
  readonly blank?: Place;
  readonly severity: Severity;
  readonly basis: Basis;
  readonly source: string;
  readonly message: string;
  /** What is wrong without what is of this one fill, where the message names that too: "Hydro 2019-01 expired …". */
  readonly fault?: string;
  readonly todo: string;
  /** A doubt of a whole column: told once for it, with the rows that have it. */
  readonly ofColumn?: true;
  /** The cell to look at. A fault of the register is told once, however many fills it spoils. */
  readonly at: Place;
}

/** A rule of the audit: what it is about, what it must know, and what it says. */
export interface Rule {
  readonly id: string;
  /** Its place in the order of harm prevented, 1 first. */
  readonly rank: number;
  readonly title: string;
  /** Fields without which nothing can be judged; of an inner list, any one. */
  readonly needs: readonly (readonly Field[])[];
  /** Why it can judge no fill at all in this shop; undefined where it can. Told once. */
  unable?(shop: Shop): string | undefined;
  judge(filled: FilledCylinder, shop: Shop): Verdict;
}

export const PASS: Verdict = Object.freeze({ kind: "pass" });
export const DOES_NOT_APPLY: Verdict = Object.freeze({ kind: "does not apply" });

export function notJudged(why: string, at: Place, detail?: string): NotJudged {
  return { kind: "not judged", why, at, ...(detail !== undefined && { detail }) };
}
