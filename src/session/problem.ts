import { Refusal } from "../gas/refusal";
import { WorkbookProblem } from "../workbook/workbook";

/** What went wrong, as the pane shows it: a sentence, and details only for copying. */
export interface Problem {
  readonly sentence: string;
  readonly details: string;
}

/** Turns anything thrown into a sentence. Our own errors bring one; the rest is a fault of ours, and said so. */
export function problemOf(thrown: unknown): Problem {
  if (thrown instanceof WorkbookProblem) return { sentence: thrown.message, details: thrown.details };
  if (thrown instanceof Refusal) return { sentence: thrown.message, details: "" };
  const details = thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown);
  return {
    sentence:
      "Brimbook tripped over something it did not expect. Your log was not changed. Try again; if it happens again, copy the details and report them.",
    details,
  };
}

export function wasCancelled(thrown: unknown): boolean {
  return thrown instanceof DOMException && thrown.name === "AbortError";
}
