import type { CylinderRules } from "../../cylinders/countryRules";
import { Refusal } from "../../gas/refusal";
import type { Cylinder, CylinderField, CylinderFields } from "../../log/log";
import { BLANK, type Reading } from "../../log/reading";
import { lackingOnRecord, twoCylinders, unknownClass } from "../judge/lacks";
import type { CylinderOnRecord, OnRecord } from "./cylinderOnRecord";
import type { FilledCylinder, NotJudged, Place } from "../judge/rule";

type ValueOf<R> = Extract<R, { kind: "value" }> extends { value: infer T } ? T : never;

/** What stands in a field: the first value, else the first doubt, else where a value would stand. */
export function read<F extends CylinderField>(
  cylinder: CylinderOnRecord,
  field: F,
): OnRecord<ValueOf<CylinderFields[F]>> {
  const readOnce = (READERS[field] ??= oncePerCylinder(({ records }) => firstOf(records, field)));
  return readOnce(cylinder) as OnRecord<ValueOf<CylinderFields[F]>>;
}

/** One for each field that anybody has asked for. */
const READERS: { [field in CylinderField]?: (cylinder: CylinderOnRecord) => OnRecord<unknown> } = {};

function firstOf(records: readonly Cylinder[], field: CylinderField): OnRecord<unknown> {
  let found: OnRecord<unknown> | undefined;
  for (const record of records) {
    const reading: Reading<unknown> = record.fields[field];
    if (reading.kind === "value") return { reading, at: { record, field } };
    if (found === undefined || found.reading.kind === "blank") found = { reading, at: { record, field } };
  }
  return found ?? { reading: BLANK, at: { field } };
}

/** How many places of `workedOut` are given out. */
let placesTaken = 0;

/** What a rule works out of a cylinder's records alone, worked out once for all its fills. */
export function oncePerCylinder<T>(
  work: (cylinder: CylinderOnRecord) => T,
): (cylinder: CylinderOnRecord) => T {
  const place = placesTaken++;
  return (cylinder) => {
    const { workedOut } = cylinder;
    if (!(place in workedOut)) workedOut[place] = work(cylinder);
    return workedOut[place] as T;
  };
}

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
  const { reading, at } = read(filled.cylinder, field);
  return reading.kind === "value" ? { value: reading.value, at } : lackingOnRecord(filled, reading, at);
}

/** The rules for the cylinder's class, or the verdict that they are not known. */
export function classRules(filled: FilledCylinder): CylinderRules | NotJudged {
  const doubt = twoCylinders(filled);
  if (doubt) return doubt;
  const { rules, records } = filled.cylinder;
  if (records.length === 0) return lackingOnRecord(filled, BLANK, { field: "cylinderClass" });
  return rules instanceof Refusal ? unknownClass(filled, rules) : rules;
}

/** Whether it is the verdict that something is not known. */
export function isLack(answer: unknown): answer is NotJudged {
  return typeof answer === "object" && answer !== null && "kind" in answer && answer.kind === "not judged";
}
