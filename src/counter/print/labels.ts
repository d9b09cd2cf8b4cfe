import type { Paper } from "../../sheet/draft/draft";
import { escaped, type PrintedPage } from "./page";

/** One kind of label sheet, millimetres. Common stock sizes, from memory: measure a sheet before printing a batch. */
export interface LabelStock {
  readonly id: string;
  readonly name: string;
  readonly paper: Paper;
  readonly across: number;
  readonly down: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly leftMm: number;
  readonly topMm: number;
  readonly gapAcrossMm: number;
}

export const LABEL_STOCK: readonly LabelStock[] = [
  stock("letter-10", "Letter, 10 of 4 × 2 in", "Letter", 2, 5, 101.6, 50.8, 4, 12.7, 4.8),
  stock("letter-6", "Letter, 6 of 4 × 3⅓ in", "Letter", 2, 3, 101.6, 84.7, 4, 12.7, 4.8),
  stock("letter-30", "Letter, 30 of 2⅝ × 1 in", "Letter", 3, 10, 66.7, 25.4, 4.8, 12.7, 3.2),
  stock("a4-8", "A4, 8 of 99.1 × 67.7 mm", "A4", 2, 4, 99.1, 67.7, 4.65, 13.1, 2.5),
  stock("a4-14", "A4, 14 of 99.1 × 38.1 mm", "A4", 2, 7, 99.1, 38.1, 4.65, 15.15, 2.5),
  stock("a4-24", "A4, 24 of 70 × 37 mm", "A4", 3, 8, 70, 37, 0, 0.5, 0),
];

function stock(
  id: string,
  name: string,
  paper: Paper,
  across: number,
  down: number,
  widthMm: number,
  heightMm: number,
  leftMm: number,
  topMm: number,
  gapAcrossMm: number,
): LabelStock {
  return { id, name, paper, across, down, widthMm, heightMm, leftMm, topMm, gapAcrossMm };
}

/**
 * Labels on one sheet of a stock, from the texts that LABELTEXT gives; the first label is placed at `from` (0 is the
 * first of the sheet), so that a sheet begun can be used up.
 */
export function labelSheet(texts: readonly string[], on: LabelStock, from = 0): PrintedPage {
  const labels = texts.map((text, index) => {
    const at = from + index;
    const column = at % on.across;
    const row = Math.floor(at / on.across) % on.down;
    const left = on.leftMm + column * (on.widthMm + on.gapAcrossMm);
    const top = on.topMm + row * on.heightMm;
    return `<div class="label" style="left:${left.toFixed(1)}mm;top:${top.toFixed(1)}mm">${labelBody(text)}</div>`;
  });
  return {
    title: "Labels",
    paper: on.paper,
    marginMm: 0,
    css: cssOf(on),
    body: `<div class="sheet">${labels.join("")}</div>`,
  };
}

/** What a label says, in the order of what a diver has to know: the mix, its depths, then who and when. */
export interface LabelParts {
  readonly mix: string;
  readonly depths: readonly string[];
  readonly rest: readonly string[];
}

/** The parts of a text that LABELTEXT gives. */
export function labelParts(text: string): LabelParts {
  const [mix = "", ...others] = text.split(" · ");
  const isDepth = (line: string) => line.startsWith("MOD") || line.startsWith("not to be breathed");
  return { mix, depths: others.filter(isDepth), rest: others.filter((line) => !isDepth(line)) };
}

/** Heights of the letters on a stock, millimetres. */
export function lettersMm({ widthMm, heightMm }: LabelStock): Readonly<Record<keyof LabelParts, number>> {
  const mix = Math.min(heightMm / 3.6, widthMm / 8);
  return { mix, depths: mix * 0.42, rest: mix * 0.3 };
}

function labelBody(text: string): string {
  const { mix, depths, rest } = labelParts(text);
  return `<strong class="mix">${escaped(mix)}</strong><span class="depths">${depths.map((line) => `<b>${escaped(line)}</b>`).join(" ")}</span><span class="rest">${rest.map(escaped).join(" · ")}</span>`;
}

function cssOf(stock: LabelStock): string {
  const { widthMm, heightMm, paper } = stock;
  const letters = lettersMm(stock);
  const [pageWidth, pageHeight] = paper === "A4" ? [210, 297] : [215.9, 279.4];
  return `
  .sheet { position: relative; width: ${pageWidth}mm; height: ${pageHeight - 0.5}mm; overflow: hidden; }
  .label { position: absolute; width: ${widthMm}mm; height: ${heightMm}mm; padding: ${Math.min(3, heightMm / 12)}mm ${Math.min(4, widthMm / 16)}mm; overflow: hidden; display: flex; flex-direction: column; justify-content: center; gap: ${heightMm / 40}mm; }
  .mix { font-size: ${letters.mix}mm; line-height: 1; }
  .depths { font-size: ${letters.depths}mm; line-height: 1.15; }
  .depths b { display: inline-block; }
  .rest { font-size: ${letters.rest}mm; line-height: 1.2; color: #24292c; }
`;
}
