import { ownerOf } from "../../audit/lists/recall";
import { pressureText, ratingText } from "../../words/inSentences";
import { nameMix } from "../../gas/nameMix";
import type { DraftCell, SheetDraft } from "../../sheet/draft/draft";
import { LOOKS } from "../../sheet/draft/looks";
import { sheetSteps } from "../../sheet/draft/sheetOf";
import { madeInSteps, part, type Steps } from "../../sheet/steps";
import { dayCell, linkCell, readingText } from "../cells";
import type { MonthFill, MonthOfFills } from "./monthFills";
import type { MonthOptions } from "./options";
import { pageOf } from "./page";
import type { Period } from "./period";
import { testOnDay } from "./testCells";

/** Every cylinder that was filled, fill by fill, with its tests as they were on that day. */
export function* cylindersSheet(
  month: MonthOfFills,
  period: Period,
  options: MonthOptions,
): Steps<SheetDraft> {
  const rows = yield* part(
    0,
    0.5,
    madeInSteps(month.cylinders, (fill) => filledCells(fill, options)),
  );
  const sheet = sheetSteps(
    `Cylinders ${period.iso}`,
    [
      { kind: "title", lines: [`Cylinders filled, ${period.text}`] },
      {
        kind: "quiet",
        lines: [
          "Tests as they stood on the day of the fill. A date in red had passed; what is not on record is not passed.",
        ],
      },
      {
        kind: "table",
        name: `Cylinders_${period.iso}`,
        columns: [
          { heading: "Filled on" },
          { heading: "Cylinder" },
          ...(options.names ? [{ heading: "Owner" }] : []),
          { heading: "Mix" },
          { heading: "Method" },
          { heading: "Filled to", style: { horizontal: "right" } },
          { heading: "Filled by" },
          { heading: "Hydro" },
          { heading: "Hydro good until" },
          { heading: "Visual" },
          { heading: "Visual good until" },
          { heading: "Oxygen rating" },
          { heading: "Cell", mostCharacters: 20 },
        ],
        rows,
        empty: `The log has no fills in ${period.text}.`,
      },
    ],
    pageOf(options, period, true),
  );
  return yield* part(0.5, 1, sheet);
}

function filledCells({ filled, day, mix, cell }: MonthFill, options: MonthOptions): readonly DraftCell[] {
  const { fields } = filled.fill;
  const hydro = testOnDay(filled.cylinder, "hydros", day);
  const visual = testOnDay(filled.cylinder, "visuals", day);
  const unit = options.units === "us" ? "psi" : "bar";
  return [
    dayCell(day),
    filled.serial === "" ? NOT_READ : filled.serial,
    ...(options.names ? [ownerOf(filled) ?? ""] : []),
    mix ? nameMix(mix) : NOT_KNOWN,
    readingText(fields.method, String),
    readingText(fields.endPressure, ({ bar }) => pressureText(bar, unit)),
    readingText(fields.filledBy, String),
    hydro.last,
    hydro.until,
    visual.last,
    visual.until,
    readingText(filled.cylinder.oxygenService.reading, ratingText) || NOT_KNOWN,
    linkCell(cell, options.logFile),
  ];
}

const NOT_KNOWN = { value: "not known", style: LOOKS.warn } as const;
const NOT_READ = { value: "not read", style: LOOKS.warn } as const;
