import { isProblem, type Answer, type Problem } from "../../functions/answer";

interface Place {
  readonly row: number;
  readonly column: number;
}

/** A formula and the cell it stands in; workbook and sheet as the engine knows them. */
export interface FormulaCell extends Place {
  readonly workbook: string;
  readonly sheet: string;
  readonly formula: string;
}

interface Kept {
  readonly formula: string;
  /** In the shape in which the answer fills the sheet. */
  readonly problems: readonly (readonly (Problem | undefined)[])[];
}

/** The sentences behind error cells, as a cell of the grid cannot carry one. */
export class Sentences {
  private readonly kept = new Map<string, Kept>();

  /** Hears the problems in what a function answered to this formula. Other calls in it take nothing back. */
  keep(cell: FormulaCell, answer: Answer): void {
    const problems = answer.map((row) => row.map((each) => (isProblem(each) ? each : undefined)));
    this.kept.set(keyOf(cell), { formula: cell.formula, problems });
  }

  /** The sentence behind an error in `cell`, which the formula of `owner` fills. */
  behind(error: string, owner: FormulaCell, cell: Place): string | undefined {
    const kept = this.kept.get(keyOf(owner));
    if (kept?.formula !== owner.formula) return undefined;
    const problem = kept.problems[cell.row - owner.row]?.[cell.column - owner.column];
    return problem?.error === error ? problem.message : undefined;
  }

  clear(): void {
    this.kept.clear();
  }
}

function keyOf({ workbook, sheet, row, column }: FormulaCell): string {
  return `${workbook} ${sheet} ${row} ${column}`;
}
