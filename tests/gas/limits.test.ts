import { describe, expect, it } from "vitest";
import { checkedPressure, checkedTemperature } from "../../src/gas/limits";
import { absoluteBar, kelvin } from "../../src/gas/units";

describe("pressure", () => {
  it.each([
    [450, "metric" as const],
    [6527, "us" as const],
    [0, "us" as const],
  ])("%s %s passes", (gauge, units) => {
    expect(checkedPressure(absoluteBar(gauge, units))).toBe(absoluteBar(gauge, units));
  });
  it.each([
    [450.1, "metric" as const],
    [6528, "us" as const],
  ])("%s %s is refused in both units", (gauge, units) => {
    expect(() => checkedPressure(absoluteBar(gauge, units))).toThrow(/above 450 bar \(6527 psi\)/);
  });
  it("below vacuum is refused", () => expect(() => checkedPressure(-1)).toThrow(/write 0 or more/));
  it.each([Number.NaN, Number.POSITIVE_INFINITY])("%s is not a number", (pressure) =>
    expect(() => checkedPressure(pressure)).toThrow(/not a number/),
  );
});

describe("temperature", () => {
  it.each([
    [-20, "metric" as const],
    [70, "metric" as const],
    [-4, "us" as const],
    [158, "us" as const],
  ])("%s %s passes", (degrees, units) =>
    expect(checkedTemperature(kelvin(degrees, units))).toBeGreaterThan(0),
  );
  it.each([
    [-20.1, "metric" as const],
    [70.1, "metric" as const],
    [-5, "us" as const],
    [159, "us" as const],
  ])("%s %s is refused", (degrees, units) =>
    expect(() => checkedTemperature(kelvin(degrees, units))).toThrow(/outside -20 to 70 °C \(-4 to 158 °F\)/),
  );
  it("what is no number is refused", () =>
    expect(() => checkedTemperature(Number.NaN)).toThrow(/not a number/));
});
