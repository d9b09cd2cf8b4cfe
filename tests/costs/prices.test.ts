import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { filterHours, filterLifeRatio } from "../../src/costs/prices/filterHeat";
import { isPriceSheet } from "../../src/costs/prices/priceSheet";
import { readPriceList } from "../../src/costs/prices/readPriceList";
import { unitOf } from "../../src/costs/prices/unit";
import { realGas } from "../../src/gas/equationOfState";
import { HELIUM, OXYGEN } from "../../src/gas/mixture";
import { absoluteBar, ATMOSPHERE_BAR, kelvin, LITRES_PER_CUBIC_FOOT } from "../../src/gas/units";
import { sheet } from "../pane/fakeWorkbook";
import { anySheet } from "../log/anySheet";
import { PRICE_ROWS, prices, priceSheet } from "./lists";

const HEADINGS = ["What", "We pay", "Per", "We charge", "Per", "Water volume", "Full", "Left over", "Losses"];

describe("a price list", () => {
  it("is found by its headings, among titles and in any order of columns", () => {
    expect(isPriceSheet(priceSheet())).toBe(true);
    expect(isPriceSheet(sheet("October", [["Date", "Serial", "Start psi", "End psi", "Mix"]]))).toBe(false);
    const other = prices([["Unit", "Price", "Item"], []]);
    expect(other.doubts).toEqual([]);
    const turned = prices([
      ["Item", "Price", "Unit"],
      ["O2", "$0.25", "per cu ft"],
    ]);
    expect(turned.oxygen!.perL * LITRES_PER_CUBIC_FOOT).toBeCloseTo(0.25, 12);
  });

  it("reckons by what really comes out of a bottle: residue and losses make gas dearer", () => {
    const { oxygen } = prices();
    // 282 cu ft full at 2400 psi, sent back at 200 psi: as density says, at 70 °F.
    const density = (psi: number) => realGas.density(OXYGEN, absoluteBar(psi, "us"), kelvin(70, "us"));
    const usableCuFt = 282 * (1 - density(200) / density(2400));
    expect(oxygen!.usableL / LITRES_PER_CUBIC_FOOT).toBeCloseTo(usableCuFt, 9);
    expect(oxygen!.perL * LITRES_PER_CUBIC_FOOT).toBeCloseTo(42 / (usableCuFt * 0.96), 9);
  });

  it("knows a bottle by its water volume and full pressure as well", () => {
    const { helium } = prices([HEADINGS, ["Helium", 380, "bottle", null, null, 50, 200, 10, null]], "metric");
    const density = (bar: number) => realGas.density(HELIUM, bar, 293.15);
    const usable =
      (50 * (density(absoluteBar(200, "metric")) - density(absoluteBar(10, "metric")))) /
      density(ATMOSPHERE_BAR);
    expect(helium!.usableL).toBeCloseTo(usable, 6);
    // 50 L at 200 bar: nearly 9 m³ of helium, by real gas; Boyle would have 9.5.
    expect(usable).toBeGreaterThan(8_500);
    expect(usable).toBeLessThan(9_000);
  });

  it("knows gas by weight: a kilogram of oxygen is 0.752 m³ at 1 atm and 20 °C", () => {
    // Density of oxygen 1.331 kg/m³ at 1 atm and 20 °C (common handbook figure).
    const { oxygen } = prices([HEADINGS, ["Oxygen", 2, "kg", null, null, null, null, null, null]], "metric");
    expect(oxygen!.usableL).toBeCloseTo(1000 / 1.331, 0);
  });

  it("adds up an hour of the compressor: energy, filter, service", () => {
    const { compressor } = prices();
    expect(compressor!.litresPerHour).toBeCloseTo(600 * LITRES_PER_CUBIC_FOOT, 9);
    expect(compressor!.energy).toBeCloseTo(0.2 * 7.5, 12);
    expect(compressor!.filter).toMatchObject({ perHour: 2, lifeHours: 40, weighted: false, hoursCounted: 1 });
    expect(compressor!.perHour).toBeCloseTo(1.5 + 2 + 1.5, 12);
  });

  it("knows the life of a filter by the air it takes: 12,000 cu ft at 10 cu ft/min are 20 hours", () => {
    // Method of owners' manuals of breathing-air compressors; the numbers are invented (worked-examples.json, WE50).
    const { compressor } = prices([
      ["What", "We pay", "Per"],
      ["Compressor delivers", 10, "cfm"],
      ["Filter", 100, "12,000 cu ft"],
    ]);
    expect(compressor!.filter!.lifeHours).toBeCloseTo(20, 9);
    expect(compressor!.perHour).toBeCloseTo(5, 9);
  });

  it.each<[string, readonly (string | number | null)[]]>([
    ["nothing that fills are costed by", ["Unicorn", 3, "bottle"]],
    ["what this amount is for", ["Oxygen", 3, null]],
    ["no unit known here", ["Oxygen", 3, "shovel"]],
    ["below 0", ["Oxygen", -3, "cu ft"]],
    ["write what a full one holds", ["Oxygen", 30, "bottle"]],
    ["not a price", ["Oxygen", "dear", "cu ft"]],
    ["a dot may group thousands", ["Oxygen", "1.250", "kg"]],
    ["A price for nothing", [null, 3, "cu ft"]],
    ["how much it delivers", ["Service", 2, "hour"]],
    ["Time per fill", ["Labour", 20, "hour"]],
    ["Compressor power", ["Electricity", 0.2, "kWh"]],
    ["belongs under “We charge”", ["Nitrox fill", 14, "fill"]],
    ["add a row “Labour”", ["Time per fill", 5, "min/fill"]],
    ["add a row “Filter”", ["Compressor room", 84, "°F"]],
    ["add a row “Electricity”", ["Compressor power", 7.5, "kW"]],
    ["how many hours a cartridge lasts", ["Filter", 90, "fill"]],
  ])("says what it does not use, with its cell: %s", (words, row) => {
    const list = prices([["What", "We pay", "Per"], row]);
    expect(list.doubts.map(({ sentence }) => sentence).join(" ")).toContain(words);
    expect(list.doubts[0]!.cell).toMatchObject({ sheet: "Prices", row: 1 });
    expect([list.oxygen, list.helium, list.air, list.compressor, list.labour]).toEqual(
      Array(5).fill(undefined),
    );
  });

  it("uses the first of two rows for one thing, and says so", () => {
    const list = prices([
      ["What", "We pay", "Per"],
      ["Oxygen", 1, "cu ft"],
      ["O2", 2, "cu ft"],
    ]);
    expect(list.oxygen!.perL * LITRES_PER_CUBIC_FOOT).toBeCloseTo(1, 12);
    expect(list.doubts[0]!.sentence).toContain("twice");
  });

  it("asks which it is where a share is written below 1 and without its sign", () => {
    const list = prices([HEADINGS, ["Oxygen", 1, "cu ft", null, null, null, null, null, 0.5]]);
    expect(list.doubts[0]!.sentence).toContain("0.5 % or 50 %");
  });

  it("survives any sheet", () => {
    const cells = fc.array(fc.array(anyCell, { maxLength: 10 }), { maxLength: 12 });
    fc.assert(
      fc.property(fc.oneof(anySheet, cells.map(priceSheet)), (any) => {
        const list = readPriceList({ ...any, rows: [{ values: HEADINGS }, ...any.rows] }, "us");
        for (const price of [list.oxygen, list.helium, list.air, ...list.banked])
          if (price) expect(price.perL).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

const anyCell = fc.oneof(
  fc.constantFrom(...PRICE_ROWS.flat()),
  fc.constantFrom(
    "EAN32 bank",
    "per",
    "40 hours",
    "L in the mix",
    "5 %",
    { error: "#N/A" },
    true,
    -1,
    0,
    1e300,
  ),
  fc.string(),
);

describe("a unit of a price list", () => {
  it.each([
    ["bottle", "bottle", 1],
    ["per cu ft", "volume", LITRES_PER_CUBIC_FOOT],
    ["1,000 L", "volume", 1000],
    ["m³", "volume", 1000],
    ["40 hours", "time", 40],
    ["min/fill", "minutes", 1],
    ["cu ft/min", "flow", 60 * LITRES_PER_CUBIC_FOOT],
    ["m3/h", "flow", 1000],
    ["kWh", "energy", 1],
    ["0.5 h", "time", 0.5],
  ])("%s", (text, kind, size) => {
    expect(unitOf(text)).toMatchObject({ kind, size });
  });

  it("is none for anything else", () => {
    for (const text of ["", "shovel", "0 hours", "per", "40"]) expect(unitOf(text)).toBeUndefined();
  });
});

describe("filter hours", () => {
  it("follow a purifier maker's table of life over inlet temperature", () => {
    // Compressed-air purifier manual, table 3: saturated air at 100 psig (worked-examples.json, WE51).
    const table = [
      [60, 10_676],
      [70, 7_541],
      [80, 5_400],
      [90, 3_919],
      [100, 2_883],
    ] as const;
    const [first] = table;
    for (const [fahrenheit, life] of table) {
      const ratio = filterLifeRatio(kelvin(fahrenheit, "us"), kelvin(first[0], "us"));
      expect(Math.abs(ratio / (life / first[1]) - 1)).toBeLessThan(0.01);
    }
  });

  it("count more on a hot day: air is taken 10 °F above the room", () => {
    const rated = kelvin(80, "us");
    expect(filterHours(kelvin(70, "us"), rated)).toBeCloseTo(1, 9);
    expect(filterHours(kelvin(90, "us"), rated)).toBeGreaterThan(1.8);
    expect(filterHours(kelvin(50, "us"), rated)).toBeLessThan(0.6);
  });

  it("stand in the price of an hour", () => {
    const rows = [...PRICE_ROWS, ["Filter rated at", 80, "°F"], ["Compressor room", 90, "°F"]];
    expect(prices(rows).compressor!.filter!.perHour).toBeCloseTo(
      2 * filterHours(kelvin(90, "us"), kelvin(80, "us")),
      9,
    );
  });
});
