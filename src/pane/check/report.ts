import type { RowCounts } from "../../log/log";
import type { LogReading, SheetReading } from "../../session/reading";
import type { SheetChoice } from "../../workbook/settings";

export type { CheckReport, FindingFacts } from "../../session/questions/check";
export type { LogReading, SheetReading } from "../../session/reading";

/** Whether a sheet is checked: as the shop said, else by what was found in it. */
export function isChosen(sheet: SheetReading, choices: readonly SheetChoice[]): boolean {
  return choices.find((choice) => choice.sheet === sheet.name)?.use ?? sheet.kind !== "neither";
}

/** The part of a reading that concerns the sheets to be checked. */
export function chosenPart(reading: LogReading, choices: readonly SheetChoice[]): LogReading {
  const sheets = reading.sheets.filter((sheet) => isChosen(sheet, choices));
  const names = new Set(sheets.map(({ name }) => name));
  return { sheets, unreadable: reading.unreadable.filter(({ sheet }) => names.has(sheet)) };
}

/** The sum over several sheets. */
export function countRows(sheets: readonly SheetReading[]): RowCounts {
  const sum = (of: (rows: RowCounts) => number) => sheets.reduce((so, { rows }) => so + of(rows), 0);
  return {
    total: sum((rows) => rows.total),
    fills: sum((rows) => rows.fills),
    cylinders: sum((rows) => rows.cylinders),
    notFilled: sum((rows) => rows.notFilled ?? 0),
    struckOut: sum((rows) => rows.struckOut ?? 0),
    blank: sum((rows) => rows.blank),
    headings: sum((rows) => rows.headings),
    totals: sum((rows) => rows.totals),
    unreadable: sum((rows) => rows.unreadable),
  };
}

/** Made once: a list has thousands of counts in it. */
const COUNT = new Intl.NumberFormat("en-US");

/** `12,345`, the same in every locale. */
export function count(n: number): string {
  return COUNT.format(n);
}

/** `1 row`, `2 rows`. */
export function counted(n: number, one: string, several = `${one}s`): string {
  return `${count(n)} ${n === 1 ? one : several}`;
}

const PARTS: readonly {
  of: Exclude<keyof RowCounts, "total" | "unreadable">;
  one: string;
  several: string;
}[] = [
  { of: "fills", one: "fill", several: "fills" },
  { of: "cylinders", one: "cylinder", several: "cylinders" },
  { of: "notFilled", one: "row not filled", several: "rows not filled" },
  { of: "struckOut", one: "row struck out", several: "rows struck out" },
  { of: "headings", one: "heading", several: "headings" },
  { of: "totals", one: "totals row", several: "totals rows" },
  { of: "blank", one: "blank", several: "blank" },
];

/** What the readable rows are, in words: `598 fills`, `4 headings`. Kinds that do not occur are left out. */
export function reconciliation(rows: RowCounts): readonly string[] {
  return PARTS.flatMap(({ of, one, several }) => {
    const rowsOf = rows[of] ?? 0;
    return rowsOf > 0 ? [counted(rowsOf, one, several)] : [];
  });
}

/** The whole sum: `612 rows = 598 fills + 4 headings + 10 blank + 0 unreadable`. */
export function reconciliationLine(rows: RowCounts): string {
  const parts = [...reconciliation(rows), `${count(rows.unreadable)} unreadable`];
  return `${counted(rows.total, "row")} = ${parts.join(" + ")}`;
}
