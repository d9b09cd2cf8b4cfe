import type { CylinderRules } from "../cylinders/countryRules";
import { Refusal } from "../gas/refusal";
import type { CylinderField, CylinderFields } from "../log/log";

import { lackingOnRecord, twoCylinders, unknownClass } from "./asking";
import type { ValueOf } from "./cylinderOnRecord";
import type { FilledCylinder, NotJudged, Place } from "./rule";

/** A value of the register or the fill's own row, and where it stands. */
export interface Known<T> {
  readonly value: T;
  readonly at: Place;
}

/** What the log says of the cylinder in this field, or the verdict that it does not say. */
export function known<F extends CylinderField>(
  filled: FilledCylinder,
  field: F,
): Known<ValueOf<CylinderFields[F]>> | NotJudged {
  const doubt = twoCylinders(filled);
  if (doubt) return doubt;
  const { reading, at } = filled.cylinder.read(field);
  return reading.kind === "value" ? { value: reading.value, at } : lackingOnRecord(filled, reading, at);
}

/** The rules for the cylinder's class, or the verdict that they are not known. */
export function classRules(filled: FilledCylinder): CylinderRules | NotJudged {
  const doubt = twoCylinders(filled);
  if (doubt) return doubt;
  const { rules } = filled.cylinder;
  return rules instanceof Refusal ? unknownClass(filled, rules) : rules;
}

/** Whether it is the verdict that something is not known. */
export function isLack(answer: unknown): answer is NotJudged {
  return typeof answer === "object" && answer !== null && "kind" in answer && answer.kind === "not judged";
}
