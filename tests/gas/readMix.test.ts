import { describe, expect, it } from "vitest";
import { AIR, HELIUM, OXYGEN } from "../../src/gas/mixture";
import { readMix } from "../../src/gas/readMix";

const percents = (raw: string | number) => {
  const { oxygen, helium } = readMix(raw);
  return [Number((oxygen * 100).toFixed(6)), Number((helium * 100).toFixed(6))];
};

describe("a number", () => {
  it.each([
    [0.05, 5],
    [0.32, 32],
    [1, 100],
    [5, 5],
    [32, 32],
    [31.8, 31.8],
    [100, 100],
  ])("%s is %s per cent oxygen", (raw, oxygen) => expect(percents(raw)).toEqual([oxygen, 0]));

  it.each([3, 1.0001, 4.999, 0.049, 2])("%s is refused with how to write it", (raw) => {
    expect(() => readMix(raw)).toThrow(`Oxygen ${raw}: write 0.32, 32 or EAN32`);
  });

  it("0 is a blank cell, not a gas", () => expect(() => readMix(0)).toThrow(/blank/));
  it.each([-32, Number.NaN])("%s is refused", (raw) =>
    expect(() => readMix(raw)).toThrow(/write air, EAN32/),
  );
});

describe("a trimix that the spreadsheet turned into a date", () => {
  it.each([
    [18537, "TX 10/50"],
    [24077, "TX 12/65"],
    [46315, "TX 10/20 or TX 20/10"],
  ])("%s offers %s", (serial, typed) => {
    expect(() => readMix(serial)).toThrow(new RegExp(`trimix.*turned into a date.*Type ${typed}`));
  });

  it("says so of any number above 100", () => {
    expect(() => readMix(101)).toThrow(/turned into a date.*TX 10\/50/);
    expect(() => readMix(1e9)).toThrow(/turned into a date.*TX 10\/50/);
    expect(() => readMix("45000.5")).toThrow(/turned into a date/);
  });
});

describe("text", () => {
  it.each([
    ["air", AIR],
    [" AIR ", AIR],
    ["O2", OXYGEN],
    ["o 2", OXYGEN],
    ["O₂", OXYGEN],
    ["Oxygen", OXYGEN],
    ["He", HELIUM],
    ["HELIUM", HELIUM],
  ])("%s", (raw, mix) => expect(readMix(raw)).toEqual(mix));

  it.each([
    ["EAN32", 32, 0],
    ["ean-32", 32, 0],
    ["EANx 36", 36, 0],
    ["EAN x36", 36, 0],
    ["Nx32", 32, 0],
    ["NX 30", 30, 0],
    ["Nitrox 32", 32, 0],
    ["nitrox-32%", 32, 0],
    ["EAN21", 21, 0],
    ["EAN\u00a031,8", 31.8, 0],
    ["32%", 32, 0],
    ["31,8 %", 31.8, 0],
    ["100 %", 100, 0],
    ["32", 32, 0],
    ["0.32", 32, 0],
    ["0,32", 32, 0],
    [",32", 32, 0],
    ["1", 100, 0],
    ["21/35", 21, 35],
    ["18 / 45", 18, 45],
    ["18,5/45", 18.5, 45],
    ["TX 21/35", 21, 35],
    ["tx21/35", 21, 35],
    ["Trimix 18/45", 18, 45],
    ["Tri-mix 18-45", 18, 45],
    ["Trimix 10 50", 10, 50],
    ["TX-10–50", 10, 50],
    ["TX 4/80", 4, 80],
    ["18/45/37", 18, 45],
    ["10/70/20", 10, 70],
    ["TX 18.3/45.3/36.5", 18.3, 45.3],
    ["21/0", 21, 0],
    ["heliox 21", 21, 79],
    ["Heliox-10 %", 10, 90],
    ["HELIOX 2", 2, 98],
  ])("%s is %s per cent oxygen, %s helium", (raw, oxygen, helium) =>
    expect(percents(raw)).toEqual([oxygen, helium]),
  );
});

describe("what is refused, with how to write it", () => {
  it.each([
    ["", /blank/],
    ["   ", /blank/],
    ["empty", /how much is in the cylinder, not which gas/],
    ["argon", /not a breathing gas/],
    ["Normoxic", /not a mix: write air, EAN32/],
    ["EAN", /how much oxygen: write EAN32/],
    ["nitrox", /how much oxygen/],
    ["trimix", /oxygen and helium: write TX 18\/45/],
    ["TX 18", /oxygen and helium/],
    ["heliox", /write heliox 21/],
    ["heliox 21/79", /which number comes first/],
    ["heliox 79 21", /which number comes first/],
    ["HeO2", /which number comes first/],
    ["HeO2 21", /which number comes first/],
    ["10 50", /write TX 10\/50/],
    ["10-50", /write TX 10\/50/],
    ["18/45/36", /adds up to 99 %/],
    ["01/10/1950", /TX 18\/45/],
    ["80/30", /more than 100 %/],
    ["0.21/0.35", /in per cent/],
    ["0/50", /in per cent/],
    ["EAN21/35", /holds no helium.*TX 21\/35/],
    ["EAN 0.32", /5 to 100 per cent/],
    ["EAN 105", /5 to 100 per cent/],
    ["3 %", /5 to 100 per cent/],
    ["02", /Oxygen 2: write 0.32, 32 or EAN32/],
    ["4", /Oxygen 4/],
    ["-32", /not a mix/],
    ["-10 50", /not a mix/],
    ["32 bar", /not a mix/],
    ["1e1", /not a mix/],
    ["10/50/20/20", /a trimix is oxygen\/helium/],
    ["/", /not a mix/],
    ["18/", /not a mix/],
    ["heliox 0,5", /heliox/],
    ["%", /not a mix/],
  ])("%s", (raw, sentence) => expect(() => readMix(raw)).toThrow(sentence));

  it("is always a refusal and never a crash, whatever the text", () => {
    for (const raw of [
      "\u0000",
      "🤿",
      "constructor",
      "toString",
      "__proto__",
      "EAN__proto__",
      "9".repeat(400),
    ]) {
      expect(() => readMix(raw)).toThrow(expect.objectContaining({ name: "Refusal" }));
    }
  });
});
