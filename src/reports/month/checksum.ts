import { draftValue, type SheetDraft } from "../../sheet/draft/draft";
import { cellName } from "../../sheet/sheet";
import { inSteps, type Steps } from "../../sheet/steps";

/** Every figure and text of a sheet, cell by cell, in one form; a few rows at a time. */
export function* figuresIn({ name, rows }: SheetDraft): Steps<string> {
  const figures: string[] = [];
  yield* inSteps(rows.entries(), rows.length, ([row, { cells }]) => {
    for (const [column, cell] of cells.entries()) {
      const value = draftValue(cell);
      if (value !== null && value !== "")
        figures.push(`${name}!${cellName({ row, column })}=${JSON.stringify(value)}`);
    }
  });
  return figures.join("\n");
}

/** SHA-256 in hexadecimal, in groups of eight. */
export async function checksumOf(text: string): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text)));
  const hex = Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex.replace(/.{8}(?!$)/g, "$& ");
}
