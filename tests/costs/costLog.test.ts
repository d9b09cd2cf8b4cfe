import { describe, expect, it } from "vitest";
import { listCharge } from "../../src/costs/charge";
import { costLog, lacksOf } from "../../src/costs/costLog";
import { COST_PARTS } from "../../src/costs/costOfFill";
import type { MeteredFill } from "../../src/costs/metered";
import { meterLog } from "../../src/costs/meterLog";
import type { Charges } from "../../src/costs/prices/priceList";
import { GROUPINGS, groupedBy, sumOf, type Grouping } from "../../src/costs/sums";
import { whatIf } from "../../src/costs/whatIf";
import { contentAt } from "../../src/gas/content";
import { realGas } from "../../src/gas/equationOfState";
import { freeVolumeL } from "../../src/gas/freeGas";
import { mixture } from "../../src/gas/mixture";
import { LITRES_PER_CUBIC_FOOT } from "../../src/gas/units";
import { readLog } from "../../src/log/readLog";
import type { CellValue } from "../../src/sheet/sheet";
import { number } from "../functions/calls";
import { sheet } from "../pane/fakeWorkbook";
import { FILLS, logOf, PRICE_ROWS, prices } from "./lists";

const costed = (rows = FILLS, list = prices()) => costLog(meterLog(logOf(rows), "us"), list);
const without = (...items: readonly string[]) =>
  prices(PRICE_ROWS.filter(([item]) => !items.includes(String(item))));

describe("the cost of a fill", () => {
  it("is the sum of its parts, and each part is a quantity times its price", () => {
    const list = prices();
    for (const { expense, metered } of costed().costed) {
      const { quantities, parts, total } = expense;
      expect(total).toBeCloseTo(
        COST_PARTS.reduce((sum, part) => sum + parts[part], 0),
        12,
      );
      expect(parts.oxygen).toBeCloseTo(quantities.oxygenL * list.oxygen!.perL, 12);
      expect(parts.helium).toBeCloseTo(quantities.heliumL * list.helium!.perL, 12);
      expect(parts.compressor).toBeCloseTo(quantities.compressorHours * 5, 12);
      expect(parts.labour).toBeCloseTo(2, 12);
      expect(quantities.compressorHours * 600).toBeCloseTo(
        metered.gas.compressedL / LITRES_PER_CUBIC_FOOT,
        9,
      );
    }
  });

  it("is what FILLCOST says with the same prices", () => {
    const list = prices();
    const perCuFt = (perL: number) => perL * LITRES_PER_CUBIC_FOOT;
    const table = [
      ["oxygen", perCuFt(list.oxygen!.perL)],
      ["top", perCuFt(5 / list.compressor!.litresPerHour)],
      ["per fill", 2],
    ];
    const [, , , blend] = costed().costed;
    expect(blend!.expense.total).toBeCloseTo(
      number("FILLCOST", "AL80", 500, "EAN32", 3000, "EAN32", table as never, "psi"),
      9,
    );
  });

  it("of bank gas is the bank's price where it has one, else what making it costs", () => {
    const made = costed().costed[1]!.expense;
    expect(made.parts.oxygen).toBeGreaterThan(0);
    expect(made.quantities.readyMadeL).toBe(0);
    const bought = costed(FILLS, prices([...PRICE_ROWS, ["EAN32 bank", 0.05, "cu ft"]])).costed[1]!.expense;
    expect(bought.parts.oxygen).toBe(0);
    expect(bought.parts.compressor).toBe(0);
    expect(bought.parts["ready-made gas"]).toBeCloseTo(
      (bought.quantities.readyMadeL / LITRES_PER_CUBIC_FOOT) * 0.05,
      9,
    );
  });

  it("is not known where the list lacks what the fill took: counted, with the reason", () => {
    const { costed: fills, notCosted } = costed(FILLS, without("Helium"));
    expect(fills).toHaveLength(4);
    expect(lacksOf(notCosted).map(({ why, fills: lacking }) => [why, lacking.length])).toEqual([
      ["no price for helium", 1],
    ]);
    expect(lacksOf(costed(FILLS, without("Compressor delivers")).notCosted)[0]!.why).toMatch(
      /no price for air/,
    );
  });

  it("says which kinds of cost the list says nothing of", () => {
    expect(costed().leftOut).toEqual(["booster"]);
    expect(costed(FILLS, without("Labour", "Service", "Filter")).leftOut).toEqual([
      "labour",
      "booster",
      "filter",
      "compressor service",
    ]);
  });
});

