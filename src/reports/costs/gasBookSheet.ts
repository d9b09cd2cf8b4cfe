import type { GasAccount, GasBook } from "../../costs/gasBook/gasBook";
import type { CostReport } from "../../costs/report";
import { UNIT_NAMES, volume } from "../../gas/units";
import type { DraftCell, SheetDraft } from "../../sheet/draft/draft";
import { FORMATS } from "../../sheet/draft/looks";
import { sheetOf } from "../../sheet/draft/sheetOf";
import { cellName } from "../../sheet/sheet";
import { costPage } from "./page";

/** Oxygen and helium: what came, what fills took, what is missing. */
export function gasBookSheet(report: CostReport, { accounts, doubts }: GasBook): SheetDraft {
  const { units } = report;
  const unit = UNIT_NAMES[units].volume;
  const columns: readonly (readonly [string, (account: GasAccount) => DraftCell])[] = [
    ["Gas", ({ gas }) => gas],
    ["From", ({ from }) => from],
    ["To", ({ to }) => to],
    ["Counted first", ({ openingL }) => volume(openingL, units)],
    ["Delivered", ({ deliveredL }) => volume(deliveredL, units)],
    ["Sent back", ({ sentBackL }) => volume(sentBackL, units)],
    ["Used by fills", ({ usedL }) => volume(usedL, units)],
    ["Should be there", ({ shouldBeL }) => volume(shouldBeL, units)],
    ["Counted last", ({ closingL }) => (closingL === undefined ? "not counted" : volume(closingL, units))],
    ["Missing", ({ missingL }) => (missingL === undefined ? "not known" : volume(missingL, units))],
    ["Fills left out", ({ fillsLeftOut }) => fillsLeftOut],
  ];
  return sheetOf(
    "Gas book",
    [
      { kind: "title", lines: [`Gas book, in ${unit}`] },
      { kind: "quiet", lines: GAS_BOOK_NOTES },
      {
        kind: "table",
        name: "Gas_book",
        columns: columns.map(([heading], at) => ({ heading, ...(at > 2 && { format: FORMATS.whole }) })),
        rows: accounts.map((account) => columns.map(([, cell]) => cell(account))),
        empty: "Neither oxygen nor helium is booked.",
      },
      { kind: "section", lines: ["Not used"] },
      {
        kind: "table",
        name: "Stock_not_used",
        columns: [{ heading: "Why", mostCharacters: 80 }, { heading: "Stock cell" }],
        rows: doubts.map(({ cell, sentence }) => [sentence, { value: cellName(cell), link: { cell } }]),
        empty: "Every row was understood.",
      },
    ],
    costPage(report),
  );
}

/** What “missing” may be, told wherever it is shown. */
export const GAS_BOOK_NOTES = [
  "From the first stock count to the last, each taken at the end of its day. Without a second count, what is missing is not known.",
  "Missing gas is in no fill: leaks, analysing and purging, fills that are not in the log, and those left out here: not costed, or without a readable date. Bank gas without a price of its own counts as the oxygen it was made of. Below zero, more was used than came in: a delivery or a count is wrong, or the log has fills twice.",
];
