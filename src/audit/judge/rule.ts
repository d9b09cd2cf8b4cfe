import type { Field, Fill } from "../../log/log";
import type { CylinderOnRecord } from "../record/cylinderOnRecord";
import type { Verdict } from "./verdict";
import type { Shop } from "../shop/shop";
import type { CylinderPast } from "../walk/past";
import type { RowInLog } from "../walk/rowInLog";

export * from "./verdict";

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
