import { describe, expect, it } from "vitest";
import { added, contentAt, drained, filledTo, pressureOf } from "../../src/gas/content";
import { idealGas, realGas } from "../../src/gas/equationOfState";
import { AIR, HELIUM, OXYGEN } from "../../src/gas/mixture";

const warm = 293.15;

describe("what a cylinder holds", () => {
  it("is 8.1 mol of air in each litre at 200 bar, real; 8.2 ideal", () => {
    expect(contentAt(realGas, AIR, 201.01325, warm).molPerLitre).toBeCloseTo(8.04, 1);
    expect(contentAt(idealGas, AIR, 201.01325, warm).molPerLitre).toBeCloseTo(8.247, 3);
  });

  it("adds up by amount", () => {
    const mixed = added({ mix: OXYGEN, molPerLitre: 1 }, HELIUM, 3);
    expect(mixed).toEqual({ mix: { oxygen: 0.25, helium: 0.75 }, molPerLitre: 4 });
  });

  it("adding nothing changes nothing, even to nothing", () => {
    const nothing = { mix: AIR, molPerLitre: 0 };
    expect(added(nothing, HELIUM, 0)).toBe(nothing);
  });

  it("keeps its mix when gas is let out", () => {
    expect(drained({ mix: AIR, molPerLitre: 8 }, 2)).toEqual({ mix: AIR, molPerLitre: 2 });
  });
});

describe("filling to a pressure", () => {
  it.each([realGas, idealGas])("reads that pressure, with the $name gas", (equation) => {
    const start = contentAt(equation, { oxygen: 0.18, helium: 0.45 }, 80, warm);
    for (const gas of [AIR, OXYGEN, HELIUM]) {
      const full = filledTo(equation, start, gas, 230, warm);
      expect(Math.abs(pressureOf(equation, full, warm) / 230 - 1)).toBeLessThan(1e-11);
    }
  });

  it("into an evacuated cylinder gives the gas itself", () => {
    expect(filledTo(realGas, { mix: AIR, molPerLitre: 0 }, OXYGEN, 100, warm).mix).toEqual(OXYGEN);
  });

  it("below what is there leaves it", () => {
    const start = contentAt(realGas, AIR, 80, warm);
    expect(filledTo(realGas, start, OXYGEN, 70, warm)).toBe(start);
    expect(filledTo(realGas, start, OXYGEN, 80, warm).mix).toEqual(AIR);
  });
});
