import type { Fill } from "../../log/log";
import type { CylinderOnRecord } from "../record/cylinderOnRecord";
import type { FilledCylinder } from "../judge/rule";
import type { Shop } from "../shop/shop";
import { sourceOf } from "../shop/gasSources";
import { mixLeft, pressureLeft } from "./leftIn";
import { NO_PAST, PastFill, type CylinderPast } from "./past";
import type { TimedFill } from "./timeOrder";

/**
 * One cylinder followed through its fills. What is kept between them is brought up to date in place: with a million
 * fills, a new object for each would outlive its use by far.
 */
export class CylinderLife {
  #fills = 0;
  #fill: Fill | undefined;
  #day: number | undefined;
  #mix: PastFill["mix"];
  #mixBy: PastFill["mixBy"];
  #pressureBar: number | undefined;
  #lastOily: PastFill | undefined;

  constructor(readonly cylinder: CylinderOnRecord) {}

  /** What its fills have made of it up to just before this one. */
  before(timed: TimedFill): CylinderPast {
    if (this.#fill === undefined) return NO_PAST;
    const last = this.#last(this.#fill);
    return { fills: this.#fills, last, lastOily: this.#lastOily, orderOnTrust: orderOnTrust(last, timed) };
  }

  /** Goes on by one fill. */
  after(filled: FilledCylinder, shop: Shop): void {
    const { mix, mixBy } = mixLeft(filled, shop);
    this.#fills++;
    this.#fill = filled.fill;
    this.#day = filled.day;
    this.#mix = mix;
    this.#mixBy = mixBy;
    this.#pressureBar = pressureLeft(filled.fill);
    if (sourceOf(filled.fill, shop)?.oxygenCompatible === false) this.#lastOily = this.#last(filled.fill);
  }

  #last(fill: Fill): PastFill {
    return new PastFill(fill, this.#day, this.#mix, this.#mixBy, this.#pressureBar);
  }
}

/** Why the order of two fills is taken from their rows alone; undefined where date and time say it. */
function orderOnTrust({ day: lastDay, fill }: PastFill, { day, minute }: TimedFill): string | undefined {
  if (day === undefined || lastDay === undefined)
    return "a fill of the cylinder has no date that can be read";
  return day === lastDay && (minute === undefined || fill.fields.time.kind !== "value")
    ? "the cylinder was filled more than once that day, and times do not say in which order"
    : undefined;
}
