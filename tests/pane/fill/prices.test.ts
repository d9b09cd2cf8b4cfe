import { describe, expect, it } from "vitest";
import { costOfFill } from "../../../src/costs/costOfFill";
import { gasIn } from "../../../src/costs/gasIn";
import type { MeteredFill } from "../../../src/costs/metered";
import { kindOf } from "../../../src/costs/meterLog";
import { readPriceList } from "../../../src/costs/prices/readPriceList";
import { AIR } from "../../../src/gas/mixture";
import type { FillMethod } from "../../../src/log/log";
import { newForm, writeField, type FieldName, type FillForm } from "../../../src/counter/form";
import { fillModel } from "../../../src/counter/plan/model";
import { pricesFrom, type ListedPrices } from "../../../src/counter/plan/prices";
import { sheet } from "../fakeWorkbook";

const HEADINGS = ["What", "We pay", "Per", "Holds cu ft"];
const OXYGEN = ["Oxygen", 48, "bottle", 280];
const HELIUM = ["Helium", 310, "bottle", 220];
const COMPRESSOR = [
  ["Electricity", 3.2, "hour"],
  ["Service", 2, "hour"],
  ["Compressor delivers", 9, "cu ft/min"],
];
const LABOUR = [
  ["Labour", 24, "hour"],
  ["Time per fill", 6, "min/fill"],
  ["Time for trimix", 20, "min/fill"],
  ["Time for partial pressure", 12, "min/fill"],
];
const BOOSTER = ["Booster", 0.02, "cu ft"];
const AIR_PRICE = ["Air", 0.08, "cu ft"];

const listed = (...rows: readonly (readonly (string | number)[])[]): ListedPrices => ({
  sheet: "Prices",
  list: readPriceList(sheet("Prices", [HEADINGS, ...rows]), "us"),
});

function formOf(fields: Partial<Record<FieldName, string>>): FillForm {
  return Object.entries({
    size: "AL80",
    startPressure: "500",
    startMix: "air",
    endPressure: "3000",
    ...fields,
  }).reduce((form, [name, text]) => writeField(form, name as FieldName, text), newForm("us"));
}

const model = (fields: Partial<Record<FieldName, string>>, prices?: ListedPrices) =>
  fillModel(formOf(fields), undefined, "US", undefined, prices);

/** What the costs of the log make of the same fill. */
function costInLog(
  method: FillMethod,
  made: ReturnType<typeof model>,
  { list }: ListedPrices,
  bankMix = AIR,
): number {
  const { wanted, volumeL, station } = made;
  const state = {
    ...{ waterVolumeL: volumeL!, startBar: wanted!.startBar, startMix: wanted!.startMix, bankMix },
    ...{ endBar: wanted!.endBar, endMix: wanted!.endMix, temperatureK: station.temperatureK },
  };
  const metered = { method, mix: state.endMix, kind: kindOf(state.endMix), state, gas: gasIn(state, method) };
  const cost = costOfFill(metered as unknown as MeteredFill, list);
  if (!("total" in cost)) throw new Error(cost.why);
  return cost.total;
}

describe("the price list of the workbook", () => {
  const full = listed(OXYGEN, HELIUM, ...COMPRESSOR, ...LABOUR, BOOSTER);
  const way = (made: ReturnType<typeof model>, key: string) =>
    made.ways.find((each) => each.key.startsWith(key))!;

  it.each(["EAN32", "TX 18/45"])("costs %s by partial pressure as the costs of the log do", (endMix) => {
    const made = model({ endMix }, full);
    expect(way(made, "partial pressure").cost!.total).toBeCloseTo(
      costInLog("partial pressure", made, full),
      6,
    );
  });
  it("costs air as the time of the compressor, or by its own price where it has one", () => {
    for (const prices of [full, listed(AIR_PRICE, ...LABOUR)]) {
      const made = model({ endMix: "air" }, prices);
      expect(way(made, "top off").cost!.total).toBeCloseTo(costInLog("air", made, prices), 6);
    }
  });
  it("costs a stream by the oxygen let in and the air, all of it through the compressor", () => {
    for (const prices of [full, listed(OXYGEN, AIR_PRICE)]) {
      const made = model({ endMix: "EAN32", continuousMost: "40" }, prices);
      // To the cent: the volume of a mix is not quite that of its parts.
      expect(way(made, "continuous").cost!.total).toBeCloseTo(costInLog("continuous", made, prices), 2);
    }
  });
  it("costs a bank by its own price, else by what it is made of", () => {
    for (const prices of [full, listed(OXYGEN, AIR_PRICE, ["EAN36 bank", 0.3, "cu ft"])]) {
      const made = model({ startMix: "EAN36", endMix: "EAN36", bankMix: "EAN36" }, prices);
      const bank = made.ways.find(({ key }) => key.startsWith("top off, bank"))!;
      expect(bank.cost!.total).toBeCloseTo(costInLog("premix", made, prices, made.wanted!.endMix), 4);
    }
  });
  it("gives way to what is typed, and it is said which is which", () => {
    const typed = model({ endMix: "EAN32", priceOxygen: "0", priceTop: "0", pricePerFill: "5" }, full);
    const boosterL = way(typed, "partial pressure").used.find(({ gas }) => gas === "oxygen")!.volumeL;
    expect(boosterL).toBeGreaterThan(0);
    expect(way(typed, "partial pressure").cost!.total).toBeCloseTo(5, 9);
    expect(pricesFrom(typed.station.prices!)).toBe(
      "By the prices of the sheet “Prices”; oxygen, top gas, per fill as typed under the station.",
    );
    expect(pricesFrom(model({}, full).station.prices!)).toBe("By the prices of the sheet “Prices”.");
    expect(pricesFrom(model({ priceTop: "1" }).station.prices!)).toBe(
      "By the prices typed under the station.",
    );
  });
  it("that lacks a gas gives no cost, and says which", () => {
    const made = model({ endMix: "EAN32" }, listed(AIR_PRICE));
    const { cost, costProblem } = way(made, "partial pressure");
    expect(cost).toBeUndefined();
    expect(costProblem).toMatch(/oxygen/);
  });
});
