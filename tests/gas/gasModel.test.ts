import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { idealGas, realGas } from "../../src/gas/equationOfState";
import { equationReach } from "../../src/gas/equationReach";
import { freeGas } from "../../src/gas/freeGas";
import { AIR, mixture } from "../../src/gas/mixture";
import { absoluteBar, kelvin, volume } from "../../src/gas/units";
import { zFactor } from "../../src/gas/zFactor";

const anyMix = fc
  .tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }))
  .map(([oxygen, share]) => mixture(oxygen, (1 - oxygen) * share));
const anyTemperature = fc.double({ min: 253.15, max: 343.15, noNaN: true });

describe("real and ideal gas", () => {
  it("agree as pressure goes to zero", () => {
    fc.assert(
      fc.property(anyMix, anyTemperature, (mix, temperatureK) => {
        for (const pressureBar of [1, 0.1, 0.001]) {
          const ratio =
            realGas.density(mix, pressureBar, temperatureK) /
            idealGas.density(mix, pressureBar, temperatureK);
          expect(Math.abs(ratio - 1)).toBeLessThan(0.0016 * pressureBar);
        }
      }),
    );
  });

  it("give back the pressure of a density, over the whole range allowed", () => {
    const anyPressure = fc.double({ min: 0.01, max: 451, noNaN: true });
    fc.assert(
      fc.property(anyMix, anyPressure, anyTemperature, (mix, pressureBar, temperatureK) => {
        for (const equation of [realGas, idealGas]) {
          const density = equation.density(mix, pressureBar, temperatureK);
          expect(Math.abs(equation.pressure(mix, density, temperatureK) / pressureBar - 1)).toBeLessThan(
            1e-11,
          );
        }
      }),
    );
  });
});

describe("Z", () => {
  it("is 1 for an ideal gas and at no pressure", () => {
    expect(zFactor(idealGas, AIR, 200, 293.15)).toBeCloseTo(1, 12);
    expect(zFactor(realGas, AIR, 0, 293.15)).toBe(1);
  });
  it("of air falls below 1 at 100 bar and rises above it at 300", () => {
    expect(zFactor(realGas, AIR, 100, 293.15)).toBeLessThan(0.99);
    expect(zFactor(realGas, AIR, 300, 293.15)).toBeGreaterThan(1.1);
  });
  it("is refused outside the limits", () => {
    expect(() => zFactor(realGas, AIR, 500, 293.15)).toThrow(/above 450 bar/);
    expect(() => zFactor(realGas, AIR, 200, 400)).toThrow(/outside/);
  });
});

describe("free gas", () => {
  it("of an AL80 at 3000 psi of air is 77.4 to 77.5 cu ft, ideal 79.9", () => {
    const free = (equation = realGas) =>
      volume(freeGas(equation, AIR, 11.1, absoluteBar(3000, "us"), kelvin(70, "us")), "us");
    expect(free()).toBeGreaterThan(77.4);
    expect(free()).toBeLessThan(77.5);
    expect(free(idealGas)).toBeCloseTo((11.1 / 28.316846592) * (207.855969 / 1.01325 - 1), 4);
  });
  it("at 0 gauge is none, though an atmosphere stays", () => {
    expect(freeGas(realGas, AIR, 12, 1.01325, 293.15)).toBe(0);
  });
  it.each([0, -1, Number.NaN])("of a cylinder of %s litres is refused", (waterVolumeL) => {
    expect(() => freeGas(realGas, AIR, waterVolumeL, 200, 293.15)).toThrow(/water volume/);
  });
});

describe("how far the model can be trusted", () => {
  it.each([
    [AIR, /about 0.1 %/],
    [mixture(1), /about 0.1 %/],
    [mixture(0.18, 0.45), /0.1 to 0.3 %/],
    [mixture(0.1, 0.7), /0.1 to 0.3 %/],
    [mixture(0.21, 0.79), /about 1 %/],
    [mixture(0.5, 0.25), /about 1 %/],
  ])("%o", (mix, sentence) => expect(equationReach(mix, 233)).toMatch(sentence));

  it("says when the equation is in its extended range", () => {
    expect(equationReach(AIR, 350)).not.toMatch(/extended/);
    expect(equationReach(AIR, absoluteBar(350, "metric"))).toMatch(/extended range/);
  });
});
