import type { Fill, Log } from "../../log/log";
import { cylindersOf, joinRegister, type CylinderMatch, type RegisterIndex } from "../../log/register";
import { CylinderOnRecord } from "../cylinderOnRecord";
import type { FilledCylinder } from "../rule";
import type { Shop } from "../shop";
import { sourceOf } from "../sources";
import { leftBy } from "./leftIn";
import { NO_PAST, type CylinderPast } from "./past";
import { LogRows } from "./rowInLog";
import { inTimeOrder, type TimedFill } from "./timeOrder";

/** A cylinder of a fill, and how many fills of the log come before it. */
export interface WalkStep {
  readonly filled: FilledCylinder;
  readonly fillsBefore: number;
}

/**
 * Every cylinder of every fill in the order they were made, with all that the log says of the cylinder, and what its
 * fills before have made of it.
 */
export function* walk(log: Log, shop: Shop): Generator<WalkStep> {
  const matches = new Matches(joinRegister(log));
  const rows = new LogRows(log);
  const records = new Map<string, CylinderOnRecord>();
  const pasts = new Map<string, CylinderPast>();
  let fillsBefore = 0;
  for (const timed of inTimeOrder(log)) {
    const { fill, index, day } = timed;
    for (const match of matches.of(fill)) {
      const { serial, suggestion, note } = match;
      const past = pasts.get(serial) ?? NO_PAST;
      const known: FilledCylinder = {
        fill,
        serial,
        day,
        register: log.cylinders.length === 0 ? "none" : isFound(match) ? "found" : "not found",
        cylinder: onRecord(match, timed, records, shop),
        past: past.last ? withOrder(past, timed) : past,
        row: rows.around(index),
      };
      const filled =
        suggestion === undefined && note === undefined
          ? known
          : {
              ...known,
              ...(suggestion !== undefined && { suggestion }),
              ...(note !== undefined && { note }),
            };
      yield { filled, fillsBefore };
      if (serial !== "") pasts.set(serial, pastAfter(filled, shop));
    }
    fillsBefore++;
  }
}

/** Readings of equal cells are shared, so that each serial is looked up once. */
class Matches {
  readonly #bySerial = new Map<Fill["fields"]["serial"], readonly CylinderMatch[]>();

  constructor(private readonly register: RegisterIndex) {}

  of(fill: Fill): readonly CylinderMatch[] {
    const { serial } = fill.fields;
    if (serial.kind !== "value" || fill.cylinderInRow !== undefined) return cylindersOf(fill, this.register);
    let found = this.#bySerial.get(serial);
    if (found === undefined) this.#bySerial.set(serial, (found = cylindersOf(fill, this.register)));
    return found;
  }
}

/** Records of the register are the same for every fill of the serial; a row of its own is only this fill's. */
function onRecord(
  match: CylinderMatch,
  { fill }: TimedFill,
  known: Map<string, CylinderOnRecord>,
  { rules }: Shop,
): CylinderOnRecord {
  if (match.serial === "" || fill.cylinderInRow !== undefined)
    return new CylinderOnRecord(match.records, rules);
  const found = known.get(match.serial) ?? new CylinderOnRecord(match.records, rules);
  known.set(match.serial, found);
  return found;
}

function isFound({ by }: CylinderMatch): boolean {
  return by === "serial" || by === "shop number";
}

function pastAfter(filled: FilledCylinder, shop: Shop): CylinderPast {
  const { past } = filled;
  const last = leftBy(filled, shop);
  const isOily = sourceOf(filled.fill, shop)?.oxygenCompatible === false;
  return {
    fills: past.fills + 1,
    last,
    lastOily: isOily ? last : past.lastOily,
    orderOnTrust: undefined,
  };
}

function withOrder(past: CylinderPast, { day, minute }: TimedFill): CylinderPast {
  const { day: lastDay, fill } = past.last!;
  const orderOnTrust =
    day === undefined || lastDay === undefined
      ? "a fill of the cylinder has no date that can be read"
      : day === lastDay && (minute === undefined || fill.fields.time.kind !== "value")
        ? "the cylinder was filled more than once that day, and times do not say in which order"
        : undefined;
  return orderOnTrust === undefined ? past : { ...past, orderOnTrust };
}
