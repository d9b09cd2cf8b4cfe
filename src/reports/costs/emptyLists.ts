import type { Units } from "../../gas/units";
import type { DraftCell, Paper, SheetDraft } from "../../sheet/draft/draft";
import { LOOKS } from "../../sheet/draft/looks";
import { sheetOf } from "../../sheet/draft/sheetOf";
import type { Block, TableColumn } from "../../sheet/draft/blocks";

/*
 * Lists to be filled in. Their headings carry no units and their numbers none either: a heading such as "psi" would
 * make a log of them. The shop's units hold, as the line above says.
 */

const PRICE_COLUMNS: readonly TableColumn[] = [
  { heading: "What" },
  { heading: "We pay", format: "#,##0.00" },
  { heading: "Per" },
  { heading: "We charge", format: "#,##0.00" },
  { heading: "For one" },
  { heading: "Holds", format: "#,##0" },
  { heading: "Full", format: "#,##0" },
  { heading: "Left over", format: "#,##0" },
  { heading: "Losses", format: "0%" },
];

const BLANK: DraftCell = { value: null, style: LOOKS.fillIn };

/** A price list with every row that fills can be costed by, and no price in it: what is left blank is not counted. */
export function emptyPriceList(units: Units, paper: Paper): SheetDraft {
  const us = units === "us";
  const [volume, pressure, flow, degrees] = us
    ? ["cu ft", "psi", "cu ft/min", "°F"]
    : ["L", "bar", "L/min", "°C"];
  const bottle = (what: string): readonly DraftCell[] => [
    what,
    BLANK,
    "bottle",
    BLANK,
    volume,
    BLANK,
    BLANK,
    BLANK,
    BLANK,
  ];
  const pay = (what: string, per: string): readonly DraftCell[] => [what, BLANK, per];
  const charge = (what: string): readonly DraftCell[] => [what, null, null, BLANK, "fill"];
  return page(
    "Prices",
    [
      { kind: "title", lines: ["Prices"] },
      {
        kind: "text",
        lines: [
          "Fill in what applies and leave the rest blank: a price that is not here is in no cost, and a fill that needs it is not costed.",
          `A bottle: what a full one holds in ${volume}, and the ${pressure} when it is full and when it goes back. Losses: the share that never reaches a cylinder.`,
          "Units may be changed: bottle, cu ft, L, m³, kg for gas; hour, kWh for the compressor. Add bank gas by its mix, such as “EAN32 bank”.",
        ],
      },
      {
        kind: "table",
        name: "Prices",
        columns: PRICE_COLUMNS,
        empty: "",
        rows: [
          bottle("Oxygen"),
          bottle("Helium"),
          charge("Air fill"),
          charge("Nitrox fill"),
          charge("Trimix fill"),
          pay("Compressor delivers", flow),
          pay("Compressor energy", "hour"),
          pay("Filter", "40 hours"),
          pay("Filter rated at", degrees),
          pay("Compressor room", degrees),
          pay("Service", "hour"),
          pay("Booster", volume),
          pay("Labour", "hour"),
          pay("Time per fill", "min/fill"),
          pay("Time per nitrox fill", "min/fill"),
          pay("Time per trimix fill", "min/fill"),
        ],
      },
    ],
    paper,
  );
}

const STOCK_COLUMNS: readonly TableColumn[] = [
  { heading: "Date", format: "yyyy-mm-dd" },
  { heading: "What" },
  { heading: "In or out" },
  { heading: "How many", format: "#,##0.0" },
  { heading: "Unit" },
  { heading: "Standing at", format: "#,##0" },
];

/** A sheet for deliveries, bottles sent back and stock counts. */
export function emptyStockSheet(units: Units, paper: Paper): SheetDraft {
  const row = (event: string): readonly DraftCell[] => [BLANK, "Oxygen", event, BLANK, "bottle", BLANK];
  return page(
    "Gas in and out",
    [
      { kind: "title", lines: ["Gas in and out"] },
      {
        kind: "text",
        lines: [
          "Oxygen and helium as they come and go. In or out: delivered, sent back, or in stock for a count. The gas book runs from the first count to the last.",
          `Standing at: ${units === "us" ? "psi" : "bar"} of bottles that are not full. A count is taken at the end of its day.`,
        ],
      },
      {
        kind: "table",
        name: "Stock",
        columns: STOCK_COLUMNS,
        empty: "",
        rows: [row("in stock"), row("delivered"), row("sent back"), row("in stock")],
      },
    ],
    paper,
  );
}

function page(name: string, blocks: readonly Block[], paper: Paper): SheetDraft {
  return sheetOf(name, blocks, { paper, landscape: true, footer: name });
}
