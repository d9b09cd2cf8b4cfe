import { columnLetters } from "../../sheet/sheet";
import { plain } from "../cells/cell";
import type { ColumnChoice, ColumnSaid, LogContext, SheetChoice } from "../context";

/** A column as choices know it. */
interface KnownColumn {
  readonly column: number;
  readonly heading: string;
}

/** What was remembered for the columns of one sheet. */
export interface RememberedColumns {
  readonly choiceFor: (column: KnownColumn) => ColumnSaid | undefined;
  /** Some of what was remembered is about headings that are no longer there. */
  readonly headingsChanged: boolean;
}

/**
 * The choices that hold for a sheet with these columns: its own; else those made for a sheet with the same headings,
 * such as last month's.
 */
export function rememberedFor(
  sheet: string,
  columns: readonly KnownColumn[],
  context: LogContext,
): RememberedColumns {
  const made = (context.choices ?? []).filter((choice) => choice.columns.length > 0);
  const own = made.find((choice) => choice.sheet === sheet);
  const choices = own ?? made.findLast((choice) => holdsAll(choice, columns));
  return {
    choiceFor: (column) =>
      withSaid(
        choices?.columns.find(
          (choice) => choice.heading === column.heading && choice.nth === nthOf(column, columns),
        ),
        context.said?.filter((said) => isAbout(said, column)) ?? [],
      ),
    headingsChanged: own !== undefined && !holdsAll(own, columns),
  };
}

function withSaid(choice: ColumnChoice | undefined, said: readonly ColumnSaid[]): ColumnSaid | undefined {
  return said.reduce<ColumnSaid | undefined>(
    (so, { field = so?.field, heading, answers }) => ({
      heading,
      ...(field !== undefined && { field }),
      answers: { ...so?.answers, ...answers },
    }),
    choice,
  );
}

/** Whether something said is about a column: by its heading, in any case; without one, by its letters. */
export function isAbout(said: ColumnSaid, { column, heading }: KnownColumn): boolean {
  return plain(said.heading) === plain(heading === "" ? columnLetters(column) : heading);
}

function holdsAll(choice: SheetChoice, columns: readonly KnownColumn[]): boolean {
  return choice.columns.every(({ heading, nth }) =>
    columns.some((column) => column.heading === heading && nthOf(column, columns) === nth),
  );
}

/** Which of the columns with its heading a column is, from 0. */
function nthOf(column: KnownColumn, columns: readonly KnownColumn[]): number {
  return columns.filter((other) => other.heading === column.heading && other.column < column.column).length;
}
