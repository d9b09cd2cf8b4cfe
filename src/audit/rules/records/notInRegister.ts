import { lacking } from "../../judge/lacks";
import {
  DOES_NOT_APPLY,
  PASS,
  type Fault,
  type FilledCylinder,
  type Place,
  type Rule,
} from "../../judge/rule";

/**
 * A cylinder that was filled but is not in the register, or stands there as two: its dates and rating are not known.
 * BS EN 1920.
 */
export const notInRegister: Rule = {
  id: "R01",
  rank: 26,
  title: "Cylinder not in the register, or there twice",
  needs: [["serial", "shopNumber"]],
  judge(filled) {
    const { fill, register, cylinder, note } = filled;
    if (register === "none") return DOES_NOT_APPLY;
    if (cylinder.other) {
      const message = `${filled.serial} stands for two cylinders in the register: the entries differ in more than their tests.`;
      return fault(message, "Look at both cylinders and correct the serials.", {
        record: cylinder.other,
        field: "serial",
      });
    }
    if (register === "found" || hasItsOwnDates(filled)) return PASS;
    const { serial, shopNumber } = fill.fields;
    if (serial.kind === "value") return notFound(filled, filled.serial, "serial");
    if (shopNumber.kind !== "value") return lacking(serial, { field: "serial" });
    return note === undefined
      ? notFound(filled, shopNumber.value, "shopNumber")
      : fault(note, "Write the serial from the cylinder's shoulder.", { field: "shopNumber" });
  },
};

/** In a flat log the row says itself what the register would. */
function hasItsOwnDates({ cylinder }: FilledCylinder): boolean {
  return cylinder.records.some(({ fields }) => fields.hydro.kind !== "blank" || fields.made.kind !== "blank");
}

function notFound({ suggestion }: FilledCylinder, name: string, field: "serial" | "shopNumber"): Fault {
  const todo =
    suggestion === undefined
      ? "Compare it with the cylinder; correct it here, or enter the cylinder in the register."
      : `Compare it with the cylinder: the register has ${suggestion}.`;
  return fault(`${name} is not in the register: nothing is known of its tests and rating.`, todo, { field });
}

function fault(message: string, todo: string, at: Place): Fault {
  return { kind: "fault", severity: "breach", basis: "practice", source: "BS EN 1920", message, todo, at };
}
