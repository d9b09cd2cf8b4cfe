import { dayNumber } from "../cylinders/calendar";
import type { CountryRules } from "../cylinders/countryRules";
import type { Log } from "../log/log";
import { cylindersOf, joinRegister, type CylinderMatch } from "../log/register";
import { CylinderOnRecord } from "./cylinderOnRecord";
import type { FilledCylinder } from "./rule";
import { NO_PAST } from "./walk/past";

/** Every cylinder of every fill, in the order of the log, with all that the log says of it. */
export function* filledCylinders(log: Log, rules: CountryRules): Generator<FilledCylinder> {
  const register = joinRegister(log);
  const known = new Map<string, CylinderOnRecord>();
  const onRecord = ({ serial, records }: CylinderMatch, shared: boolean): CylinderOnRecord => {
    if (!shared) return new CylinderOnRecord(records, rules);
    const found = known.get(serial) ?? new CylinderOnRecord(records, rules);
    known.set(serial, found);
    return found;
  };
  for (const fill of log.fills) {
    const { date } = fill.fields;
    const day = date.kind === "value" ? dayNumber(date.value) : undefined;
    for (const match of cylindersOf(fill, register)) {
      // Records of the register are the same for every fill of the serial; a row of its own is only this fill's.
      const shared = match.serial !== "" && fill.cylinderInRow === undefined;
      yield {
        fill,
        serial: match.serial,
        day,
        register: log.cylinders.length === 0 ? "none" : isFound(match) ? "found" : "not found",
        cylinder: onRecord(match, shared),
        past: NO_PAST,
        ...(match.suggestion !== undefined && { suggestion: match.suggestion }),
        ...(match.note !== undefined && { note: match.note }),
      };
    }
  }
}

function isFound({ by }: CylinderMatch): boolean {
  return by === "serial" || by === "shop number";
}
