import type { Temporal } from "temporal-polyfill";
import type { PressureUnit } from "../cells/pressure";
import type { ColumnProposal } from "../columns/columns";
import type { DateOrder, LogContext } from "../context";
import type { ColumnSettings } from "../fieldKinds";
import type { ColumnQuestion, Field, LogColumn } from "../log";
import type { ColumnRange } from "../tables/scan";
import type { LogWords } from "../vocabularies/logWords";
import type { DateEvidence } from "./dates";
import type { NumberEvidence } from "./units";

/** How a column's cells are to be read, and what has to be asked before they can be read for certain. */
export interface SettledColumn {
  readonly settings: ColumnSettings;
  readonly unit: LogColumn["unit"];
  readonly question: ColumnQuestion | undefined;
  /** As `LogColumn` has it. */
  readonly assumed?: string;
}

/** What the sheets of a workbook say together. */
export interface Knowledge {
  /** The day the log is read on: given, or the latest clear date of a fill. */
  readonly latest: Temporal.PlainDate | undefined;
  /** The order of dates that all fill sheets together show. */
  readonly dateOrder: DateOrder | undefined;
  readonly dates: ReadonlyMap<ColumnProposal, DateEvidence>;
  /** The words of its languages and of the shop. */
  readonly words: LogWords;
  readonly context: LogContext;
}

/** A column that is to be settled, and all that can be asked. */
export interface Open {
  readonly proposal: ColumnProposal;
  readonly field: Field;
  readonly range: ColumnRange;
  readonly knowledge: Knowledge;
  readonly numbers: NumberEvidence | undefined;
  readonly neighbours: PressureUnit | undefined;
  /** Units usual where the shop is, unless a pressure of the table speaks against them. */
  readonly usualUnits: LogContext["usualUnits"];
}

/** What the shop answered to a question about this column, if it is one of the choices. */
export function answered<Choice extends string>(
  { answers }: ColumnProposal,
  about: ColumnQuestion["about"],
  choices: readonly Choice[],
): Choice | undefined {
  const answer = Object.hasOwn(answers, about) ? answers[about] : undefined;
  return choices.find((choice) => choice === answer);
}

/** A column as questions name it. */
export function nameOf({ meaning, column }: ColumnProposal): string {
  return meaning.heading === "" ? `column ${column + 1}` : `“${meaning.heading}”`;
}

/** What was taken as usual, in sentences; those that do not apply are blank or false. */
export function assumedOf(...sentences: readonly (string | false)[]): Pick<SettledColumn, "assumed"> {
  const said = sentences.filter((sentence) => sentence !== false && sentence !== "");
  return said.length === 0 ? {} : { assumed: said.join(" ") };
}
