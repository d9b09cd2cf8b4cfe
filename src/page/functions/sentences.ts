import { isProblem, type Answer, type Problem } from "../../functions/answer";

/**
 * The sentences behind error cells, as a cell of the grid cannot carry one: for each formula the problems of its
 * last answer, in the shape in which it fills the sheet.
 */
export class Sentences {
  private readonly kept = new Map<string, readonly (readonly (Problem | undefined)[])[]>();

  /** Hears what the formula in this cell answered. */
  keep(workbook: string, sheet: string, row: number, column: number, answer: Answer): void {
    const problems = answer.map((cells) => cells.map((cell) => (isProblem(cell) ? cell : undefined)));
    /* Another call in the same formula may go well; it takes nothing back. */
    if (problems.flat().some((problem) => problem)) {
      this.kept.set(place(workbook, sheet, row, column), problems);
    }
  }

  /** The sentence behind an error, `down` and `across` from the cell with the formula. */
  behind(
    error: string,
    workbook: string,
    sheet: string,
    owner: { row: number; column: number },
    down = 0,
    across = 0,
  ): string | undefined {
    const problem = this.kept.get(place(workbook, sheet, owner.row, owner.column))?.[down]?.[across];
    return problem?.error === error ? problem.message : undefined;
  }

  clear(): void {
    this.kept.clear();
  }
}

function place(workbook: string, sheet: string, row: number, column: number): string {
  return `${workbook} ${sheet} ${row} ${column}`;
}
