import type { Fill, Log } from "../../log/log";
import { cylindersOf, joinRegister, type CylinderMatch, type RegisterIndex } from "../../log/register";
import { inSteps, type Steps } from "../../sheet/steps";
import { CylinderOnRecord } from "../record/cylinderOnRecord";
import type { FilledCylinder } from "../judge/rule";
import type { Shop } from "../shop/shop";
import { CylinderLife } from "./cylinderLife";
import { NO_PAST } from "./past";
import { LogRows } from "./rowInLog";
import { inTimeOrder } from "./timeOrder";

/** A cylinder of a fill. */
export interface WalkStep {
  readonly filled: FilledCylinder;
  /** One and the same for all fills of a cylinder; absent where no other fill is known to be of it. */
  readonly life: CylinderLife | undefined;
}

/**
 * Comes by every cylinder of every fill in the order they were made, with all that the log says of the cylinder, and what
 * its fills before have made of it; a few fills at a time.
 */
export function* walk(log: Log, shop: Shop, each: (step: WalkStep) => void): Steps<void> {
  const cylinders = new WalkedCylinders(log, shop);
  const rows = new LogRows(log);
  yield 0;
  yield* inSteps(inTimeOrder(log), log.fills.length, (timed) => {
    const { fill, index, day } = timed;
    for (const { serial, register, cylinder, life, remarks } of cylinders.of(fill)) {
      const past = life ? life.before(timed) : NO_PAST;
      const plain: FilledCylinder = { fill, serial, day, register, cylinder, past, row: rows.around(index) };
      const filled = remarks ? { ...plain, ...remarks } : plain;
      each({ filled, life });
      life?.after(filled, shop);
    }
  });
}

/** A cylinder of a fill: how the log knows it, and what is followed of it. */
interface Walked extends Pick<FilledCylinder, "serial" | "register" | "cylinder">, Pick<WalkStep, "life"> {
  readonly remarks: Pick<FilledCylinder, "suggestion" | "note"> | undefined;
}

/** The cylinders that a walk has come by. */
class WalkedCylinders {
  readonly #register: RegisterIndex;
  /** Readings of equal cells are shared, so that each serial is looked up once. */
  readonly #byReading = new Map<Fill["fields"]["serial"], readonly Walked[]>();
  readonly #lives = new Map<string, CylinderLife>();

  constructor(
    private readonly log: Log,
    private readonly shop: Shop,
  ) {
    this.#register = joinRegister(log);
  }

  of(fill: Fill): readonly Walked[] {
    const { serial } = fill.fields;
    if (serial.kind !== "value" || fill.cylinderInRow !== undefined) return this.#lookUp(fill);
    let found = this.#byReading.get(serial);
    if (found === undefined) this.#byReading.set(serial, (found = this.#lookUp(fill)));
    return found;
  }

  #lookUp(fill: Fill): readonly Walked[] {
    return cylindersOf(fill, this.#register).map((match) => {
      const { serial, suggestion, note } = match;
      const register = this.log.cylinders.length === 0 ? "none" : isFound(match) ? "found" : "not found";
      const life = isKnownByName(fill, serial, register) ? this.#lifeOf(match) : undefined;
      // Records of the register are the same for every fill of the cylinder; a row of its own is only this fill's.
      const isShared = life !== undefined && fill.cylinderInRow === undefined;
      const cylinder = isShared ? life.cylinder : this.#onRecord(match);
      const remarks =
        suggestion === undefined && note === undefined
          ? undefined
          : { ...(suggestion !== undefined && { suggestion }), ...(note !== undefined && { note }) };
      return { serial, register, cylinder, life, remarks };
    });
  }

  #lifeOf(match: CylinderMatch): CylinderLife {
    let life = this.#lives.get(match.serial);
    if (life === undefined) this.#lives.set(match.serial, (life = new CylinderLife(this.#onRecord(match))));
    return life;
  }

  #onRecord({ records }: CylinderMatch): CylinderOnRecord {
    return new CylinderOnRecord(records, this.shop.rules);
  }
}

/**
 * Whether another fill by the same name is of the same cylinder: by its serial, or by a number of the register. A shop
 * number alone may be two customers' own.
 */
function isKnownByName({ fields }: Fill, serial: string, register: FilledCylinder["register"]): boolean {
  return serial !== "" && (fields.serial.kind === "value" || register === "found");
}

function isFound({ by }: CylinderMatch): boolean {
  return by === "serial" || by === "shop number";
}
