import type { LogColumn } from "../../log/log";
import type { ColumnChoice, SheetChoice, ShopSettings } from "../../workbook/settings";
import type { SheetReading } from "./report";

/** What the shop may say of a column: a field, nothing, or an answer. `undefined` takes a saying back. */
export interface ColumnSaying {
  readonly field?: string | null | undefined;
  readonly answers?: Readonly<Record<string, string | undefined>>;
}

/** Which of the columns with the same heading this one is, from 0. */
export function nthOf(column: LogColumn, columns: readonly LogColumn[]): number {
  return columns.filter((other) => other.heading === column.heading && other.column < column.column).length;
}

/** What the shop said of a column before, if anything. */
export function saidOf(
  settings: ShopSettings,
  sheet: SheetReading,
  column: LogColumn,
): ColumnChoice | undefined {
  const nth = nthOf(column, sheet.columns);
  return choiceOf(settings, sheet.name).columns.find(
    (choice) => choice.heading === column.heading && choice.nth === nth,
  );
}

/** Headings that the shop said something of and that are no longer in the sheet. */
export function goneHeadings(settings: ShopSettings, sheet: SheetReading): readonly ColumnChoice[] {
  return choiceOf(settings, sheet.name).columns.filter(
    ({ heading, nth }) =>
      !sheet.columns.some((column) => column.heading === heading && nthOf(column, sheet.columns) === nth),
  );
}

/** The settings with a sheet chosen or left out. */
export function chooseSheet(settings: ShopSettings, sheet: string, use: boolean): ShopSettings {
  return withChoice(settings, { ...choiceOf(settings, sheet), use });
}

/** The settings with something said of a column; the rest that was said of it stands. */
export function sayOfColumn(
  settings: ShopSettings,
  sheet: SheetReading,
  column: LogColumn,
  saying: ColumnSaying,
): ShopSettings {
  const before = saidOf(settings, sheet, column);
  const nth = nthOf(column, sheet.columns);
  const answers = Object.entries({ ...before?.answers, ...saying.answers }).filter(
    (answer): answer is [string, string] => answer[1] !== undefined,
  );
  const field = "field" in saying ? saying.field : before?.field;
  const after: ColumnChoice = {
    heading: column.heading,
    nth,
    ...(field !== undefined && { field }),
    answers: Object.fromEntries(answers),
  };
  const choice = choiceOf(settings, sheet.name);
  const others = choice.columns.filter((other) => other.heading !== column.heading || other.nth !== nth);
  const saysNothing = after.field === undefined && answers.length === 0;
  return withChoice(settings, { ...choice, columns: saysNothing ? others : [...others, after] });
}

/** The settings without what was said of headings that are gone. */
export function forgetGone(settings: ShopSettings, sheet: SheetReading): ShopSettings {
  const gone = new Set(goneHeadings(settings, sheet));
  const choice = choiceOf(settings, sheet.name);
  return withChoice(settings, { ...choice, columns: choice.columns.filter((column) => !gone.has(column)) });
}

function choiceOf(settings: ShopSettings, sheet: string): SheetChoice {
  return settings.sheets.find((choice) => choice.sheet === sheet) ?? { sheet, columns: [] };
}

function withChoice(settings: ShopSettings, choice: SheetChoice): ShopSettings {
  const others = settings.sheets.filter(({ sheet }) => sheet !== choice.sheet);
  return { ...settings, sheets: [...others, choice] };
}
