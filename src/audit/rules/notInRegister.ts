import { lacking } from "../asking";
import { DOES_NOT_APPLY, PASS, type Rule } from "../rule";

/** A cylinder that was filled but is not in the register: its dates and rating are not known. BS EN 1920. */
export const notInRegister: Rule = {
  id: "R01",
  rank: 26,
  title: "Cylinder not in the register",
  needs: [["serial"]],
  judge({ fill, serial, cylinder }, { hasRegister }) {
    if (!hasRegister) return DOES_NOT_APPLY;
    if (cylinder.records.length > 0) return PASS;
    const at = { field: "serial" } as const;
    if (fill.fields.serial.kind !== "value") return lacking(fill.fields.serial, at);
    return {
      kind: "fault",
      severity: "breach",
      basis: "practice",
      source: "BS EN 1920",
      message: `Cylinder ${serial} is not in the register: nothing is known of its tests and rating.`,
      todo: "Compare the serial with the cylinder; correct it here, or enter the cylinder in the register.",
      at,
    };
  },
};
