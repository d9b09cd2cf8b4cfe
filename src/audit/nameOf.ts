import type { FilledCylinder } from "./rule";

/** What a cylinder goes by: its serial, else its shop number; empty where the fill gives neither. */
export function nameOf({ serial, fill }: FilledCylinder): string {
  const { shopNumber } = fill.fields;
  return serial === "" && shopNumber.kind === "value" ? shopNumber.value : serial;
}

/**
 * Whether another fill by the same name is of the same cylinder: by its serial, or by a number of the register. A shop
 * number alone may be two customers' own.
 */
export function isKnownByName({
  serial,
  fill,
  register,
}: Pick<FilledCylinder, "serial" | "fill" | "register">): boolean {
  return serial !== "" && (fill.fields.serial.kind === "value" || register === "found");
}
