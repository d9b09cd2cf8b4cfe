import type { Refusal } from "../../gas/refusal";
import { BLANK, type Reading } from "../../log/reading";
import { notJudged, type FilledCylinder, type NotJudged, type Place } from "./rule";
import type { TestHistory } from "../record/testHistory";
import { fieldName } from "../../words/fields";

/*
 * What rules ask the log for, and how they say that it does not know. The reasons are the same for all fills with the
 * same lack, so that they can be counted.
 */

/** The verdict that a reading is not there, or not to be trusted. */
export function lacking(reading: Exclude<Reading<unknown>, { kind: "value" }>, at: Place): NotJudged {
  const name = fieldName(at.field);
  switch (reading.kind) {
    case "blank":
      return { ...notJudged(`${name} is blank`, at), blank: true };
    case "ambiguous":
      return notJudged(`${name} can be read in more than one way`, at, `${name}: ${reading.why}`);
    case "unknown word":
      return notJudged(`the ${name} “${reading.word}” is not known`, at, `${name}: ${reading.why}`);
    case "unreadable":
      return notJudged(`${name} cannot be read`, at, `${name}: ${reading.why}`);
  }
}

/** As `lacking`, of what the log should know of the cylinder: where it knows no such cylinder, that is the reason. */
export function lackingOnRecord(
  filled: FilledCylinder,
  reading: Exclude<Reading<unknown>, { kind: "value" }>,
  at: Place,
): NotJudged {
  return (reading.kind === "blank" ? withoutRecord(filled) : undefined) ?? lacking(reading, at);
}

function withoutRecord({ fill, register, note }: FilledCylinder): NotJudged | undefined {
  if (register !== "not found") return undefined;
  const { serial, shopNumber } = fill.fields;
  if (serial.kind === "value") return notJudged("serial is not in the register", { field: "serial" });
  if (shopNumber.kind === "value") {
    // The note on a number that was not found is that the register has it twice.
    const why = note === undefined ? "is not in the register" : "is held by more than one cylinder";
    return notJudged(`shop number ${why}`, { field: "shopNumber" });
  }
  return lacking(serial, { field: "serial" });
}

/** The day of the fill, or the verdict that it is not known. */
export function dayOf({ fill, day }: FilledCylinder): number | NotJudged {
  const { date } = fill.fields;
  if (day !== undefined) return day;
  return lacking(date.kind === "value" ? BLANK : date, { field: "date" });
}

/** The verdict that the country's rules do not name the class. */
export function unknownClass({ cylinder }: FilledCylinder, { message }: Refusal): NotJudged {
  const [record] = cylinder.records;
  const at: Place = { field: "cylinderClass", ...(record && { record }) };
  return notJudged("class is not in the country's rules", at, message);
}

/** The verdict that one serial stands for two cylinders, so that nothing on record can be trusted; else undefined. */
export function twoCylinders({ cylinder }: FilledCylinder): NotJudged | undefined {
  const { other } = cylinder;
  return (
    other && notJudged("serial stands for two cylinders in the register", { record: other, field: "serial" })
  );
}

/** The verdict that only a test made after the fill is on record: it proves nothing about the fill. */
export function onlyLater(field: "hydro" | "visual" | "oxygenCleaned", history: TestHistory): NotJudged {
  const at = history.tests[0]?.at ?? { field };
  return notJudged(`the only ${fieldName(field)} on record is later than the fill`, at);
}

/** A cell of the fill's own row: the one meant if it stands there, else the serial, which leads to the register. */
export function inFill({ fill }: FilledCylinder, at: Place): Place {
  return at.record === undefined || at.record === fill.cylinderInRow ? at : { field: "serial" };
}
