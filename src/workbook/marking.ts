import type { CellValue } from "../sheet/sheet";

/*
 * Marks are conditional formats, in Excel as in files: they lie over a cell's own look and leave it as it is. Such
 * formats have no names, so ours are known by a rule that is always true and names us.
 */

/** The rule, without the equals sign. */
export const MARK_RULE = 'LEN("Brimbook")=8';

export function isMarkRule(formula: string): boolean {
  return formula.includes('"Brimbook"');
}

/** By weight and line as well as by colour. */
export const MARK_LOOK = { fill: "#F6D9A8", fontColour: "#5A2D00", bold: true, underline: true } as const;

/** Others may have edited the log since it was judged: only a cell that still holds what was judged is marked. */
export function isSameValue(one: CellValue, other: CellValue): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

/** So many cells are marked by one format: their names make one text of a limited length. */
export const CELLS_PER_MARK = 50;
