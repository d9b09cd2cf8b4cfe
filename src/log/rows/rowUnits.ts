import { absoluteBar } from "../../gas/units";
import type { CellValue } from "../../sheet/sheet";
import type { PressureUnit } from "../cells/pressure";
import type { PressureReading } from "../log";
import { ambiguous, type Reading } from "../reading";

/** No cylinder comes in with as much, in bar; so a higher number is in psi. */
const MOST_BAR = 300;

/**
 * A start pressure as the end pressure of its row lets it be: a bare number, in a column whose unit nobody stated, is
 * in doubt beside an end pressure that is in another unit, or of which nobody knows in which.
 */
export function startBeside(
  start: Reading<PressureReading>,
  end: Reading<PressureReading>,
  cell: CellValue | undefined,
): Reading<PressureReading> {
  if (start.kind !== "value" || !isBare(cell)) return start;
  const { value, unit } = start.value.written;
  // Nobody reads a psi gauge to a decimal.
  if (value === 0 || value > MOST_BAR || !(Number.isInteger(value) && isOther(end, unit))) return start;
  const as = (each: PressureUnit): PressureReading => ({
    bar: absoluteBar(value, each === "psi" ? "us" : "metric"),
    written: { value, unit: each },
  });
  return ambiguous(
    [as(unit === "psi" ? "bar" : "psi"), start.value],
    `${value} psi or ${value} bar? The end pressure of this row is not in ${unit}, as others of the column are.`,
    "unit",
  );
}

function isBare(cell: CellValue | undefined): boolean {
  return typeof cell === "number" || (typeof cell === "string" && /^[\d., ]+$/.test(cell));
}

function isOther(end: Reading<PressureReading>, unit: PressureUnit): boolean {
  return end.kind === "value"
    ? end.value.written.unit !== unit
    : end.kind === "ambiguous" && end.doubt === "unit";
}
