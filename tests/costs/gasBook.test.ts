import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { costLog } from "../../src/costs/costLog";
import { gasBook } from "../../src/costs/gasBook/gasBook";
import { isStockSheet, readStockSheet } from "../../src/costs/gasBook/stockSheet";
import { meterLog } from "../../src/costs/meterLog";
import { readPriceSheet } from "../../src/costs/prices/priceSheet";
import { LITRES_PER_CUBIC_FOOT } from "../../src/gas/units";
import type { CellValue } from "../../src/sheet/sheet";
import { anySheet } from "../log/anySheet";
import { sheet } from "../pane/fakeWorkbook";
import { FILLS, logOf, prices, priceSheet } from "./lists";

const HEADINGS = ["Date", "What", "In or out", "How many", "Unit", "Standing at"];
const log = costLog(
  meterLog(logOf([...FILLS, ["2026-10-20", null, null, 0, "air", "air", "air", 3000]]), "us"),
  prices(),
);

function book(...rows: (readonly CellValue[])[]) {
  const stock = readStockSheet(
    sheet("Gas in and out", [["Oxygen and helium"], HEADINGS, ...rows]),
    "us",
    "month first",
  );
  return gasBook(stock, readPriceSheet(priceSheet(), "us"), log, "us");
}

describe("the gas book", () => {
  it("finds its sheet by its headings", () => {
    expect(isStockSheet(sheet("Gas in and out", [HEADINGS]))).toBe(true);
    expect(isStockSheet(priceSheet())).toBe(false);
  });

  it("sets what fills took against what came, went back and was counted", () => {
    const { accounts, doubts } = book(
      ["2026-10-01", "Oxygen", "in stock", 1, "bottle", null],
      ["2026-10-04", "Oxygen", "delivered", 2, "bottle", null],
      ["2026-10-04", "O2", "sent back", 10, "cu ft", null],
      ["2026-10-31", "Oxygen", "in stock", 700, "cu ft", null],
    );
    expect(doubts).toEqual([]);
    const [oxygen] = accounts;
    const cuFt = (litres: number | undefined) => litres! / LITRES_PER_CUBIC_FOOT;
    // Four of the fills are of October.
    const used = log.costed.slice(0, 4).reduce((sum, { expense }) => sum + expense.quantities.oxygenL, 0);
    expect(oxygen).toMatchObject({ gas: "oxygen", from: "2026-10-01", to: "2026-10-31", fillsLeftOut: 1 });
    expect(cuFt(oxygen!.openingL)).toBeCloseTo(282, 9);
    expect(cuFt(oxygen!.deliveredL)).toBeCloseTo(564, 9);
    expect(oxygen!.usedL).toBeCloseTo(used, 9);
    expect(cuFt(oxygen!.missingL)).toBeCloseTo(282 + 564 - 10 - cuFt(used) - 700, 9);
  });

  it("without a second count says what should be there, and nothing of what is missing", () => {
    const [helium] = book(["2026-10-01", "Helium", "delivered", 1, "bottle", null]).accounts;
    expect(helium!.missingL).toBeUndefined();
    expect(helium!.to).toBe("2026-11-06");
    expect(helium!.shouldBeL).toBeCloseTo(291 * LITRES_PER_CUBIC_FOOT - helium!.usedL, 9);
    expect(helium!.usedL).toBeCloseTo(log.costed[4]!.expense.quantities.heliumL, 9);
  });

  it("knows a bottle that is not full by its pressure", () => {
    const [oxygen] = book(["2026-10-01", "Oxygen", "in stock", 2, "bottle", 1200]).accounts;
    // Half the pressure is less than half the gas: oxygen packs closer than Boyle has it.
    expect(oxygen!.openingL / LITRES_PER_CUBIC_FOOT / 564).toBeGreaterThan(0.46);
    expect(oxygen!.openingL / LITRES_PER_CUBIC_FOOT / 564).toBeLessThan(0.5);
  });

  it.each<[string, readonly CellValue[]]>([
    ["Only oxygen and helium", ["2026-10-01", "Argon", "delivered", 1, "bottle"]],
    ["delivered, in stock or sent back", ["2026-10-01", "Oxygen", "lost", 1, "bottle"]],
    ["Nothing stands here", [null, "Oxygen", "delivered", 1, "bottle"]],
    ["Write bottle, cu ft, L or kg", ["2026-10-01", "Oxygen", "delivered", 1, "crate"]],
    ["not used", ["sometime", "Oxygen", "delivered", 1, "bottle"]],
    ["not used", ["2026-10-01", "Oxygen", "delivered", "a few", "bottle"]],
  ])("leaves out no row in silence: %s", (words, row) => {
    const { accounts, doubts } = book(row);
    expect(accounts).toEqual([]);
    expect(doubts).toHaveLength(1);
    expect(doubts[0]!.sentence).toContain(words);
  });

  it("asks the price list what a bottle holds", () => {
    const stock = readStockSheet(
      sheet("Gas in and out", [HEADINGS, ["2026-10-01", "Oxygen", "delivered", 1, "bottle"]]),
      "us",
      "month first",
    );
    const bare = readPriceSheet(
      priceSheet([
        ["What", "We pay", "Per"],
        ["Oxygen", 1, "cu ft"],
      ]),
      "us",
    );
    expect(gasBook(stock, bare, log, "us").doubts[0]!.sentence).toContain(
      "does not say how much oxygen a bottle holds",
    );
  });

  it("survives any sheet", () => {
    fc.assert(
      fc.property(anySheet, (any) => {
        const stock = readStockSheet(
          { ...any, rows: [{ values: HEADINGS }, ...any.rows] },
          "us",
          "month first",
        );
        for (const { accounts } of [gasBook(stock, readPriceSheet(priceSheet(), "us"), log, "us")])
          for (const { deliveredL } of accounts) expect(deliveredL).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
