import type { Fill, Log } from "../../log/log";
import { cylindersOf, joinRegister, type CylinderMatch, type RegisterIndex } from "../../log/register";
import { CylinderOnRecord } from "../cylinderOnRecord";
import { isKnownByName } from "../nameOf";
import type { FilledCylinder } from "../rule";
import type { Shop } from "../shop";
import { sourceOf } from "../sources";
import { leftBy } from "./leftIn";
import { NO_PAST, PastFill, type CylinderPast } from "./past";
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
  const pasts = new Map<string, KnownPast>();
  let fillsBefore = 0;
  for (const timed of inTimeOrder(log)) {
    const { fill, index, day } = timed;
    for (const match of matches.of(fill)) {
      const { serial, suggestion, note } = match;
      const register = log.cylinders.length === 0 ? "none" : isFound(match) ? "found" : "not found";
      const known = isKnownByName({ fill, serial, register }) ? pasts.get(serial) : undefined;
      const past = known ? pastAt(known, timed) : NO_PAST;
      const plain: FilledCylinder = {
        fill,
        serial,
        day,
        register,
        cylinder: onRecord(match, timed, records, shop),
        past,
        row: rows.around(index),
      };
      const filled =
        suggestion === undefined && note === undefined
          ? plain
          : {
              ...plain,
              ...(suggestion !== undefined && { suggestion }),
              ...(note !== undefined && { note }),
            };
      yield { filled, fillsBefore };
      if (isKnownByName(filled)) pasts.set(serial, pastAfter(known, filled, shop));
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

/**
 * What is kept of a cylinder between its fills, brought up to date in place: with a million fills, a new object for each
 * would outlive its use by far.
 */
interface KnownPast {
  fills: number;
  fill: Fill;
  day: number | undefined;
  mix: PastFill["mix"];
  mixBy: PastFill["mixBy"];
  lastOily: PastFill | undefined;
}

function pastAfter(known: KnownPast | undefined, filled: FilledCylinder, shop: Shop): KnownPast {
  const last = leftBy(filled, shop);
  const { fill, day, mix, mixBy } = last;
  const isOily = sourceOf(fill, shop)?.oxygenCompatible === false;
  const after = known ?? { fills: 0, fill, day, mix, mixBy, lastOily: undefined };
  after.fills++;
  after.fill = fill;
  after.day = day;
  after.mix = mix;
  after.mixBy = mixBy;
  if (isOily) after.lastOily = last;
  return after;
}

function pastAt({ fills, fill, day, mix, mixBy, lastOily }: KnownPast, timed: TimedFill): CylinderPast {
  const last = new PastFill(fill, day, mix, mixBy);
  return { fills, last, lastOily, orderOnTrust: orderOnTrust(last, timed) };
}

/** Why the order of two fills is taken from their rows alone; undefined where date and time say it. */
function orderOnTrust({ day: lastDay, fill }: PastFill, { day, minute }: TimedFill): string | undefined {
  if (day === undefined || lastDay === undefined)
    return "a fill of the cylinder has no date that can be read";
  return day === lastDay && (minute === undefined || fill.fields.time.kind !== "value")
    ? "the cylinder was filled more than once that day, and times do not say in which order"
    : undefined;
}
