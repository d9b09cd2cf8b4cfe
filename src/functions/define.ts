import type { Units } from "../gas/units";
import type { Quantity } from "../words/figures";
import type { AnswerCell } from "./answer";
import type { Reader } from "../typed/reader";

type Arguments = Readonly<Record<string, Reader<unknown>>>;
export type ValuesOf<A extends Arguments> = {
  readonly [Name in keyof A]: A[Name] extends Reader<infer T> ? T : never;
};

/** What a function answers for one row of arguments: a cell's value, or for FILLSTEPS a table. */
export type RowAnswer = string | number | readonly (readonly AnswerCell[])[];

/** A worksheet function: its arguments, what it answers, and how it came about. */
export interface Definition<A extends Arguments> {
  /** Kept for ever: workbooks hold it. */
  readonly id: string;
  /** What the formula helper says, without an example. */
  readonly says: string;
  /** In the order of the formula. The names are what people see: kept for ever, new ones at the end and optional. */
  readonly arguments: A;
  readonly answer: (values: ValuesOf<A>) => RowAnswer;
  readonly quantity?: Quantity;
  /** Answers a table, and so takes no columns. */
  readonly table?: boolean;
  /** Sentences on how the answer came about. */
  readonly why: (values: ValuesOf<A>) => readonly string[];
}

/** A definition with its own argument types forgotten: what everything behind the definitions works with. */
export interface WorksheetFunction {
  readonly id: string;
  readonly says: string;
  readonly parameters: readonly (readonly [name: string, reader: Reader<unknown>])[];
  readonly answer: (values: Values) => RowAnswer;
  readonly quantity: Quantity;
  readonly table: boolean;
  readonly why: (values: Values) => readonly string[];
}

/** Values read, by argument name. */
export type Values = Readonly<Record<string, unknown>>;

/** The units of a call: what its readers, and the words about its answer, go by. */
export function unitsOf(values: Values): Units {
  return (values.units as Units | undefined) ?? "metric";
}

/** Ties the types of arguments and answer together, then forgets them: readers put in what the answer takes out. */
export function defineFunction<A extends Arguments>(definition: Definition<A>): WorksheetFunction {
  return {
    id: definition.id,
    says: definition.says,
    parameters: Object.entries(definition.arguments),
    answer: definition.answer as (values: Values) => RowAnswer,
    quantity: definition.quantity ?? "plain",
    table: definition.table ?? false,
    why: definition.why as (values: Values) => readonly string[],
  };
}
