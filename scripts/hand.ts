import type { Page } from "playwright-core";

const LOOKS_AGAIN_MS = 40;
const LONGEST_WAIT_MS = 60_000;

/**
 * Mouse and keyboard in a page whose time is measured. What a test tool asks of the page for its own sake takes time
 * there too: here that is one look for some elements, a few times a second.
 */
export class Hand {
  constructor(private readonly page: Page) {}

  /** Clicks the first element in sight of this kind with this text, as soon as there is one. */
  async press(kind: string, text: RegExp): Promise<void> {
    const { x, y } = await this.until(kind, text);
    await this.page.mouse.click(x, y);
  }

  /** Chooses of a list: by value, or by place. */
  async choose(kind: string, what: string | number): Promise<void> {
    await this.until(kind, /(?:)/);
    await this.page
      .locator(kind)
      .first()
      .selectOption(typeof what === "number" ? { index: what } : what);
  }

  async type(kind: string, text: string): Promise<void> {
    await this.press(kind, /(?:)/);
    await this.page.keyboard.type(text, { delay: 60 });
  }

  /** Waits for an element in sight that moves no more; answers with its middle. */
  async until(kind: string, text: RegExp): Promise<Point> {
    const givesUp = performance.now() + LONGEST_WAIT_MS;
    let before: Point | undefined;
    while (performance.now() < givesUp) {
      const middle = await this.page.evaluate(middleOf, { kind, text: text.source });
      if (middle && before?.x === middle.x && before.y === middle.y) return middle;
      before = middle;
      await this.page.waitForTimeout(LOOKS_AGAIN_MS);
    }
    throw new Error(`There is no ${kind} that says ${text.source}.`);
  }
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Runs in the page. */
function middleOf({ kind, text }: { kind: string; text: string }): Point | undefined {
  const wanted = new RegExp(text);
  const found = [...document.querySelectorAll(kind)].find(
    (element) => element.getClientRects().length > 0 && wanted.test(element.textContent.trim()),
  );
  if (!found) return undefined;
  const place = found.getBoundingClientRect();
  const there = document.elementFromPoint(place.left + place.width / 2, place.top + place.height / 2);
  if (!there || !found.contains(there)) found.scrollIntoView({ block: "center" });
  const { left, top, width, height } = found.getBoundingClientRect();
  return { x: left + width / 2, y: top + height / 2 };
}
