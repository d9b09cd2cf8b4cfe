import type { Sheet } from "../../sheet/sheet";
import type { EnteredCylinder } from "../form";

/** Headings that the log's own reader knows, so that a cylinder written here is read as one of a register. */
const COLUMNS: readonly (readonly [heading: (units: "psi" | "bar") => string, keyof EnteredCylinder])[] = [
  [() => "Serial", "serial"],
  [() => "Owner", "owner"],
  [() => "Size", "size"],
  [(unit) => `Service pressure ${unit}`, "servicePressure"],
  [() => "Hydro", "hydro"],
  [() => "Visual", "visual"],
  [() => "Oxygen cleaned", "cleaned"],
  [() => "Oxygen rating", "rating"],
];

/** What the sheet of cylinders written in the pane is called; no tab of a workbook may hold these signs. */
export const ENTERED = "[written here]";

/** The cylinders that somebody wrote into the pane, as a register to be read beside the workbook's own. */
export function enteredSheet(
  cylinders: readonly EnteredCylinder[],
  units: "us" | "metric",
): Sheet | undefined {
  if (cylinders.length === 0) return undefined;
  const unit = units === "us" ? "psi" : "bar";
  const headings = COLUMNS.map(([heading]) => heading(unit));
  const rows = cylinders.map((cylinder) => COLUMNS.map(([, field]) => cellOf(cylinder[field], field)));
  return {
    name: ENTERED,
    hidden: false,
    dateSystem: 1900,
    merges: [],
    rows: [headings, ...rows].map((values) => ({ values })),
  };
}

/** Numbers as numbers, but serials and stamps as they were written. */
function cellOf(text: string, field: keyof EnteredCylinder): string | number | null {
  const written = text.trim();
  if (written === "") return null;
  const isNumber = field === "servicePressure" || field === "rating";
  return isNumber && /^\d+(\.\d+)?$/.test(written) ? Number(written) : written;
}
