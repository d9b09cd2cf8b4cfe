import { dayNumber } from "../cylinders/calendar";
import type { CountryRules } from "../cylinders/countryRules";
import type { Cylinder, Fill, Log } from "../log/log";
import { CylinderOnRecord } from "./cylinderOnRecord";
import type { FilledCylinder } from "./rule";

/** Every cylinder of every fill, in the order of the log, with all that the log says of it. */
export function* filledCylinders(log: Log, rules: CountryRules): Generator<FilledCylinder> {
  const register = registerOf(log.cylinders);
  const known = new Map<string, CylinderOnRecord>();
  const onRecord = (serial: string, fill: Fill): CylinderOnRecord => {
    if (fill.cylinderInRow) {
      return new CylinderOnRecord([fill.cylinderInRow, ...(register.get(serial) ?? [])], rules);
    }
    const found = known.get(serial) ?? new CylinderOnRecord(register.get(serial) ?? [], rules);
    known.set(serial, found);
    return found;
  };
  for (const fill of log.fills) {
    const { date, serial } = fill.fields;
    const day = date.kind === "value" ? dayNumber(date.value) : undefined;
    const serials = serial.kind === "value" && serial.value.length > 0 ? serial.value : [""];
    for (const each of serials) yield { fill, serial: each, day, cylinder: onRecord(each, fill) };
  }
}

function registerOf(cylinders: readonly Cylinder[]): ReadonlyMap<string, readonly Cylinder[]> {
  const register = new Map<string, Cylinder[]>();
  for (const cylinder of cylinders) {
    const { serial } = cylinder.fields;
    for (const each of serial.kind === "value" ? serial.value : []) {
      const entries = register.get(each);
      if (entries) entries.push(cylinder);
      else register.set(each, [cylinder]);
    }
  }
  return register;
}
