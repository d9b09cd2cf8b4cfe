import type { Workbook, Worksheet } from "exceljs";
import { asCell, dateCell, type Written } from "./cells";
import { dress, page } from "./look";

/*
 * What the shop pays and charges, and how its oxygen and helium come and go. The headings carry no units, so that
 * nobody takes these sheets for a log; prices are invented.
 */

const PRICE_HEADINGS = [
  "What",
  "We pay",
  "Per",
  "We charge",
  "For one",
  "Holds",
  "Full",
  "Left over",
  "Losses",
];
const PRICES: readonly (readonly Written[])[] = [
  ["Oxygen", 46, "bottle", 0.3, "cu ft", 281, 2400, 150, percent(0.04)],
  ["Helium", 395, "bottle", 2.4, "cu ft", 291, 2640, 150, percent(0.04)],
  ["Air fill", null, null, 9, "fill"],
  ["Nitrox fill", null, null, 14, "fill"],
  ["Trimix fill", null, null, 22, "fill"],
  ["Compressor delivers", 9.2, "cu ft/min"],
  ["Electricity", 0.18, "kWh"],
  ["Compressor power", 7.5, "kW"],
  ["Filter", 118, "45 hours"],
  ["Filter rated at", 70, "°F"],
  ["Compressor room", 82, "°F"],
  ["Service", 1.6, "hour"],
  ["Booster", 0.06, "cu ft"],
  ["Labour", 19.5, "hour"],
  ["Time per fill", 4, "min/fill"],
  ["Time per nitrox fill", 6, "min/fill"],
  ["Time per trimix fill", 16, "min/fill"],
];

const STOCK_HEADINGS = ["Date", "What", "In or out", "How many", "Unit", "Standing at"];
const STOCK: readonly (readonly Written[])[] = [
  [dateCell("2026-07-31"), "Oxygen", "in stock", 4, "bottle", null],
  [dateCell("2026-07-31"), "Helium", "in stock", 2, "bottle", null],
  [dateCell("2026-08-14"), "Oxygen", "delivered", 6, "bottle", null],
  [dateCell("2026-08-14"), "Helium", "delivered", 3, "bottle", null],
  [dateCell("2026-08-14"), "Oxygen", "sent back", 5, "bottle", 150],
  [dateCell("2026-09-18"), "Oxygen", "delivered", 6, "bottle", null],
  [dateCell("2026-09-18"), "Helium", "delivered", 3, "bottle", null],
  [dateCell("2026-10-31"), "Oxygen", "in stock", 1, "bottle", 900],
  [dateCell("2026-10-31"), "Helium", "in stock", 1, "bottle", 1500],
];

/** The price list and the stock sheet, beside the log. */
export function writePriceLists(workbook: Workbook): void {
  write(
    workbook,
    "Prices",
    "What a fill costs and earns. Bottles: cu ft in a full one, psi full and sent back.",
    PRICE_HEADINGS,
    PRICES,
    "0.00",
  );
  write(
    workbook,
    "Gas in and out",
    "Oxygen and helium: deliveries, bottles sent back, counts at the end of the day.",
    STOCK_HEADINGS,
    STOCK,
    "0",
  );
}

function write(
  workbook: Workbook,
  name: string,
  note: string,
  headings: readonly string[],
  rows: readonly (readonly Written[])[],
  usual: string,
): void {
  const sheet = workbook.addWorksheet(name, {
    views: [{ state: "frozen", ySplit: HEADING_ROW }],
    pageSetup: page("3:3"),
  });
  sheet.getCell(1, 1).value = name;
  dress(sheet, 1, headings.length, "title");
  sheet.getCell(2, 1).value = note;
  dress(sheet, 2, headings.length, "note");
  fillRow(sheet, HEADING_ROW, headings, usual);
  dress(sheet, HEADING_ROW, headings.length, "heading");
  headings.forEach((_, at) => (sheet.getColumn(at + 1).width = at === 0 ? 22 : 12));
  rows.forEach((row, at) => {
    dress(sheet, HEADING_ROW + 1 + at, headings.length, "plain");
    fillRow(sheet, HEADING_ROW + 1 + at, row, usual);
  });
}

const HEADING_ROW = 3;

function fillRow(sheet: Worksheet, row: number, cells: readonly Written[], usual: string): void {
  cells.forEach((written, at) => {
    const { value, format } = asCell(written);
    const cell = sheet.getCell(row, at + 1);
    cell.value = value;
    if (typeof value === "number") cell.numFmt = format ?? (value >= 100 ? "#,##0" : usual);
  });
}

function percent(value: number): Written {
  return { value, format: "0%" };
}
