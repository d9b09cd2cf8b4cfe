import type { NotChecked } from "../../../audit/judge/finding";

/** How many judgements could not be made: every rule at every fill counts. */
export function countNotChecked(notChecked: readonly NotChecked[]): number {
  return notChecked.reduce((sum, { count }) => sum + count, 0);
}
