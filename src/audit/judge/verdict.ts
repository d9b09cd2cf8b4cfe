import type { Basis } from "../../cylinders/countryRules";
import type { Cylinder, Field } from "../../log/log";
import type { Severity } from "./severity";

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

export const PASS: Verdict = Object.freeze({ kind: "pass" });
export const DOES_NOT_APPLY: Verdict = Object.freeze({ kind: "does not apply" });

export function notJudged(why: string, at: Place, detail?: string): NotJudged {
  return { kind: "not judged", why, at, ...(detail !== undefined && { detail }) };
}
