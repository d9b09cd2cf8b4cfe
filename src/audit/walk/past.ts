import type { Mixture } from "../../gas/mixture";
import type { Fill } from "../../log/log";

/** What the log shows of a cylinder's life up to just before one of its fills. */
export interface CylinderPast {
  /** Its fills in the log before this one: it had at least so many. */
  readonly fills: number;
  /** The fill before this one; undefined for its first in the log. */
  readonly last: PastFill | undefined;
  /** Its latest fill from a source known not to be oxygen compatible. */
  readonly lastOily: PastFill | undefined;
  /** Why the fill before it is taken for that by the order of the rows alone; undefined where date and time say so. */
  readonly orderOnTrust: string | undefined;
}

/** An earlier fill, and what it left in the cylinder. Breathing it takes pressure, not the mix. */
export class PastFill {
  constructor(
    readonly fill: Fill,
    readonly day: number | undefined,
    /** Undefined where the log does not let it be known. */
    readonly mix: Mixture | undefined,
    readonly mixBy: "analysis" | "mass balance" | "order" | undefined,
    /** Bar absolute, as settled where that was read; undefined where neither reading is known. */
    readonly pressureBar: number | undefined,
  ) {}
}

/** Of a cylinder that the log has not seen before. */
export const NO_PAST: CylinderPast = Object.freeze({
  fills: 0,
  last: undefined,
  lastOily: undefined,
  orderOnTrust: undefined,
});
