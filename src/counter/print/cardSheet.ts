import { UNIT_NAMES } from "../../gas/units";
import type { CellStyle } from "../../sheet/cellStyle";
import type { Block, TableColumn } from "../../sheet/draft/blocks";
import { styledCell, type DraftCell, type DraftRow, type SheetDraft } from "../../sheet/draft/draft";
import { FORMATS, LOOKS } from "../../sheet/draft/looks";
import { sheetOf } from "../../sheet/draft/sheetOf";
import type { Card } from "./card";

/** Room for a pen. */
const WRITING_PT = 30;
/** As on the printed card, to be read at arm's length. */
const STOP: CellStyle = { bold: true, sizePt: 20, horizontal: "right", vertical: "center", indent: 1 };
const STOP_PT = 33;
const STEP: CellStyle = { wrap: true, vertical: "center" };
const BLANK: DraftCell = { value: null, style: LOOKS.fillIn };
const BOX: DraftCell = { value: "☐", style: { sizePt: 16, horizontal: "center", vertical: "center" } };

/** The card as a sheet of the workbook, one page when printed: the same words and figures as the printed card. */
export function cardSheet(card: Card): SheetDraft {
  const { serial, units, paper, way, facts, against, steps, stopsHold, blanks, cautions } = card;
  const unit = UNIT_NAMES[units].pressure;
  const hasWarm = steps.some(({ warm }) => warm !== undefined);
  const columns: readonly TableColumn[] = [
    { heading: "Step", leastCharacters: 26 },
    { heading: "Done" },
    { heading: `Stop at, settled ${unit}`, format: units === "us" ? "0" : FORMATS.oneDecimal, leastCharacters: 14 },
    ...(hasWarm ? [{ heading: "Warm it reads", leastCharacters: 16 }] : []),
    { heading: "Reading", leastCharacters: 10 },
    { heading: "Gas temp.", leastCharacters: 9 },
    { heading: "Initials", leastCharacters: 9 },
  ]; // prettier-ignore
  const blocks: readonly Block[] = [
    { kind: "title", lines: [`Fill card ${serial}`.trim()] },
    { kind: "quiet", lines: [way] },
    { kind: "facts", facts },
    ...(against === undefined ? [] : [{ kind: "caution", lines: [against] } as const]),
    { kind: "section", lines: ["Steps"] },
    {
      kind: "table",
      name: "Fill_card",
      columns,
      rows: steps.map(({ what, change, stop, warm }): readonly DraftCell[] => [
        { value: `${what}\n${change}`, style: STEP },
        BOX,
        { value: Number(stop), style: STOP },
        ...(hasWarm ? [{ value: warm ?? "", style: STEP }] : []),
        ...[BLANK, BLANK, BLANK],
      ]),
      empty: "The order is in the cylinder already: nothing to add.",
    },
    { kind: "quiet", lines: [stopsHold] },
    ...blanks.flatMap(({ heading, labels }): readonly Block[] => [
      { kind: "section", lines: [heading] },
      { kind: "facts", facts: labels.map((label) => [label, BLANK] as const) },
    ]),
    { kind: "caution", lines: cautions },
  ];
  const sheet = sheetOf(`Fill card ${serial}`.trim(), blocks, {
    paper,
    landscape: false,
    onePage: true,
    footer: `Fill card ${serial}`.trim(),
    own: "fill card",
  });
  return { ...sheet, frozenRows: 0, rows: sheet.rows.map(withRoom) };
}

/** Rows to write in are high enough for it, and those with a stop for its figure. */
function withRoom(row: DraftRow): DraftRow {
  const cells = row.cells.map(styledCell);
  if (cells.some(({ style }) => style?.sizePt === STOP.sizePt)) return { ...row, heightPt: STOP_PT };
  const [label, first] = cells;
  if (first?.style?.fill !== LOOKS.fillIn.fill) return row;
  const middle = { ...label!, style: { ...label!.style, vertical: "center" } as const };
  return { cells: [middle, ...cells.slice(1)], heightPt: WRITING_PT };
}
