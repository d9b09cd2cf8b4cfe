import { costLog } from "../../src/costs/costLog";
import { gasBook } from "../../src/costs/gasBook/gasBook";
import { readStockSheet } from "../../src/costs/gasBook/stockSheet";
import { meterLog } from "../../src/costs/meterLog";
import { readPriceSheet } from "../../src/costs/prices/priceSheet";
import { priceListOf } from "../../src/costs/prices/readPriceList";
import type { CostReport } from "../../src/costs/report";
import { sheet } from "../pane/fakeWorkbook";
import { FILLS, logOf, PRICE_ROWS, priceSheet } from "./lists";

/** The report of a small log with a price of bank gas, a booster, an unbilled fill, one not costed, and a gas book. */
export function smallReport(): { readonly report: CostReport; readonly log: ReturnType<typeof logOf> } {
  const log = logOf([
    ...FILLS,
    ["2026-10-08", "GP1001", "Shop", 500, "EAN32", "EAN32", "bank", 3000, 32],
    ["2026-10-09", "GP9999", "C-031", 500, "air", "air", "air", 3000],
  ]);
  const rows = readPriceSheet(
    priceSheet([
      ...PRICE_ROWS,
      ["EAN32 bank", 0.05, "cu ft"],
      ["Booster", 0.03, "cu ft"],
      ["Argon", 3, "bottle"],
    ]),
    "us",
  );
  const prices = priceListOf(rows, "us");
  const costed = costLog(meterLog(log, "us"), prices);
  const stock = readStockSheet(
    sheet("Gas in and out", [
      ["Date", "What", "In or out", "How many", "Unit"],
      ["2026-10-01", "Oxygen", "in stock", 2, "bottle"],
      ["2026-11-30", "Oxygen", "in stock", 400, "cu ft"],
    ]),
    "us",
    "month first",
  );
  return {
    log,
    report: { units: "us", paper: "Letter", log: costed, prices, book: gasBook(stock, rows, costed, "us") },
  };
}
