import type { Paper } from "../../sheet/draft/draft";

/** A page to print: its own document, since the pane's own look is for a screen. */
export interface PrintedPage {
  readonly title: string;
  /** As CSS has it: `A4`, `letter`. */
  readonly paper: Paper;
  readonly marginMm: number;
  readonly css: string;
  readonly body: string;
}

const LOOK = `
  * { box-sizing: border-box; }
  body { margin: 0; color: #14181b; font: 10.5pt/1.35 "Segoe UI", "Helvetica Neue", Arial, sans-serif; font-variant-numeric: tabular-nums; }
  h1, h2, p, table, dl, ul { margin: 0; }
  .quiet { color: #4d5357; font-size: 8.5pt; }
  .mark { stroke: #126983; }
`;

/** The whole document, as text. */
export function documentOf({ title, paper, marginMm, css, body }: PrintedPage): string {
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>${escaped(title)}</title><style>@page { size: ${paper}; margin: ${marginMm}mm; }${LOOK}${css}</style></head><body>${body}</body></html>`;
}

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

export function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (character) => ENTITIES[character]!);
}

/** The mark: a gauge arc filled to the brim. */
export const MARK = `<svg class="mark" width="20" height="20" viewBox="0 0 24 24" fill="none" stroke-width="3" stroke-linecap="round"><path d="M5 19a9.5 9.5 0 1 1 14 0"/><path d="M12 12.5 18.2 8"/></svg>`;
