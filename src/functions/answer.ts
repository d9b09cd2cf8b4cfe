import { Refusal } from "../gas/refusal";
import { ErrorCell } from "../typed/cells";

/** The errors a cell can hand on. Of our own we only make `#VALUE!` and `#N/A`, which alone carry text to the user. */
export type ErrorName = "#VALUE!" | "#N/A" | "#DIV/0!" | "#NAME?" | "#NULL!" | "#NUM!" | "#REF!";

/** An error for one cell, with the sentence behind it. */
export interface Problem {
  /** `#VALUE!` for what cannot be used or done, `#N/A` for what cannot be known; else as a cell of the call had it. */
  readonly error: ErrorName;
  readonly message: string;
}

const HANDED_ON: ReadonlySet<string> = new Set(["#N/A", "#DIV/0!", "#NAME?", "#NULL!", "#NUM!", "#REF!"]);

export type AnswerCell = string | number | boolean | Problem;

/** What a worksheet function answers: rows of cells, one cell for single values. */
export type Answer = readonly (readonly AnswerCell[])[];

export function isProblem(cell: AnswerCell): cell is Problem {
  return typeof cell === "object";
}

/** The problem to show for whatever was thrown. What is not a refusal is a fault of ours, and says so. */
export function problemFrom(thrown: unknown): Problem {
  if (thrown instanceof ErrorCell && HANDED_ON.has(thrown.error)) {
    return { error: thrown.error as ErrorName, message: thrown.message };
  }
  if (thrown instanceof Refusal) {
    return { error: thrown.kind === "unknown" ? "#N/A" : "#VALUE!", message: thrown.message };
  }
  const detail = thrown instanceof Error ? thrown.message : String(thrown);
  return {
    error: "#VALUE!",
    message: `Brimbook failed on these arguments (${detail}). That is a fault of Brimbook: please report the formula.`,
  };
}

export const NOT_FINITE = "These arguments give no finite number: check that each is in its usual range.";

/** What is left when 25 is computed as (1.4 / 0.4 - 1) x 10 would make a label rounded down say 24. */
const PLACES = 1e11;

/**
 * A cell as it may leave: numbers without float noise, and finite or not at all, as a spreadsheet shows NaN and
 * infinity inside a range as 0.
 */
export function leaving(cell: AnswerCell): AnswerCell {
  if (typeof cell !== "number") return cell;
  if (Math.abs(cell) < Number.MAX_SAFE_INTEGER / PLACES) return Math.round(cell * PLACES) / PLACES + 0;
  if (Number.isFinite(cell)) return cell;
  return { error: "#VALUE!", message: NOT_FINITE };
}
