import { describe, expect, it } from "vitest";
import { bestMix } from "../../src/depth/bestMix";
import { ead } from "../../src/depth/ead";
import { end } from "../../src/depth/end";
import { gasDensity } from "../../src/depth/gasDensity";
import { minDepth } from "../../src/depth/minDepth";
import { mod } from "../../src/depth/mod";
import { oxygenPartialPressure } from "../../src/depth/oxygenPartialPressure";
import { roundDepthDown } from "../../src/depth/roundDown";
import { readWater } from "../../src/depth/waterColumn";
import { AIR, HELIUM, mixture, OXYGEN } from "../../src/gas/mixture";

const ean = (percent: number) => mixture(percent / 100);

describe("maximum operating depth", () => {
  it("EAN32: 111.375 ft, 33.75 m, not rounded", () => {
    expect(mod(ean(32), "us")).toBeCloseTo(111.375, 9);
    expect(mod(ean(32), "metric")).toBeCloseTo(33.75, 9);
  });
  it("is deeper in fresh water", () => {
    expect(mod(ean(32), "us", 1.4, "fresh")).toBeCloseTo(114.75, 9);
    expect(mod(ean(32), "metric", 1.4, "fresh")).toBeCloseTo(34.7625, 9);
  });
  it("rounds down for labels, but EAN40 is 25 m, not 24", () => {
    expect(roundDepthDown(mod(ean(40), "metric"))).toBe(25);
    expect(roundDepthDown(mod(ean(32), "us"))).toBe(111);
    expect(roundDepthDown(mod(ean(36), "metric"))).toBe(28);
  });
  it("of oxygen at 1.6 is 6 m", () => expect(mod(OXYGEN, "metric", 1.6)).toBeCloseTo(6, 9));
  it("at the limit exactly is the surface", () => expect(mod(OXYGEN, "metric", 1)).toBe(0));
  it("refuses a mix above the limit at the surface", () => {
    expect(() => mod(OXYGEN, "us", 0.9)).toThrow(/oxygen is above a ppO2 of 0.9 even at the surface/);
  });
  it("refuses what has no oxygen", () => expect(() => mod(HELIUM, "us")).toThrow(/no oxygen/));
  it.each([0, -1, 3.01, Number.NaN])("refuses a limit of %s", (limit) =>
    expect(() => mod(AIR, "us", limit)).toThrow(/limit of ppO2/),
  );
});

describe("minimum depth", () => {
  it("is 0 for anything not hypoxic", () => {
    expect(minDepth(AIR, "metric")).toBe(0);
    expect(minDepth(mixture(0.18, 0.45), "us")).toBe(0);
  });
  it("of 10/70 is 8 m, 26.4 ft", () => {
    expect(minDepth(mixture(0.1, 0.7), "metric")).toBeCloseTo(8, 9);
    expect(minDepth(mixture(0.1, 0.7), "us")).toBeCloseTo(26.4, 9);
  });
});

describe("oxygen partial pressure", () => {
  it("EAN32 at 30 m is 1.28 bar", () =>
    expect(oxygenPartialPressure(30, ean(32), "metric")).toBeCloseTo(1.28, 12));
  it("comes back to the limit at the operating depth", () => {
    for (const units of ["us", "metric"] as const)
      for (const water of ["salt", "fresh"] as const)
        expect(oxygenPartialPressure(mod(ean(36), units, 1.4, water), ean(36), units, water)).toBeCloseTo(
          1.4,
          12,
        );
  });
  it("refuses a depth above the surface or none", () => {
    expect(() => oxygenPartialPressure(-1, AIR, "us")).toThrow(/above the surface/);
    expect(() => oxygenPartialPressure(Number.NaN, AIR, "us")).toThrow(/not a number/);
  });
});

describe("best mix", () => {
  it.each([
    [0, 100],
    [4, 100],
    [25, 40],
    [33, 32],
    [40, 28],
  ])("at %s m is %s per cent", (depth, percent) => expect(bestMix(depth, "metric")).toBe(percent));
  it("refuses where only less than 5 per cent is within the limit", () => {
    expect(() => bestMix(3000, "metric")).toThrow(/no whole per cent/);
    // 1.4 bar of oxygen at 31 bar are 4.5 %, at 28 bar 5.
    expect(() => bestMix(300, "metric")).toThrow(
      "At 300 m no whole per cent of oxygen from 5 on is within a ppO2 of 1.4",
    );
    expect(bestMix(270, "metric")).toBe(5);
  });
});

describe("equivalent depths", () => {
  it("EAN34 at 24 m is as air at 18.4 m", () => expect(ead(24, ean(34), "metric")).toBeCloseTo(18.4, 1));
  it("of oxygen is the surface, not above it", () => expect(ead(6, OXYGEN, "metric")).toBe(0));
  it("18/45 at 60 m is narcotic as air at 28.5 m", () => {
    expect(end(60, mixture(0.18, 0.45), "metric")).toBeCloseTo(28.5, 9);
  });
  it("without counting oxygen, nitrogen against 79 %", () => {
    expect(end(200, mixture(0.18, 0.45), "us", false)).toBeCloseTo(76.13, 2);
    expect(end(60, mixture(0.18, 0.45), "metric", false)).toBeCloseTo((70 * 0.37) / 0.79 - 10, 9);
  });
  it("of nitrox, oxygen narcotic, is the depth itself", () =>
    expect(end(30, ean(32), "metric")).toBeCloseTo(30, 9));
  it("of heliox is the surface", () => expect(end(5, mixture(0.21, 0.79), "metric")).toBe(0));
});

describe("gas density", () => {
  it("of air at the surface is 1.276 g/L at 1 bar, 1.293 at 1 atm", () => {
    expect(gasDensity(0, AIR, "metric")).toBeCloseTo(1.2755, 3);
    expect(gasDensity(0, AIR, "us")).toBeCloseTo(1.2924, 3);
  });
  it("rises with depth and falls with helium", () => {
    expect(gasDensity(60, AIR, "metric")).toBeCloseTo(7 * gasDensity(0, AIR, "metric"), 12);
    expect(gasDensity(60, mixture(0.18, 0.45), "metric")).toBeLessThan(gasDensity(60, AIR, "metric"));
  });
});

describe("water", () => {
  it.each(["salt", "Fresh"])("%s is known", (text) => expect(readWater(text)).toBe(text.toLowerCase()));
  it.each(["", "constructor"])("%s is not", (text) =>
    expect(() => readWater(text)).toThrow(/write "salt" or "fresh"/),
  );
});
