import { isBlank, type Sheet } from "./sheet";

/** What Brimbook writes as sheets of its own. A price list or a stock sheet to fill in is the shop's. */
export type OwnSheet = "month report" | "fill costs" | "findings" | "fill plan" | "fill card";

/**
 * The line at the foot of a sheet that Brimbook wrote. It is the mark by which the sheet is known again wherever it is
 * opened: cells outlive what else a program or a .csv file drops.
 */
export function ownLine(what: OwnSheet): string {
  return `Written by Brimbook: ${what}, not a log.`;
}

/** What of ours a sheet is, by its line alone in a row; undefined for every other sheet. */
export function ownSheetOf({ rows }: Pick<Sheet, "rows">): OwnSheet | undefined {
  for (const { values } of rows) {
    const first = values.find((value) => !isBlank(value));
    const what = typeof first === "string" ? OWN_LINES.get(first.trim()) : undefined;
    if (what !== undefined && values.filter((value) => !isBlank(value)).length === 1) return what;
  }
  return undefined;
}

const OWN_SHEETS: readonly OwnSheet[] = ["month report", "fill costs", "findings", "fill plan", "fill card"];
const OWN_LINES: ReadonlyMap<string, OwnSheet> = new Map(OWN_SHEETS.map((what) => [ownLine(what), what]));
