import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { costLog, type CostedLog } from "../../src/costs/costLog";
import { gasBook, type GasBook } from "../../src/costs/gasBook/gasBook";
import { readStockSheet } from "../../src/costs/gasBook/stockSheet";
import { meterLog } from "../../src/costs/meterLog";
import type { PriceList } from "../../src/costs/prices/priceList";
import { readPriceSheet } from "../../src/costs/prices/priceSheet";
import { priceListOf } from "../../src/costs/prices/readPriceList";
import { sumOf } from "../../src/costs/sums";
import { realGas } from "../../src/gas/equationOfState";
import { AIR } from "../../src/gas/mixture";
import { ATMOSPHERE_BAR, DEFAULT_TEMPERATURE_K, LITRES_PER_CUBIC_FOOT } from "../../src/gas/units";
import { readLog } from "../../src/log/readLog";
import { openFile } from "../../src/workbook/file/openFile";

let costed: CostedLog;
let prices: PriceList;
let book: GasBook;

beforeAll(async () => {
  const bytes = readFileSync(new URL("../../shared/samples/gannet-point.xlsx", import.meta.url));
  const { sheets } = (await openFile(new Uint8Array(bytes), "gannet-point.xlsx")).content;
  const rows = readPriceSheet(
    sheets.find(({ name }) => name === "Prices")!,
    "us",
  );
  prices = priceListOf(rows, "us");
  costed = costLog(meterLog(readLog(sheets, { units: "us", dateOrder: "month first" }), "us"), prices);
  const stock = readStockSheet(
    sheets.find(({ name }) => name === "Gas in and out")!,
    "us",
    "month first",
  );
  book = gasBook(stock, rows, costed, "us");
});

describe("the costs of the sample log", () => {
  it("are of every fill, or it is said why not; no row of its lists is lost", () => {
    expect(costed.costed.length + costed.notCosted.length).toBe(600);
    expect(costed.costed.length).toBeGreaterThan(570);
    expect(costed.notCosted.every(({ why }) => why !== "")).toBe(true);
    expect(prices.doubts).toEqual([]);
    expect(book.doubts).toEqual([]);
    expect(costed.leftOut).toEqual([]);
  });

  it("agree with a plain recomputation: an account of oxygen, helium and nitrogen for each fill, by density alone", () => {
    const temperatureK = DEFAULT_TEMPERATURE_K.us;
    const litres = (mol: number, oxygen: number, helium: number) =>
      mol / realGas.density({ oxygen, helium }, ATMOSPHERE_BAR, temperatureK);
    let compared = 0;
    for (const { metered, expense } of costed.costed) {
      const { state, gas, method } = metered;
      if (gas.drained || (method !== "partial pressure" && method !== "continuous")) continue;
      const end = realGas.density(state.endMix, state.endBar, temperatureK) * state.waterVolumeL;
      const start = realGas.density(state.startMix, state.startBar, temperatureK) * state.waterVolumeL;
      const gained = (part: "oxygen" | "helium") => end * state.endMix[part] - start * state.startMix[part];
      const nitrogen = end - start - gained("oxygen") - gained("helium");
      const air = nitrogen / (1 - AIR.oxygen);
      const oxygenL = litres(gained("oxygen") - air * AIR.oxygen, 1, 0);
      const heliumL = litres(gained("helium"), 0, 1);
      const compressedL = litres(air, AIR.oxygen, 0) + (method === "continuous" ? oxygenL + heliumL : 0);
      const hours = compressedL / LITRES_PER_CUBIC_FOOT / (9.2 * 60);
      const boosted =
        method === "partial pressure" ? ((oxygenL + heliumL) / LITRES_PER_CUBIC_FOOT) * 0.06 : 0;
      const labour = { air: 4, nitrox: 6, trimix: 16 }[metered.kind] * (19.5 / 60);
      const total =
        oxygenL * prices.oxygen!.perL +
        heliumL * prices.helium!.perL +
        hours * prices.compressor!.perHour +
        boosted +
        labour;
      // Where the air alone comes within 0.1 per cent points, no token puff of oxygen is counted: a few litres.
      expect(Math.abs(expense.total - total)).toBeLessThan(0.05);
      compared++;
    }
    expect(compared).toBeGreaterThan(100);
  });

  it("leave a little oxygen and helium that is in no fill", () => {
    expect(book.accounts.map(({ gas }) => gas)).toEqual(["oxygen", "helium"]);
    for (const { gas, missingL, deliveredL, openingL, usedL } of book.accounts) {
      expect(missingL! / (deliveredL + openingL)).toBeGreaterThan(0);
      expect(missingL! / (deliveredL + openingL)).toBeLessThan(0.1);
      // Fills without a readable date are left out: the book cannot say when.
      const dated = costed.costed.filter(({ metered }) => metered.month !== "");
      const used = dated.map(({ expense }) => expense.quantities[gas === "oxygen" ? "oxygenL" : "heliumL"]);
      expect(usedL).toBeCloseTo(
        used.reduce((sum, litres) => sum + litres, 0),
        6,
      );
    }
  });

  it("are covered by what is charged, the shop's own fills apart", () => {
    const sum = sumOf(costed.costed);
    expect(sum.unbilled).toBeGreaterThan(100);
    expect(sum.charged - sum.cost).toBeCloseTo(sum.margin, 6);
    expect(sum.margin).toBeGreaterThan(0);
  });
});
