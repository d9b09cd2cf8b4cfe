import type { Temporal } from "temporal-polyfill";
import type { StampOrder } from "../cylinders/readTestStamp";
import type { Language } from "./vocabularies/languages";

export type DateOrder = "day first" | "month first";
export type { StampOrder };

/** What the shop said of one column, known by its heading and, where a heading comes twice, by order. */
export interface ColumnChoice {
  readonly heading: string;
  /** Which of the columns with this heading, from 0. */
  readonly nth: number;
  /** A `Field`; `null` for a column that is not to be read; absent where the proposal stands. */
  readonly field?: string | null | undefined;
  /** Answers to the column's questions, by what they are about: `unit` -> `psi`. */
  readonly answers: Readonly<Record<string, string>>;
}

export interface SheetChoice {
  readonly sheet: string;
  /** Whether to read the sheet; absent where nobody said. */
  readonly use?: boolean | undefined;
  readonly columns: readonly ColumnChoice[];
}

/** What is said, for one reading of a log, of every column with this heading. A column without one goes by its letters. */
export type ColumnSaid = Omit<ColumnChoice, "nth">;

/** What the shop said of a word that the tables do not know, or know with several meanings. */
export interface OwnWord {
  /** A `Field` whose words belong to a closed vocabulary. */
  readonly field: string;
  readonly word: string;
  /** A meaning of that vocabulary, or `nothing`. */
  readonly means: string;
}

/** What is known besides the cells. Whatever is absent is found out from the cells, or asked. */
export interface LogContext {
  /** Units the shop works in. */
  readonly units?: "us" | "metric" | undefined;
  /** Units usual where the shop is, if those are all that is used there. */
  readonly usualUnits?: "us" | "metric" | undefined;
  /** How all dates of this log are written, whatever its cells suggest. */
  readonly datesAre?: DateOrder | undefined;
  /** How dates are written where the shop is (`countryContext` knows it from the country's rules). */
  readonly dateOrder?: DateOrder | undefined;
  /** How test stamps are written where the shop is. */
  readonly stampOrder?: StampOrder | undefined;
  /** What stamps show where the shop is, unless the heading says otherwise: the test, or (Germany) the next one due. */
  readonly stampMeans?: "test" | "due" | undefined;
  /** Languages spoken where the shop is, besides those that the headings show. */
  readonly languages?: readonly Language[] | undefined;
  /** Words of the shop's own. */
  readonly words?: readonly OwnWord[] | undefined;
  /** The day the log is read on: no test and no fill lies after it. Without it, the latest clear fill date. */
  readonly asOf?: Temporal.PlainDate | undefined;
  /** Choices remembered in the workbook. */
  readonly choices?: readonly SheetChoice[] | undefined;
  /** Goes before the choices. */
  readonly said?: readonly ColumnSaid[] | undefined;
}
