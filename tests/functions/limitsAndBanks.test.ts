import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fillsLeft as oneByOne } from "../../src/blending/cascade";
import { realGas } from "../../src/gas/equationOfState";
import { AIR } from "../../src/gas/mixture";
import { absoluteBar, kelvin } from "../../src/gas/units";
import { answers, cell, column, error, number } from "./calls";

describe("PRESSURELIMIT", () => {
  it.each([
    [["3AL3000", 3000, "psi", "US"], 3000],
    [["3AL", 3000, "psi", "US"], 3000],
    [["DOT-3AL-3000", null, "psi", "US"], 3000],
    [["TC-3ALM207", 207, "bar", "CA"], 207],
    // 49 CFR 173.302a(b): 110 % with the plus, steel 3A and 3AA only.
    [["3AA2400", 2400, "psi", "US", "10/22+"], 2640],
    [["3AA2400", 2400, "psi", "US", "10/22"], 2400],
    [["3AA2400", 2400, "psi", "US"], 2400],
    [["3AL3000", 3000, "psi", "US", "10/22+"], 3000],
    [["E9791-3500", 3500, "psi", "US", "10/22+"], 3500],
    [["3AA2400", 2400, "psi", "GB", "2022/10+"], 2400],
    [[null, 232, "bar", "GB"], 232],
    [["EN 1964-1", "232 bar", "psi", "GB"], 3364.9],
  ])("%j is %s", (given, limit) => {
    expect(number("PRESSURELIMIT", ...given)).toBeCloseTo(limit, 1);
  });

  it("of stamp and figure the lower counts within 1 bar or 15 psi; beyond that it is refused", () => {
    expect(number("PRESSURELIMIT", "3AL3000", 3010, "psi", "US")).toBeCloseTo(3000, 6);
    expect(number("PRESSURELIMIT", "3AL3000", 2990, "psi", "US")).toBeCloseTo(2990, 6);
    expect(number("PRESSURELIMIT", "TC-3ALM207", 3000, "psi", "US")).toBeCloseTo(3000, 6);
    expect(error("PRESSURELIMIT", "DOT-3AL-3000", 3300, "psi", "US")).toMatch(
      /^#VALUE! The figure says 227\.5 bar \(3300 psi\), the stamp 206\.8 bar \(3000 psi\): read the stamp/,
    );
  });

  it.each<[unknown[], RegExp]>([
    [["3AL", null, "psi", "US"], /^#VALUE! Neither class nor servicePressure says a pressure/],
    [["3ZZ", 3000, "psi", "US"], /^#N\/A The rules of the United States name no class "3ZZ"/],
    [["3AL", 232, "psi", "US"], /^#VALUE! servicePressure: 232 psi\? For bar/],
    [["3AL", 3000, "psi", "US", "10/22 E"], /^#VALUE! 2022-10 E is an inspection, not a hydro/],
    [["3AL", 3000, "psi", "US", null, 0], /^#VALUE! temperature: 0 may be a blank cell/],
    [["3AL-6351", 3000, "psi", "NZ"], /^#VALUE! A cylinder of this kind may not be filled in New Zealand/],
  ])("%j is refused", (given, sentence) => {
    expect(error("PRESSURELIMIT", ...(given as never[]))).toMatch(sentence);
  });

  it("at a temperature it is the reading that settles at the limit at the country's reference", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 60 }),
        fc.constantFrom("air", "EAN32", "TX 18/45"),
        (celsius, mix) => {
          const warm = number("PRESSURELIMIT", "EN 1964", 232, "bar", "GB", null, `${celsius} °C`, mix);
          // The United Kingdom settles at 15 °C.
          expect(number("SETTLED", warm, mix, `${celsius} °C`, 15, "bar")).toBeCloseTo(232, 6);
          expect(warm > 232).toBe(celsius > 15);
        },
      ),
      { numRuns: 60 },
    );
    // NIST's GERG-2008: air that settles at 3000 psi at 70 °F reads about 3409 at 120 °F.
    expect(number("PRESSURELIMIT", "3AL3000", 3000, "psi", "US", null, 120)).toBeCloseTo(3409, -1);
  });
});

describe("WATERVOLUME", () => {
  /* Published water volumes of common sizes (makers' tables, as in shared/cylinders/sizes.json): within 2 %. */
  it.each([
    [77.4, 3000, "psi", 11.1],
    [40, 3000, "psi", 5.7],
    [99, 3300, "psi", 13.1],
    [100, 3442, "psi", 12.9],
    [2380, 207, "bar", 12.0],
  ])("%d at %d %s is about %d L", (capacity, pressure, units, litres) => {
    expect(number("WATERVOLUME", capacity, pressure, units) / litres).toBeCloseTo(1, 1);
    expect(Math.abs(number("WATERVOLUME", capacity, pressure, units) / litres - 1)).toBeLessThan(0.025);
  });

  it("FREEGAS of it gives the capacity back", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 150, noNaN: true }),
        fc.integer({ min: 1500, max: 5000 }),
        (capacity, psi) => {
          const litres = number("WATERVOLUME", capacity, psi, "psi");
          if (Number.isInteger(litres) || litres > 40) return;
          expect(number("FREEGAS", litres, psi, "air", "psi")).toBeCloseTo(capacity, 6);
        },
      ),
      { numRuns: 100 },
    );
  });

  it("takes text with its unit, and refuses what is no gas", () => {
    expect(number("WATERVOLUME", "77.4 cu ft", "3000 psi", "bar")).toBeCloseTo(11.1, 1);
    expect(error("WATERVOLUME", 0, 3000, "psi")).toMatch(/^#VALUE! The capacity must be above 0/);
    expect(error("WATERVOLUME", "AL80", 3000, "psi")).toMatch(/^#VALUE! capacity: "AL80" is not a number/);
    expect(error("WATERVOLUME", 77.4, 207, "psi")).toMatch(/^#VALUE! servicePressure: 207 psi\?/);
  });
});

describe("FILLSLEFT", () => {
  /** The counter stops there. */
  const MOST_COUNTED = 200;
  const bank = fc.record({
    bankL: fc.integer({ min: 10, max: 400 }),
    bankBar: fc.integer({ min: 150, max: 330 }),
    startBar: fc.integer({ min: 0, max: 120 }),
    endBar: fc.integer({ min: 130, max: 232 }),
    litres: fc.integer({ min: 7, max: 24 }),
  });

  it("is as many as DECANT gives one after the other", () => {
    fc.assert(
      fc.property(bank, ({ bankL, bankBar, startBar, endBar, litres }) => {
        const fills = number("FILLSLEFT", bankL, bankBar, litres, startBar, endBar, "air", "bar");
        const order = {
          equation: realGas,
          temperatureK: kelvin(20, "metric"),
          gas: AIR,
          targetBar: absoluteBar(endBar, "metric"),
          bank: [{ name: "1", waterVolumeL: bankL, pressureBar: absoluteBar(bankBar, "metric") }],
        };
        const cylinder = {
          name: "A",
          waterVolumeL: litres,
          pressureBar: absoluteBar(startBar, "metric"),
          mix: AIR,
        };
        const filled = oneByOne(order, cylinder);
        // The counter takes a twentieth of a bar short as full.
        const nearly = number("FILLSLEFT", bankL, bankBar, litres, startBar, endBar - 0.1, "air", "bar");
        expect(filled).toBeGreaterThanOrEqual(Math.min(fills, MOST_COUNTED));
        expect(filled).toBeLessThanOrEqual(nearly);
      }),
      { numRuns: 40 },
    );
  });

  it("more bank never means fewer fills, and the first that fails is short by DECANT too", () => {
    fc.assert(
      fc.property(bank, ({ bankL, bankBar, startBar, endBar, litres }) => {
        const fills = number("FILLSLEFT", bankL, bankBar, litres, startBar, endBar, "air", "bar");
        expect(
          number("FILLSLEFT", bankL + 50, bankBar, litres, startBar, endBar, "air", "bar"),
        ).toBeGreaterThanOrEqual(fills);
        if (bankBar < startBar) return;
        const equal = number("DECANT", bankL, bankBar, litres, startBar, "air", "bar");
        expect(fills > 0).toBe(equal >= endBar);
      }),
      { numRuns: 60 },
    );
  });

  it("a full 50 L bank at 300 bar fills a 12 L cylinder from 50 to 200 bar twice (ideal gas: 2.8 by Boyle's law)", () => {
    expect(number("FILLSLEFT", 50, 300, 12, 50, 200, "air", "bar")).toBe(2);
  });

  it("refuses what is full already, and takes columns", () => {
    expect(error("FILLSLEFT", 50, 300, 12, 200, 200, "air", "bar")).toMatch(
      /starts at its end pressure or above/,
    );
    expect(number("FILLSLEFT", 50, 180, 12, 50, 200, "air", "bar")).toBe(0);
    expect(error("FILLSLEFT", 50, 4000, "AL80", 0, 3000, "air", "psi")).toMatch(
      /^#VALUE! bankVolume: 50 what\?/,
    );
    expect(answers("FILLSLEFT", 50, column(300, 200, 0), 12, 50, 200, "air", "bar")).toEqual([2, 0, ""]);
    expect(error("FILLSLEFT", 1001, 300, 12, 50, 200, "air", "bar")).toMatch(/more than a bank of twenty/);
  });

  it("WHY says how it was counted", () => {
    expect(cell("WHY", "FILLSLEFT", 50, 300, 12, 50, 200, "air", "bar")).toContain("one after the other");
  });
});
