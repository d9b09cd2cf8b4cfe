import type { CountryRules } from "../../cylinders/countryRules";
import type { Cylinder, Log, RowPlace } from "../../log/log";
import { cylindersOf, joinRegister } from "../../log/register";
import { inSteps, type Steps } from "../../sheet/steps";
import { CylinderOnRecord } from "./cylinderOnRecord";
import { inTimeOrder } from "../walk/timeOrder";

/** A cylinder that the log knows, whether it was filled or only stands in the register. */
export interface KnownCylinder {
  readonly serial: string;
  /** As the latest fill names the owner, else the register; undefined where nobody does. */
  readonly owner: string | undefined;
  /** Its latest fill's row; of a cylinder that was never filled, the register's. */
  readonly row: RowPlace;
  readonly cylinder: CylinderOnRecord;
}

/** Every cylinder of a log with all that is on record of it, in the order in which the log comes to it; in steps. */
export function* knownCylinders(log: Log, rules: CountryRules): Steps<readonly KnownCylinder[]> {
  const register = joinRegister(log);
  const found = new Map<string, Found>();
  for (const [key, records] of register.bySerial) {
    const serial = register.written.get(key) ?? key;
    found.set(serial, { serial, records, owner: ownerIn(records), row: records[0]! });
  }
  for (const [key, held] of register.byShopNumber) {
    const records = held.filter(({ fields }) => fields.serial.kind !== "value");
    if (records.length === 0) continue;
    const number = register.writtenNumbers.get(key) ?? key;
    found.set(number, { serial: number, records, owner: ownerIn(records), row: records[0]! });
  }
  yield* inSteps(inTimeOrder(log), log.fills.length, ({ fill }) => {
    const { owner } = fill.fields;
    for (const { serial, by, records } of cylindersOf(fill, register)) {
      if (serial === "") continue;
      const named = owner.kind === "value" ? owner.value : undefined;
      // Two customers may each have a number 12.
      const isNumberOnly = fill.fields.serial.kind !== "value" && by !== "shop number" && by !== "serial";
      const key = isNumberOnly ? `${serial} of ${named ?? "nobody"}` : serial;
      const known = found.get(key);
      found.set(key, { serial, records, owner: named ?? ownerIn(records) ?? known?.owner, row: fill });
    }
  });
  return [...found.values()].map(({ serial, records, owner, row }) => ({
    serial,
    owner,
    row: { sheet: row.sheet, row: row.row },
    cylinder: new CylinderOnRecord(records, rules),
  }));
}

interface Found extends Pick<KnownCylinder, "serial" | "owner" | "row"> {
  readonly records: readonly Cylinder[];
}

function ownerIn(records: readonly Cylinder[]): string | undefined {
  for (const { fields } of records) if (fields.owner.kind === "value") return fields.owner.value;
  return undefined;
}
