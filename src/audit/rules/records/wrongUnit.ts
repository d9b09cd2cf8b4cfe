import type { FillField, PressureReading } from "../../../log/log";
import type { Reading } from "../../../log/reading";
import { read } from "../../record/readField";
import { PASS, type FilledCylinder, type Rule, type Verdict } from "../../judge/rule";
import { fieldName } from "../../../words/fields";

/** A full cylinder of this many "psi" was read in bar; its service pressure is at least 1800 psi (trade sizes). */
const BAR_TAKEN_FOR_PSI = { least: 150, most: 330 };
const PSI_CYLINDER = 1500;

const FIELDS = ["settledPressure", "endPressure", "startPressure"] as const;

/** A pressure in the other unit than its column: the trade's sizes have no such pressures. */
export const wrongUnit: Rule = {
  id: "R06",
  rank: 46,
  title: "Pressure in the wrong unit",
  needs: [FIELDS],
  judge(filled) {
    for (const field of FIELDS) {
      const reading = filled.fill.fields[field];
      if (isInDoubt(reading) || (field !== "startPressure" && isFullInBar(reading, filled)))
        return fault(field, reading);
    }
    return PASS;
  },
};

function isInDoubt(reading: Reading<PressureReading>): boolean {
  return reading.kind === "ambiguous" && reading.doubt === "unit";
}

function isFullInBar(reading: Reading<PressureReading>, { cylinder }: FilledCylinder): boolean {
  if (reading.kind !== "value" || reading.value.written.unit !== "psi") return false;
  const { reading: service } = read(cylinder, "servicePressure");
  const { value } = reading.value.written;
  return (
    service.kind === "value" &&
    service.value.written.unit === "psi" &&
    service.value.written.value >= PSI_CYLINDER &&
    value >= BAR_TAKEN_FOR_PSI.least &&
    value <= BAR_TAKEN_FOR_PSI.most
  );
}

function fault(field: FillField, reading: Reading<PressureReading>): Verdict {
  const isOpen = reading.kind === "ambiguous" && reading.choices.length > 1;
  return {
    kind: "fault",
    severity: "warn",
    basis: "practice",
    source: "trade sizes of cylinders",
    message: isOpen
      ? `Nothing says whether the ${fieldName(field)} is in psi or bar.`
      : reading.kind === "value"
        ? `${reading.value.written.value} psi at the end of a fill is probably ${reading.value.written.value} bar.`
        : `The unit of this pressure is in doubt${reading.kind === "ambiguous" ? `: ${reading.why}` : "."}`,
    todo: isOpen
      ? "Write the unit into the heading of the column, or behind each number, such as 207 bar."
      : "Write the unit behind the number, such as 207 bar.",
    at: { field },
    ...(isOpen && { ofColumn: true }),
  };
}
