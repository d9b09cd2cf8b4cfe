import type { CostReport } from "../../costs/report";
import { UNIT_NAMES, volume } from "../../gas/units";
import type { DraftCell, SheetDraft } from "../../sheet/draft/draft";
import type { Block } from "../../sheet/draft/blocks";
import { FORMATS, LOOKS } from "../../sheet/draft/looks";
import { rowsTaken, sheetOf } from "../../sheet/draft/sheetOf";
import { costPage } from "./page";

/** A fill to play with: its cells are filled in, its answers are our worksheet functions on these prices. */
export function tryItSheet(report: CostReport): SheetDraft {
  const { prices, units } = report;
  const us = units === "us";
  const { pressure, volume: volumeUnit } = UNIT_NAMES[units];
  const perUnit = (perL: number | undefined): number | null =>
    perL === undefined ? null : perL / volume(1, units);
  const fillIn = (value: string | number | null, format?: string): DraftCell => ({
    value,
    ...(format !== undefined && { format }),
    style: { ...LOOKS.fillIn, horizontal: "left" },
  });
  const order: readonly (readonly [string, DraftCell])[] = [
    ["Cylinder", fillIn(us ? "AL80" : "12L232")],
    [`Gauge before (${pressure})`, fillIn(us ? 500 : 50)],
    ["Mix before", fillIn("EAN32")],
    [`Gauge after (${pressure})`, fillIn(us ? 3000 : 232)],
    ["Mix after", fillIn("EAN32")],
    ["Top gas", fillIn("air")],
  ];
  const { labour, compressor } = prices;
  // Air is what the compressor costs for it, where it has no price of its own.
  const top = prices.air?.perL ?? (compressor && compressor.perHour / compressor.litresPerHour);
  const costs: readonly (readonly [string, DraftCell])[] = [
    ["oxygen", fillIn(perUnit(prices.oxygen?.perL), "0.0000")],
    ["helium", fillIn(perUnit(prices.helium?.perL), "0.0000")],
    ["top", fillIn(perUnit(top), "0.0000")],
    ["per fill", fillIn(labour?.perFill.nitrox ?? 0, FORMATS.money)],
  ];
  const before: readonly Block[] = [
    { kind: "title", lines: ["Work out a fill"] },
    {
      kind: "quiet",
      lines: [
        `By partial pressure. Change the cells in sand; the answers are Brimbook's functions. Prices per ${volumeUnit}; “per fill” is labour and whatever comes on top.`,
        "A plan, not a measurement: analyse every cylinder.",
      ],
    },
  ];
  const orderRow = rowsTaken(before) + 1;
  const [cylinder, start, startMix, end, endMix, topMix] = order.map((_, at) => `B${orderRow + at}`);
  const fill = `${cylinder},${start},${startMix},${end},${endMix}`;
  const upToPrices: readonly Block[] = [
    ...before,
    { kind: "facts", facts: order },
    { kind: "section", lines: ["Prices"] },
  ];
  const priceRow = rowsTaken(upToPrices) + 1;
  const table = `$A$${priceRow}:$B$${priceRow + costs.length - 1}`;
  const unit = `"${pressure}"`;
  const cost = `"FILLCOST",${fill},${table},${unit},${topMix}`;
  const ours = (call: string, format: string): DraftCell => ({
    value: null,
    formula: `IFERROR(BRIM.${call},"see below")`,
    format,
    style: { horizontal: "left", bold: true },
  });
  const used = (gas: string): DraftCell =>
    ours(`GASUSED("${gas}",${fill},${unit},${topMix})`, FORMATS.oneDecimal);
  return sheetOf(
    "Work out a fill",
    [
      ...upToPrices,
      { kind: "facts", facts: costs },
      { kind: "section", lines: ["Answers"] },
      {
        kind: "facts",
        facts: [
          [`Oxygen (${volumeUnit})`, used("oxygen")],
          [`Helium (${volumeUnit})`, used("helium")],
          [`Top gas (${volumeUnit})`, used("top")],
          ["This fill costs", ours(`FILLCOST(${cost.slice('"FILLCOST",'.length)})`, FORMATS.money)],
          [
            "How, or why not",
            { value: null, formula: `IFERROR(BRIM.WHY(${cost}),"These cells need Brimbook's functions.")` },
          ],
        ],
      },
    ],
    costPage(report),
  );
}
