import type { FilledCylinder } from "../judge/rule";

/** What a cylinder goes by: its serial, else its shop number; empty where the fill gives neither. */
export function nameOf({ serial, fill }: FilledCylinder): string {
  const { shopNumber } = fill.fields;
  return serial === "" && shopNumber.kind === "value" ? shopNumber.value : serial;
}
