import type { Reading } from "../log/reading";
import { notJudged, type FilledCylinder, type NotJudged, type Place } from "./rule";
import type { DoubtfulTest, TestHistory } from "./tests";
import { fieldName } from "./words";

/*
 * What rules ask the log for, and how they say that it does not know. The reasons are the same for all fills with the
 * same lack, so that they can be counted.
 */

/** The verdict that a reading is not there, or not to be trusted. */
export function lacking(reading: Exclude<Reading<unknown>, { kind: "value" }>, at: Place): NotJudged {
  const name = fieldName(at.field);
  switch (reading.kind) {
    case "blank":
      return blank(at);
    case "ambiguous":
      return notJudged(`${name} can be read in more than one way`, at, `${name}: ${reading.why}`);
    case "unreadable":
      return notJudged(`${name} cannot be read`, at, `${name}: ${reading.why}`);
  }
}

function blank(at: Place): NotJudged {
  return { kind: "not judged", why: `${fieldName(at.field)} is blank`, blank: true, at };
}

/** The verdict that the fill's own day is not known. */
export function withoutDate({ fill }: FilledCylinder): NotJudged {
  const { date } = fill.fields;
  return date.kind === "value"
    ? notJudged("fill date cannot be read", { field: "date" })
    : lacking(date, { field: "date" });
}

/** The verdict that the log knows nothing of the cylinder; undefined where it does. */
export function withoutRecord({ fill, cylinder }: FilledCylinder): NotJudged | undefined {
  if (cylinder.records.length > 0) return undefined;
  const { serial } = fill.fields;
  return serial.kind === "value"
    ? notJudged("serial is not in the register", { field: "serial" })
    : lacking(serial, { field: "serial" });
}

export function doubtful({ reading, at }: DoubtfulTest): NotJudged {
  return lacking(reading, at);
}

/** The verdict that there is no test on record at all. */
export function withoutTest(
  filled: FilledCylinder,
  history: TestHistory,
  field: "hydro" | "visual" | "oxygenCleaned",
): NotJudged {
  return withoutRecord(filled) ?? blank(history.blankAt ?? { field });
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
