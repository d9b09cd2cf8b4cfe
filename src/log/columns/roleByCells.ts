import { showsDate } from "../../sheet/numberFormat";
import { plain, type Cell } from "../cells/cell";
import { dateTextOf } from "../cells/dateText";
import type { ColumnDraft } from "./draft";
import type { Role } from "../headings/headingFields";
import { shareOf, shareRead } from "./sample";
import { LATEST_YEAR_UNKNOWN } from "../settle/dates";

/** What a heading of several meanings stands for, going by the cells below it. */
export function roleByCells(role: Role | undefined, { sample, meaning }: ColumnDraft): Role | undefined {
  const holdsPressures = (): boolean =>
    meaning.unit === "psi" || meaning.unit === "bar" || shareOf(sample, isPressure) > 0.3;
  const namesMixes = (): boolean => shareOf(sample, namesMix) > 0.5;
  // “O2?” and “Nitrox” over yes and no ask what the cylinder may take.
  const mixOrRating = (): Role =>
    shareRead(sample, "mix") === 0 && shareRead(sample, "oxygen service") > 0.5
      ? "oxygenService"
      : "some mix";
  const holdsDates = (): boolean => shareRead(sample, "stamp") > shareRead(sample, "oxygen service");
  const byRole: { readonly [role in Role]?: () => Role | undefined } = {
    "oxygen clean": () => (holdsDates() ? "oxygenCleaned" : "oxygenService"),
    oxygenService: () => (holdsDates() ? "oxygenCleaned" : "oxygenService"),
    "some oxygen": () => (holdsPressures() ? "oxygenAdded" : mixOrRating()),
    "some mix": () => mixOrRating(),
    "some helium": () => (holdsPressures() ? "heliumAdded" : "some helium"),
    "start of something": () => (holdsPressures() ? "startPressure" : namesMixes() ? "startMix" : role),
    "end of something": () => (holdsPressures() ? "endPressure" : namesMixes() ? "analysedMix" : role),
    size: () =>
      shareOf(sample, isClass) > 0.5
        ? "cylinderClass"
        : shareOf(sample, isMaterial) > 0.5
          ? "material"
          : "size",
    // “Cylinder” over AL80 and LP85 is no shop number.
    shopNumber: () =>
      !meaning.concepts.has("number") && shareOf(sample, hasLetters) > 0.5 && shareRead(sample, "size") > 0.5
        ? "size"
        : "shopNumber",
  };
  const decide = role === undefined ? undefined : byRole[role];
  return decide ? decide() : role;
}

/**
 * What a column is whose heading says nothing: only where its cells leave little doubt, and the role is still free.
 * Numbers are pressures only where there is no heading at all: “Invoice” has thousands too.
 */
export function roleByCellsAlone(
  { sample, heading }: ColumnDraft,
  isTaken: (role: Role) => boolean,
): Role | undefined {
  const firstFree = (...roles: readonly Role[]): Role | undefined => roles.find((role) => !isTaken(role));
  if (sample.cells.length === 0) return undefined;
  if (shareOf(sample, isDay) >= MOST)
    return isTaken("hydro") || isTaken("visual") ? undefined : firstFree("date");
  if (shareOf(sample, namesMix) >= MOST) return firstFree("orderedMix", "analysedMix");
  if (heading === "" && shareOf(sample, isPressure) >= MOST)
    return isTaken("endPressure") ? undefined : firstFree("startPressure", "endPressure");
  return shareRead(sample, "method") >= MOST ? firstFree("method") : undefined;
}

const MOST = 0.8;

/** Whether nothing but working pressures as stamped stands here, bar (common practice, no source). */
export function showsWorkingPressures({ sample: { cells } }: ColumnDraft): boolean {
  return cells.length > 0 && cells.every(({ value }) => WORKING_PRESSURE.test(String(value).trim()));
}

const WORKING_PRESSURE = /^(?:150|200|207|230|232|240|300)(?: ?bar)?$/i;

function isPressure({ value, format }: Cell): boolean {
  if (typeof value === "number") return value > 100 && value < 6600 && !showsDate(format);
  return typeof value === "string" && (/^\d{3,4}$/.test(value.trim()) || /\d\s*(?:psi|bar)\b/i.test(value));
}

function isDay({ value, format }: Cell): boolean {
  if (typeof value === "number") return showsDate(format);
  const said = typeof value === "string" ? dateTextOf(value, LATEST_YEAR_UNKNOWN) : undefined;
  return said?.kind === "day" || said?.kind === "either";
}

function namesMix({ value }: Cell): boolean {
  return (
    typeof value === "string" &&
    /^(?:air|o2|ean ?x? ?\d+|nx ?\d+|nitrox ?\d+|tr?i?m?i?x ?\d+.*|\d+(?:\.\d)? ?%|\d\d?\/\d\d?)$/i.test(
      value.trim(),
    )
  );
}

function isClass({ value }: Cell): boolean {
  return (
    typeof value === "string" &&
    /^(?:dot|tc|icc|ctc)?[-/ ]*(?:3al?m?|3aam?|3ht|e ?\d{4,5}|sp ?\d{4,5})\b/i.test(value.trim())
  );
}

function isMaterial({ value }: Cell): boolean {
  return (
    typeof value === "string" &&
    /^(?:alu|alumin|steel|stahl|acier|acero|comp|carbon|st$|al$)/.test(plain(value))
  );
}

function hasLetters({ value }: Cell): boolean {
  return typeof value === "string" && /[a-z]/i.test(value);
}
