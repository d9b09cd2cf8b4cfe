import type { RowCounts } from "../../log/log";
import type { LogReading, SheetReading } from "../../session/reading";
import type { SheetChoice } from "../../workbook/settings";

export { count, counted } from "../../words/counts";
export { reconciliation, reconciliationLine } from "../../reports/reconciliation";
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
