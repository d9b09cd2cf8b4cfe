import type { Repair } from "../workbook/excel/repair";

/** What the pane says where it cannot be a pane, and what to do about it. */
export const NO_OFFICE =
  "Brimbook could not load Microsoft's Office script from appsforoffice.microsoft.com. Check the connection, or ask " +
  "whoever looks after the network to allow that address; then reload.";

export const NOT_EXCEL =
  "This page is Brimbook's task pane for Excel. Open it from the Home tab in Excel: Brimbook is at the right end.";

export const NO_ANSWER =
  "Excel has not answered yet. If a cell is being edited, press Enter or Esc in the sheet; if this note stays, reload.";

export const OLD_FUNCTIONS =
  "Excel still has the worksheet functions of another version of Brimbook: it keeps them for up to a day after an " +
  "update. Close Excel and open it again; until then a new function or argument may be missing.";

/** So many formulas of ours show `#NAME?`. */
export function brokenSentence(count: number): string {
  const these = count === 1 ? "A formula of Brimbook shows" : `${count} formulas of Brimbook show`;
  return `${these} #NAME?: Excel opened this workbook before it knew the functions. Calculating again does not help, writing them again does.`;
}

/** What a repair came to. */
export function repairedSentence({ repaired, protectedSheets }: Repair): string {
  const written =
    repaired === 1 ? "1 formula was written again." : `${repaired} formulas were written again.`;
  if (protectedSheets.length === 0) return written;
  const names = protectedSheets.map((name) => `"${name}"`).join(", ");
  return `${written} Left as they are, as the sheet is protected: ${names}. Unprotect it on the Review tab and repair again.`;
}
