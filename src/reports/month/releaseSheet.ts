import { isEnriched } from "../../audit/record/enriched";
import type { Shop } from "../../audit/shop/shop";
import { mod } from "../../depth/mod";
import { roundDepthDown } from "../../depth/roundDown";
import type { Mixture } from "../../gas/mixture";
import { nameMix } from "../../gas/nameMix";
import { Refusal } from "../../gas/refusal";
import { UNIT_NAMES } from "../../gas/units";
import type { FillFields } from "../../log/log";
import type { DraftCell, SheetDraft } from "../../sheet/draft/draft";
import type { TableBlock } from "../../sheet/draft/blocks";
import { CHART_COLOURS, FORMATS, LOOKS } from "../../sheet/draft/looks";
import { sheetSteps } from "../../sheet/draft/sheetOf";
import { madeInSteps, part, type Steps } from "../../sheet/steps";
import { dayCell, linkCell, percentCell, readingText } from "../cells";
import type { MonthFill, MonthOfFills } from "./monthFills";
import type { MonthOptions } from "./options";
import { pageOf } from "./page";
import type { Period } from "./period";

const RIGHT = { horizontal: "right" } as const;
const METRES_PER_FOOT = 0.3048;

/** Fills of anything but air: ordered or analysed so, or not readable at all. */
function releases({ cylinders }: MonthOfFills): readonly MonthFill[] {
  return cylinders.filter(({ mix, filled }) => {
    const { orderedMix } = filled.fill.fields;
    if (orderedMix.kind === "value" && isEnriched(orderedMix.value)) return true;
    return mix !== undefined && isEnriched(mix);
  });
}

/** Who analysed which nitrox, trimix or oxygen fill, how deep it may be breathed, and who took it. */
export function* releaseSheet(
  month: MonthOfFills,
  shop: Shop,
  period: Period,
  options: MonthOptions,
): Steps<SheetDraft> {
  const { depth } = UNIT_NAMES[options.units];
  const { maxPpO2 } = shop.figures;
  const rows = yield* part(
    0,
    0.5,
    madeInSteps(releases(month), (fill) => releaseCells(fill, maxPpO2, options)),
  );
  const sheet = sheetSteps(
    `Release ${period.iso}`,
    [
      { kind: "title", lines: [`Nitrox, trimix and oxygen handed out, ${period.text}`] },
      {
        kind: "quiet",
        lines: [
          `MOD from the analysis at a ppO2 of ${maxPpO2}, in salt water, rounded down. Where nobody analysed, there is none.`,
        ],
      },
      {
        kind: "table",
        name: `Release_${period.iso}`,
        columns: [
          { heading: "Filled on" },
          { heading: "Cylinder" },
          { heading: "Ordered" },
          { heading: "Analysed O2 %", format: FORMATS.oneDecimal, style: RIGHT },
          { heading: "Analysed He %", format: FORMATS.oneDecimal, style: RIGHT },
          { heading: `MOD ${depth}`, format: FORMATS.whole, style: RIGHT },
          { heading: `MOD on label ${depth}`, format: FORMATS.whole, style: RIGHT },
          { heading: "Analysed by" },
          { heading: "Certification" },
          { heading: "Signature" },
          { heading: "Cell", mostCharacters: 20 },
        ],
        rows,
        empty: `Nothing but air was filled in ${period.text}.`,
      },
    ],
    pageOf(options, period, true),
  );
  return yield* part(0.5, 1, sheet);
}

function releaseCells(
  { filled, day, cell }: MonthFill,
  maxPpO2: number,
  options: MonthOptions,
): readonly DraftCell[] {
  const { fields } = filled.fill;
  const { analysedMix: analysis } = fields;
  const analysed = analysis.kind === "value" ? analysis.value : undefined;
  return [
    dayCell(day),
    filled.serial,
    readingText(fields.orderedMix, nameMix),
    analysed ? percentCell(analysed.oxygen) : lack(readingText(analysis, nameMix) || "none"),
    analysed ? percentCell(analysed.helium) : "",
    analysed ? modCell(analysed, maxPpO2, options) : "",
    labelCell(fields, options),
    readingText(fields.analysedBy, String) || lack("nobody named"),
    options.names
      ? readingText(fields.certification, String)
      : readingText(fields.certification, () => "seen"),
    options.names
      ? readingText(fields.receivedBy, String) || lack("not signed")
      : readingText(fields.receivedBy, () => "signed") || lack("not signed"),
    linkCell(cell, options.logFile),
  ];
}

function lack(words: string): DraftCell {
  return { value: words, style: LACKING };
}

const LACKING = { ...LOOKS.warn, horizontal: "left" } as const;

function modCell(mix: Mixture, maxPpO2: number, { units }: MonthOptions): DraftCell {
  try {
    return roundDepthDown(mod(mix, units, maxPpO2));
  } catch (thrown) {
    if (thrown instanceof Refusal) return "none";
    throw thrown;
  }
}

function labelCell({ modOnLabelM }: FillFields, { units }: MonthOptions): DraftCell {
  if (modOnLabelM.kind !== "value") return readingText(modOnLabelM, String);
  return Math.round(units === "us" ? modOnLabelM.value / METRES_PER_FOOT : modOnLabelM.value);
}

/** What was ordered against what came out, with the chart on top. */
export function* analysesSheet(
  month: MonthOfFills,
  period: Period,
  options: MonthOptions,
): Steps<SheetDraft> {
  return yield* sheetSteps(
    `Analyses ${period.iso}`,
    [{ kind: "title", lines: [`Ordered and analysed oxygen, ${period.text}`] }, analyses(month, period)],
    pageOf(options, period, false),
  );
}

function analyses(month: MonthOfFills, { iso, text }: Period): TableBlock {
  const rows = releases(month).flatMap(({ filled, day }) => {
    const { orderedMix, analysedMix } = filled.fill.fields;
    if (orderedMix.kind !== "value" || analysedMix.kind !== "value") return [];
    const [ordered, analysed] = [orderedMix.value.oxygen, analysedMix.value.oxygen];
    return [
      [
        dayCell(day),
        filled.serial,
        percentCell(ordered),
        percentCell(analysed),
        percentCell(analysed - ordered),
      ],
    ];
  });
  const percent = { format: FORMATS.oneDecimal, style: RIGHT } as const;
  return {
    kind: "table",
    name: `Analyses_${iso}`,
    columns: [
      { heading: "Filled on" },
      { heading: "Cylinder" },
      { heading: "Ordered O2 %", ...percent },
      { heading: "Analysed O2 %", ...percent },
      { heading: "Difference points", ...percent },
    ],
    rows,
    empty: `No fill of ${text} has both an order and an analysis.`,
    chart: {
      kind: "dots",
      title: `Ordered and analysed oxygen, ${text}`,
      axes: ["Ordered oxygen, %", "Analysed oxygen, %"],
      says: "Each fill by the oxygen ordered and the oxygen analysed; on the line they are the same.",
      rowsHigh: 22,
      series: [
        { name: "Fills", categories: 2, values: 3, colour: CHART_COLOURS[0] },
        { name: "As ordered", categories: 2, values: 2, colour: CHART_COLOURS[1], line: true },
      ],
    },
  };
}