describe("what was charged", () => {
  const headings = ["Date", "Serial", "Start psi", "Start mix", "Ordered mix", "Method", "End psi", "Price"];
  const fill = (price: CellValue) => ["2026-10-02", "GP1001", 500, "air", "air", "air", 3000, price];

  it("is the log's price where it has a column; nothing there, or 0, is unbilled", () => {
    const log = meterLog(logOf([fill(9), fill(null), fill("free"), fill("9.50 or so")], headings), "us");
    expect(costLog(log, prices()).costed.map(({ charge }) => charge)).toEqual([
      { kind: "charged", amount: 9, by: "log" },
      { kind: "unbilled" },
      { kind: "unbilled" },
      { kind: "not known", why: "price in the log is unreadable" },
    ]);
    const sum = sumOf(costLog(log, prices()).costed);
    expect(sum).toMatchObject({ fills: 4, settled: 3, unbilled: 2, chargeNotKnown: 1, charged: 9 });
    expect(sum.margin).toBeCloseTo(9 - (sum.cost * 3) / 4, 9);
    expect(sum.unbilledCost).toBeCloseTo(sum.cost / 2, 9);
  });

  it("is the list's charge else: by kind of mix, and gas by volume; nobody is charged for the shop's own", () => {
    const [air, , , blend, trimix] = costed().costed;
    expect(air!.charge).toEqual({ kind: "charged", amount: 8, by: "price list" });
    const oxygenCuFt = blend!.metered.gas.oxygenL / LITRES_PER_CUBIC_FOOT;
    expect(blend!.charge).toMatchObject({ kind: "charged" });
    expect((blend!.charge as { amount: number }).amount).toBeCloseTo(14 + 0.35 * oxygenCuFt, 9);
    expect((trimix!.charge as { amount: number }).amount).toBeGreaterThan(100);
    const own = FILLS.map((row) => row.map((cell, at) => (at === 2 ? "Shop" : cell)));
    expect(costed(own).costed.every(({ charge }) => charge.kind === "unbilled")).toBe(true);
  });
});

describe("published bills", () => {
  /** A fill of which only what a bill looks at matters. */
  const bill = (fill: Partial<MeteredFill>, charges: Partial<Charges>) =>
    listCharge(fill as MeteredFill, { byMix: [], byKind: {}, byGas: {}, ...charges });

  it("by the final percentage: TX 30/30, twin 12 L at 232 bar, oxygen 0.02 and helium 0.06 a litre (WE44)", () => {
    // Technical diving thread of a public forum: 33.40 + 100.22, by Boyle and gauge readings. By real gas the cylinders
    // hold less than 24 L x 232, so our bill is as much smaller as the gas is.
    const mix = mixture(0.3, 0.3);
    const state = {
      waterVolumeL: 24,
      endBar: 232,
      endMix: mix,
      temperatureK: 293.15,
    } as MeteredFill["state"];
    const gas = { oxygenL: 1000, heliumL: 1600, airL: 2500, compressedL: 2500, drained: false };
    const charged = bill(
      { mix, kind: "trimix", state, gas },
      { byGas: { oxygen: { perL: 0.02, inTheMix: true }, helium: { perL: 0.06, inTheMix: true } } },
    );
    const held = freeVolumeL(realGas, mix, contentAt(realGas, mix, 232, 293.15).molPerLitre * 24, 293.15);
    expect(charged! * ((24 * 232) / held)).toBeCloseTo(133.632, 6);
    expect(0.02 * 0.3 * 24 * 232).toBeCloseTo(33.408, 9);
    expect(held).toBeLessThan(24 * 232);
  });

  it("by the gas added, with a handling fee: helium 91.20, oxygen 9.12, deco oxygen 36, handling 5 (WE46)", () => {
    // Price article of a club: its lines reproduce; its total of 136.32 leaves out the fee that it says it adds.
    const charges: Partial<Charges> = {
      everyFill: 5,
      byGas: { oxygen: { perL: 0.02, inTheMix: false }, helium: { perL: 0.05, inTheMix: false } },
    };
    const state = {
      waterVolumeL: 24,
      endBar: 221,
      endMix: mixture(0.21, 0.35),
      temperatureK: 293.15,
    } as MeteredFill["state"];
    const blend = { oxygenL: 19 * 24, heliumL: 76 * 24, airL: 3000, compressedL: 3000, drained: false };
    const deco = { oxygenL: 150 * 12, heliumL: 0, airL: 0, compressedL: 0, drained: false };
    const twin = bill({ mix: mixture(0.21, 0.35), kind: "trimix", state, gas: blend }, charges)!;
    const stage = bill({ mix: mixture(1), kind: "nitrox", state, gas: deco }, charges)!;
    expect(twin - 5).toBeCloseTo(91.2 + 9.12, 9);
    expect(stage - 5).toBeCloseTo(36, 9);
    expect(twin + stage - 5).toBeCloseTo(141.32, 9);
  });

  it("of air at 1 to 2 cents a cubic foot leave a shop 3.40 to 4.20 of a five for 80 cu ft (WE48)", () => {
    // “Profitability of fill stations?” of a public forum; it says 2 to 4.
    const margin = (perCuFt: number) => {
      const list = prices([
        ["What", "We pay", "Per"],
        ["Air", perCuFt, "cu ft"],
      ]);
      return 5 - 80 * LITRES_PER_CUBIC_FOOT * list.air!.perL;
    };
    expect(margin(0.01)).toBeCloseTo(4.2, 9);
    expect(margin(0.02)).toBeCloseTo(3.4, 9);
  });

  it("of 35 for 25 % helium in 200 cu ft of doubles are 0.70 a cubic foot (WE49)", () => {
    // Technical training thread of a public forum.
    const gas = { oxygenL: 0, heliumL: 50 * LITRES_PER_CUBIC_FOOT, airL: 0, compressedL: 0, drained: false };
    const state = {
      waterVolumeL: 24,
      endBar: 200,
      endMix: mixture(0.25, 0.25),
      temperatureK: 293.15,
    } as MeteredFill["state"];
    const byGas = { helium: { perL: 0.7 / LITRES_PER_CUBIC_FOOT, inTheMix: false } };
    expect(bill({ mix: mixture(0.25, 0.25), kind: "trimix", state, gas }, { byGas })).toBeCloseTo(35, 9);
  });
});

