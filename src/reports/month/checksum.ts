import { draftValue, type SheetDraft } from "../../sheet/draft/draft";
import { cellName } from "../../sheet/sheet";

/** Every figure and text of these sheets, cell by cell, in one form. */
export function figuresText(drafts: readonly SheetDraft[]): string {
  return drafts
    .flatMap(({ name, rows }) =>
      rows.flatMap(({ cells }, row) =>
        cells.flatMap((cell, column) => {
          const value = draftValue(cell);
          return value === null || value === ""
            ? []
            : [`${name}!${cellName({ row, column })}=${JSON.stringify(value)}`];
        }),
      ),
    )
    .join("\n");
}

/** SHA-256 in hexadecimal, in groups of eight. */
export async function checksumOf(text: string): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text)));
  const hex = Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex.replace(/.{8}(?!$)/g, "$& ");
}
