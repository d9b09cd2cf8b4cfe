import type { PriceList } from "../../src/costs/prices/priceList";
import { readPriceList } from "../../src/costs/prices/readPriceList";
import type { Units } from "../../src/gas/units";
import { readLog } from "../../src/log/readLog";
import type { Log } from "../../src/log/log";
import type { CellValue, Sheet } from "../../src/sheet/sheet";
import { sheet } from "../pane/fakeWorkbook";

/** A price list of an invented shop, in psi and cu ft. */
export const PRICE_ROWS: readonly (readonly CellValue[])[] = [
  ["Prices, from August"],
  ["What", "We pay", "Per", "We charge", "Per", "Holds", "Full", "Left over", "Losses"],
  ["Oxygen", 42, "bottle", 0.35, "cu ft", 282, 2400, 200, "4 %"],
  ["Helium", 340, "bottle", 2.6, "cu ft", 291, 2640, 150, "4 %"],
  ["Air fill", null, null, 8, "fill"],
  ["Nitrox fill", null, null, 14, "fill"],
  ["Trimix fill", null, null, 20, "fill"],
  ["Compressor delivers", 10, "cu ft/min"],
  ["Electricity", 0.2, "kWh"],
  ["Compressor power", 7.5, "kW"],
  ["Filter", 80, "40 hours"],
  ["Service", 1.5, "hour"],
  ["Labour", 20, "hour"],
  ["Time per fill", 6, "min/fill"],
];

export function priceSheet(rows: readonly (readonly CellValue[])[] = PRICE_ROWS): Sheet {
  return sheet("Prices", rows);
}

export function prices(rows: readonly (readonly CellValue[])[] = PRICE_ROWS, units: Units = "us"): PriceList {
  return readPriceList(priceSheet(rows), units);
}

const FILL_HEADINGS = [
  "Date", "Serial", "Customer", "Start psi", "Start mix", "Ordered mix", "Method", "End psi", "Analysed O2", "Analysed He",
]; // prettier-ignore
const CYLINDER_HEADINGS = ["Serial", "Size", "Hydro", "Visual"];
const CYLINDERS: readonly (readonly CellValue[])[] = [
  ["GP1001", "AL80", "2024-03-14", "2026-03-20"],
  ["GP2001", "LP85", "2024-03-14", "2026-03-20"],
  ["GP2002", "LP85", "2024-03-14", "2026-03-20"],
  ["GP3001", "no idea", "2024-03-14", "2026-03-20"],
];

/** A log in US units of these fills. */
export function logOf(
  rows: readonly (readonly CellValue[])[],
  headings: readonly string[] = FILL_HEADINGS,
): Log {
  return readLog(
    [sheet("October", [headings, ...rows]), sheet("Cylinders", [CYLINDER_HEADINGS, ...CYLINDERS])],
    {
      units: "us",
      dateOrder: "month first",
    },
  );
}

/** One fill of each kind: air, bank, stream, partial pressure, trimix into a twin set. */
export const FILLS: readonly (readonly CellValue[])[] = [
  ["2026-10-02", "GP1001", "C-014", 500, "air", "air", "air", 3000, null, null],
  ["2026-10-03", "GP1001", "C-014", 500, "EAN32", "EAN32", "bank", 3000, 32, null],
  ["2026-10-04", "GP1001", "C-020", 500, "EAN36", "EAN36", "continuous", 3000, 36, null],
  ["2026-10-05", "GP1001", "C-020", 500, "EAN32", "EAN32", "partial pressure", 3000, 32, null],
  ["2026-11-06", "GP2001 / GP2002", "C-031", 300, "TX 18/45", "TX 18/45", "partial pressure", 2600, 18, 45],
];