describe("sums", () => {
  it("come to the same whichever way the fills are looked at", () => {
    const { costed: fills } = costed();
    const whole = sumOf(fills);
    for (const grouping of Object.keys(GROUPINGS) as Grouping[]) {
      const groups = groupedBy(grouping, fills);
      for (const of of [
        "fills",
        "cost",
        "charged",
        "margin",
        "oxygenL",
        "heliumL",
        "compressorHours",
      ] as const)
        expect(groups.reduce((sum, group) => sum + group[of], 0)).toBeCloseTo(whole[of], 8);
    }
    expect(groupedBy("month", fills).map(({ name }) => name)).toEqual(["2026-10", "2026-11"]);
  });
});

describe("what if", () => {
  const log = meterLog(logOf(FILLS), "us");

  it("helium cost a fifth more: only the helium's part grows", () => {
    const { before, after, cannot } = whatIf(log, prices(), { price: { of: "helium", times: 1.2 } });
    expect(after.cost - before.cost).toBeCloseTo(before.parts.helium * 0.2, 9);
    expect(after.parts.oxygen).toBe(before.parts.oxygen);
    expect(cannot).toEqual([]);
  });

  it("nothing were different: nothing is", () => {
    const { before, after } = whatIf(log, prices(), {});
    expect(after).toEqual(before);
  });

  it("all nitrox were made in a stream: the same oxygen, more hours; air and trimix as they are", () => {
    const { before, after } = whatIf(log, prices(), { method: "continuous" });
    expect(after.oxygenL).toBeCloseTo(before.oxygenL, 0);
    expect(after.heliumL).toBe(before.heliumL);
    expect(after.compressorHours).toBeGreaterThan(before.compressorHours);
  });

  it("what no compressor may draw in is said, and is in neither sum", () => {
    const rich = [
      ...FILLS,
      ["2026-10-05", "GP1001", "C-020", 500, "EAN50", "EAN50", "partial pressure", 3000, 50],
    ];
    const { before, after, cannot } = whatIf(meterLog(logOf(rich), "us"), prices(), { method: "premix" });
    expect(cannot.map(({ why, fills }) => [why, fills.length])).toEqual([
      ["needs more than 40 % oxygen through the compressor", 1],
    ]);
    expect([before.fills, after.fills]).toEqual([5, 5]);
  });
});

describe("in bar and litres", () => {
  it("a club's fill costs its gas, its compressor's time and its filter", () => {
    const list = prices(
      [
        ["What", "We pay", "Per", "Water volume", "Full", "Left over"],
        ["Oxygen", 60, "bottle", 50, 200, 10],
        ["Compressor", 15, "m³/h"],
        ["Electricity", 0.3, "kWh"],
        ["Compressor power", 4, "kW"],
      ],
      "metric",
    );
    const log = readLog(
      [
        sheet("May", [
          ["Date", "Serial", "Size", "Start bar", "Start mix", "Ordered mix", "Method", "End bar"],
          ["2026-05-03", "SB-12", "12L232", 50, "air", "EAN32", "partial pressure", 220],
        ]),
      ],
      { units: "metric", dateOrder: "day first" },
    );
    const { costed: fills, notCosted } = costLog(meterLog(log, "metric"), list);
    expect(notCosted).toEqual([]);
    const { quantities, parts } = fills[0]!.expense;
    const used = (gas: string) => number("GASUSED", gas, "12L232", 50, "air", 220, "EAN32", "bar");
    expect(quantities.oxygenL).toBeCloseTo(used("oxygen"), 9);
    expect(quantities.compressorHours).toBeCloseTo(used("top") / 15_000, 9);
    expect(parts.compressor).toBeCloseTo((used("top") / 15_000) * 1.2, 9);
    // About 0.7 cents a litre: 60 for the 9,500 L or so that come out of the bottle.
    expect(parts.oxygen / used("oxygen")).toBeGreaterThan(0.005);
    expect(parts.oxygen / used("oxygen")).toBeLessThan(0.008);
  });
});
