import type { CellStyle } from "../../sheet/cellStyle";
import type { DraftCell, DraftRow, SheetDraft } from "../../sheet/draft/draft";
import { labelParts, lettersMm, type LabelParts, type LabelStock } from "./labels";

/** A column is counted in digits of the usual font: 7 pixels of 1/96 inch. */
const CHARACTER_MM = (7 / 96) * 25.4;
const POINTS_PER_MM = 72 / 25.4;
/** How a label's height is shared out; its parts stand one below the other in cells of their own. */
const SHARES: Readonly<Record<keyof LabelParts, number>> = { mix: 0.38, depths: 0.3, rest: 0.32 };
const VERTICAL = { mix: "bottom", depths: "center", rest: "top" } as const;

/** Labels as a sheet whose cells lie on those of the stock; the first label is placed at `from`, as when printed. */
export function labelsSheet(texts: readonly string[], on: LabelStock, from = 0): SheetDraft {
  const hasGaps = on.gapAcrossMm > 0;
  const across = Array.from({ length: on.across }, () => on.widthMm);
  const widthsMm = hasGaps ? across.flatMap((width) => [width, on.gapAcrossMm]).slice(0, -1) : across;
  const rowsOfLabels = Math.ceil((from + texts.length) / on.across);
  const letters = lettersMm(on);
  const partRow = (part: keyof LabelParts, down: number): DraftRow => ({
    heightPt: on.heightMm * SHARES[part] * POINTS_PER_MM,
    cells: widthsMm.map((_, column): DraftCell => {
      const isGap = hasGaps && column % 2 === 1;
      const text = isGap ? undefined : texts[down * on.across + (hasGaps ? column / 2 : column) - from];
      if (text === undefined) return null;
      return { value: shown(labelParts(text), part), style: styleOf(part, letters[part]) };
    }),
  });
  return {
    name: "Labels",
    rows: Array.from({ length: rowsOfLabels }, (_, down) =>
      (["mix", "depths", "rest"] as const).map((part) => partRow(part, down)),
    ).flat(),
    widths: widthsMm.map((width) => width / CHARACTER_MM),
    merges: [],
    tables: [],
    charts: [],
    frozenRows: 0,
    page: {
      paper: on.paper,
      landscape: false,
      stock: { leftMm: on.leftMm, topMm: on.topMm },
      footer: "",
    },
  };
}

function shown(parts: LabelParts, part: keyof LabelParts): string {
  const said = parts[part];
  return typeof said === "string" ? said : said.join(part === "depths" ? "  " : " · ");
}

function styleOf(part: keyof LabelParts, lettersHighMm: number): CellStyle {
  return {
    bold: part !== "rest",
    sizePt: Math.max(6, Math.floor(lettersHighMm * POINTS_PER_MM)),
    horizontal: "left",
    indent: 1,
    vertical: VERTICAL[part],
    ...(part !== "mix" && { wrap: true }),
  };
}
