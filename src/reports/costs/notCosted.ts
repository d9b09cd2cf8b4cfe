import { lacksOf } from "../../costs/costLog";
import type { CostReport } from "../../costs/report";
import type { SheetDraft } from "../../sheet/draft/draft";
import { FORMATS } from "../../sheet/draft/looks";
import { sheetOf } from "../../sheet/draft/sheetOf";
import { costPage, periodInWords, type CostSheetOptions } from "./page";
import { dateCell, linkTo } from "./eachFill";

/** Every fill that is in no sum, with the reason and the cell that says so. */
export function notCostedSheet(report: CostReport, { sheets }: CostSheetOptions): SheetDraft {
  const { log, month } = report;
  return sheetOf(
    `Not costed ${month ?? "all"}`,
    [
      { kind: "title", lines: [`Not costed, ${periodInWords(report)}: ${log.notCosted.length} fills`] },
      {
        kind: "quiet",
        lines: [
          "What these took and cost is not known: they are in no sum. Fill in what is missing and work it out again.",
        ],
      },
      {
        kind: "table",
        name: "Not_costed",
        columns: [
          { heading: "Why", mostCharacters: 60 },
          { heading: "Date", format: FORMATS.date },
          { heading: "Fill" },
          { heading: "Serial as written" },
          { heading: "Sheet" },
        ],
        rows: lacksOf(log.notCosted).flatMap(({ why, fills }) =>
          fills.map(({ fill, field }) => {
            const { serial } = fill.fields;
            return [
              why,
              dateCell(fill),
              linkTo(fill, field, sheets),
              serial.kind === "value" ? serial.value.join(" / ") : null,
              fill.sheet,
            ];
          }),
        ),
        empty: "Every fill was costed.",
      },
    ],
    costPage(report),
  );
}
