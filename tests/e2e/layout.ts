import type { Locator } from "playwright-core";

/** What stands beyond the right edge of the pane or of its own box, and words that are broken over two lines. */
export function layoutFaults(pane: Locator): Promise<string[]> {
  return pane.evaluate((main) => {
    const faults: string[] = [];
    /* What only screen readers meet, in a box of a pixel. */
    const isHidden = (element: Element | null): boolean =>
      element !== null && element !== main && (element.clientWidth === 1 || isHidden(element.parentElement));
    const edge = main.getBoundingClientRect().right;
    if (main.scrollWidth > main.clientWidth) {
      const beyond = [...main.querySelectorAll("*")].filter(
        (each) => each.getBoundingClientRect().right > edge + 0.5,
      );
      const what = beyond.map(
        ({ tagName, textContent }) => `${tagName} “${textContent.trim().slice(0, 40)}”`,
      );
      faults.push(`hangs over by ${main.scrollWidth - main.clientWidth} px: ${what.slice(0, 4).join(", ")}`);
    }
    const walker = document.createTreeWalker(main, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const text = walker.currentNode as Text;
      const holder = text.parentElement!;
      if (!holder.checkVisibility() || holder.closest("textarea, select, option, svg") || isHidden(holder))
        continue;
      const isClipped = holder.closest("[data-scrolls]") !== null;
      for (const word of text.data.matchAll(/[\p{L}\p{N}.,'’]+/gu)) {
        const range = document.createRange();
        range.setStart(text, word.index);
        range.setEnd(text, word.index + word[0].length);
        const boxes = [...range.getClientRects()].filter(({ width }) => width > 0);
        if (boxes.length === 0) continue;
        const lines = new Set(boxes.map(({ top }) => Math.round(top)));
        if (lines.size > 1) faults.push(`breaks “${word[0]}” in “${holder.textContent.trim().slice(0, 60)}”`);
        const right = Math.max(...boxes.map((box) => box.right));
        if (right > edge + 0.5 && !isClipped)
          faults.push(`“${word[0]}” ends ${Math.round(right - edge)} px beyond the edge`);
      }
    }
    return faults;
  });
}
