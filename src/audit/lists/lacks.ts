import type { NotChecked } from "../judge/finding";
import { cellName, type CellAddress } from "../../sheet/sheet";

/** One thing missing, and every rule that could not judge for want of it. */
export interface Lack {
  readonly why: string;
  readonly count: number;
  readonly cells: readonly CellAddress[];
  readonly rules: readonly string[];
}

/** What is missing, each told once: a serial that cannot be read stops six rules at the same cell. */
export function lacksOf(notChecked: readonly NotChecked[]): readonly Lack[] {
  const lacks = new Map<string, Lack>();
  for (const { rule, count, why, cells } of notChecked) {
    // What a whole column lacks has no cells; some rules ask it of fewer fills than others.
    const key =
      cells.length === 0
        ? why
        : JSON.stringify([why, count, cells.map((cell) => [cell.sheet, cellName(cell)])]);
    const before = lacks.get(key);
    const most = Math.max(count, before?.count ?? 0);
    lacks.set(key, { why, count: most, cells, rules: [...(before?.rules ?? []), rule] });
  }
  return [...lacks.values()];
}
