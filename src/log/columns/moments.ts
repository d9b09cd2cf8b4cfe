import type { ColumnInRole } from "./draft";
import { TEST_FIELDS } from "../fieldKinds";
import type { Role } from "../headings/headingFields";
import { hasDecimals, shareOf, shareRead } from "./sample";

const MIXES = ["startMix", "orderedMix", "analysedMix"] as const;
const PRESSURES = ["startPressure", "endPressure", "settledPressure"] as const;
const OF_A_FILL: readonly Role[] = [...PRESSURES, ...MIXES, "method", "some mix"];

/** Tells pressures and mixes apart that name no moment: by the pressure before them, else by their order. */
export function settleMoments(columns: readonly ColumnInRole[]): void {
  settleEnds(columns, "start of something", "startPressure", "startMix", "endPressure");
  settleEnds(columns, "end of something", "endPressure", "analysedMix", "startPressure");
  settlePressures(columns);
  settleMixes(columns);
  for (const helium of withRole(columns, "some helium")) {
    const before = roleBefore(helium, columns);
    helium.role =
      before === "startMix" ? "startHelium" : before === "orderedMix" ? "orderedHelium" : "analysedHelium";
  }
}

/** `In` over 50 and 40: pressures in bar where `Out` is a pressure, else mixes if they can be. */
function settleEnds(
  columns: readonly ColumnInRole[],
  open: Role,
  pressure: Role,
  mix: Role,
  otherEnd: Role,
): void {
  for (const column of withRole(columns, open)) {
    const isPressure = withRole(columns, otherEnd).length > 0 && withRole(columns, pressure).length === 0;
    column.role = isPressure ? pressure : shareRead(column.sample, "mix") > 0.5 ? mix : undefined;
  }
}

function settlePressures(columns: readonly ColumnInRole[]): void {
  const pressures = withRole(columns, "some pressure");
  const open = PRESSURES.filter((role) => withRole(columns, role).length === 0);
  if (pressures.length > 1) return assign(pressures, open);
  // A pressure among tests, where nothing is filled, is the one that is stamped.
  const isRegister =
    TEST_FIELDS.some((test) => withRole(columns, test).length > 0) &&
    !columns.some(({ role }) => role !== undefined && OF_A_FILL.includes(role));
  assign(pressures, isRegister ? ["servicePressure"] : open.includes("endPressure") ? ["endPressure"] : open);
}

function settleMixes(columns: readonly ColumnInRole[]): void {
  const mixes = withRole(columns, "some mix");
  if (mixes.length > 1) {
    for (const mix of mixes) {
      const role = mixBehind(roleBefore(mix, columns));
      if (role !== undefined && withRole(columns, role).length === 0) mix.role = role;
    }
  }
  const rest = withRole(columns, "some mix");
  if (rest.length === 1) return assign(rest, [onlyMix(rest[0]!, columns)]);
  const open = MIXES.filter((role) => withRole(columns, role).length === 0);
  assign(rest, rest.length === 2 && open.length === 3 ? ["startMix", "analysedMix"] : open);
}

/** The mix that stands behind a pressure is the one in the cylinder at that moment. */
function mixBehind(pressure: Role | undefined): Role | undefined {
  if (pressure === "startPressure") return "startMix";
  return pressure === "endPressure" || pressure === "settledPressure" ? "analysedMix" : undefined;
}

/** A mix alone is the order, as whole numbers are; analyses have decimals, and stand under “O2”. */
function onlyMix(mix: ColumnInRole, columns: readonly ColumnInRole[]): Role {
  if (withRole(columns, "analysedMix").length > 0) return "orderedMix";
  const analysed = mix.meaning.concepts.has("oxygen") || shareOf(mix.sample, hasDecimals) > 0.3;
  return analysed || withRole(columns, "orderedMix").length > 0 ? "analysedMix" : "orderedMix";
}

function roleBefore(column: ColumnInRole, columns: readonly ColumnInRole[]): Role | undefined {
  return columns[columns.indexOf(column) - 1]?.role;
}

export function withRole<Column extends ColumnInRole>(
  columns: readonly Column[],
  role: Role,
): readonly Column[] {
  return columns.filter((column) => column.role === role);
}

function assign(columns: readonly ColumnInRole[], roles: readonly Role[]): void {
  columns.forEach((column, index) => {
    column.role = roles[index];
  });
}
