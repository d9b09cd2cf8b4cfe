import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  absoluteBar,
  DEFAULT_TEMPERATURE_K,
  gaugeInWords,
  gaugeReading,
  kelvin,
  litres,
  readUnits,
  temperature,
  volume,
} from "../../src/gas/units";

describe("units are asked, never assumed", () => {
  it.each(["psi", "ft", "us", "US", " Psi "])("%s is us", (text) => expect(readUnits(text)).toBe("us"));
  it.each(["bar", "m", "metric", "BAR"])("%s is metric", (text) => expect(readUnits(text)).toBe("metric"));
  it.each(["kPa", "constructor", "imperial"])("%s is refused", (text) =>
    expect(() => readUnits(text)).toThrow(/not known: write "psi"/),
  );
  it("a blank is refused", () => expect(() => readUnits("")).toThrow(/missing/));
});

describe("gauge and absolute", () => {
  it("0 gauge is one atmosphere", () => {
    expect(absoluteBar(0, "us")).toBe(1.01325);
    expect(absoluteBar(0, "metric")).toBe(1.01325);
  });
  it("3000 psi is 207.856 bar absolute", () => expect(absoluteBar(3000, "us")).toBeCloseTo(207.855969, 5));
  it("says a gauge reading in both units", () => {
    expect(gaugeInWords(absoluteBar(2176, "us"))).toBe("150 bar (2176 psi)");
  });
});

it("default temperatures are 70 °F and 20 °C", () => {
  expect(DEFAULT_TEMPERATURE_K.us).toBeCloseTo(294.2611, 4);
  expect(DEFAULT_TEMPERATURE_K.metric).toBe(293.15);
});

describe("there and back", () => {
  const units = fc.constantFrom("us" as const, "metric" as const);
  const number = fc.double({ min: -20, max: 6500, noNaN: true });
  it("gives what went in", () => {
    fc.assert(
      fc.property(number, units, (value, unit) => {
        expect(gaugeReading(absoluteBar(value, unit), unit)).toBeCloseTo(value, 9);
        expect(temperature(kelvin(value, unit), unit)).toBeCloseTo(value, 9);
        expect(volume(litres(value, unit), unit)).toBeCloseTo(value, 9);
      }),
    );
  });
});
