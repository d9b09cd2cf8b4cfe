import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gasIn, type FillState } from "../../src/costs/gasIn";
import { meterLog, type Bank } from "../../src/costs/meterLog";
import { realGas } from "../../src/gas/equationOfState";
import { AIR, mixture } from "../../src/gas/mixture";
import {
  absoluteBar,
  ATMOSPHERE_BAR,
  DEFAULT_TEMPERATURE_K,
  LITRES_PER_CUBIC_FOOT,
} from "../../src/gas/units";
import type { CellValue } from "../../src/sheet/sheet";
import { number } from "../functions/calls";
import { FILLS, logOf } from "./lists";

const cuFt = (litres: number): number => litres / LITRES_PER_CUBIC_FOOT;

function meter(...rows: (readonly CellValue[])[]) {
  return meterLog(logOf(rows), "us");
}

describe("the gas of a fill", () => {
  it("is what the worksheet function says, gas by gas", () => {
    const [, , , blend] = meterLog(logOf(FILLS), "us").metered;
    for (const [gas, litres] of [
      ["oxygen", blend!.gas.oxygenL],
      ["helium", blend!.gas.heliumL],
      ["top", blend!.gas.airL],
    ] as const)
      expect(cuFt(litres)).toBeCloseTo(number("GASUSED", gas, "AL80", 500, "EAN32", 3000, "EAN32", "psi"), 9);
  });

  it("agrees with the handbook's free gas: an AL80 from vented to 3000 psi takes 77.4 to 77.5 cu ft of air", () => {
    // Published capacity tables give 77.4 cu ft for the AL80 at 3000 psi (worked-examples.json, WE23).
    const { metered } = meter(["2026-10-02", "GP1001", "C-014", 0, "air", "air", "air", 3000]);
    expect(cuFt(metered[0]!.gas.airL)).toBeGreaterThan(77.2);
    expect(cuFt(metered[0]!.gas.airL)).toBeLessThan(77.7);
  });

  it("goes through the compressor in a stream, oxygen included, and not by partial pressure", () => {
    const [stream, partial] = ["continuous", "partial pressure"].map(
      (method) =>
        meter(["2026-10-04", "GP1001", "C-020", 500, "EAN36", "EAN36", method, 3000, 36]).metered[0]!.gas,
    );
    expect(stream!.oxygenL).toBeCloseTo(partial!.oxygenL, 9);
    expect(stream!.compressedL).toBeCloseTo(stream!.oxygenL + stream!.airL, 9);
    expect(partial!.compressedL).toBe(partial!.airL);
  });

  it("goes into both cylinders of a twin set", () => {
    const fills = meterLog(logOf(FILLS), "us").metered;
    expect(fills[4]!.size).toBe("2 x LP85");
    const half = meter(["2026-11-06", "GP2001", "C-031", 300, "TX 18/45", "TX 18/45", "pp", 2600, 18, 45]);
    expect(fills[4]!.gas.heliumL).toBeCloseTo(2 * half.metered[0]!.gas.heliumL, 9);
  });

  it("counts what was settled: a hot reading holds less than it shows", () => {
    const headings = [
      "Date",
      "Serial",
      "Start psi",
      "Start mix",
      "Ordered mix",
      "Method",
      "End psi",
      "Gas temp °F",
    ];
    const fill = (temperature: CellValue) =>
      meterLog(logOf([["2026-10-02", "GP1001", 500, "air", "air", "air", 3000, temperature]], headings), "us")
        .metered[0]!;
    expect(fill(110).gas.airL).toBeLessThan(fill(70).gas.airL * 0.93);
    expect(fill(null).assumed).toContain("settled");
    expect(fill(110).assumed).not.toContain("settled");
  });

  it("from a bank is what the shop has told that the bank holds", () => {
    const headings = [
      "Date",
      "Serial",
      "Start psi",
      "Start mix",
      "Ordered mix",
      "Method",
      "Source",
      "End psi",
    ];
    const log = logOf([["2026-10-02", "GP1001", 500, "air", "EAN30", "bank", "Bank 32", 3000]], headings);
    const mixOf = (banks: readonly Bank[]) =>
      meterLog(log, "us", banks).metered[0]!.gas.readyMade!.mix.oxygen;
    expect(mixOf([])).toBe(0.3);
    expect(mixOf([{ name: "bank32", mix: mixture(0.32) }])).toBe(0.32);
  });

  it("takes helium as ordered where only the oxygen was analysed, and says so", () => {
    const { metered } = meter([
      "2026-11-06",
      "GP2001",
      "C-031",
      300,
      "TX 18/45",
      "TX 18/45",
      "pp",
      2600,
      18.2,
      null,
    ]);
    expect(metered[0]!.assumed).toContain("helium as ordered");
    expect(metered[0]!.gas.heliumL).toBeGreaterThan(0);
  });

  it("is within 1 % without a start mix, after air or nitrox", () => {
    const amounts = ["air", "EAN32", "EAN40", null].map(
      (startMix) =>
        meter(["2026-10-02", "GP1001", "C-014", 1000, startMix, "air", "air", 3000]).metered[0]!.gas.airL,
    );
    for (const amount of amounts) expect(Math.abs(amount / amounts[3]! - 1)).toBeLessThan(0.01);
  });
});

describe("a fill that cannot be costed", () => {
  it.each<[string, readonly CellValue[]]>([
    ["no method", ["2026-10-05", "GP1001", "C-020", 500, "EAN32", "EAN32", null, 3000, 32]],
    [
      "method is unreadable",
      ["2026-10-05", "GP1001", "C-020", 500, "EAN32", "EAN32", "the usual way", 3000, 32],
    ],
    ["no start pressure", ["2026-10-05", "GP1001", "C-020", null, "EAN32", "EAN32", "pp", 3000, 32]],
    ["no start mix", ["2026-10-05", "GP1001", "C-020", 500, null, "EAN32", "pp", 3000, 32]],
    ["no end pressure", ["2026-10-05", "GP1001", "C-020", 500, "EAN32", "EAN32", "pp", null, 32]],
    [
      "end pressure is not above the start pressure",
      ["2026-10-05", "GP1001", "C-020", 3000, "air", "air", "air", 500],
    ],
    [
      "cylinder is not in the register, so no size",
      ["2026-10-05", "GP9999", "C-020", 500, "air", "air", "air", 3000],
    ],
    ["size on record is unreadable", ["2026-10-05", "GP3001", "C-020", 500, "air", "air", "air", 3000]],
    ["no serial", ["2026-10-05", null, "C-020", 500, "air", "air", "air", 3000]],
    [
      "what was there and what is there now do not agree",
      ["2026-10-05", "GP1001", "C-020", 2500, "TX 10/70", "EAN90", "pp", 3000, 90],
    ],
  ])("says why: %s", (why, row) => {
    const { metered, notCosted } = meter(row);
    expect(metered).toHaveLength(0);
    expect(notCosted.map((each) => each.why)).toEqual([why]);
  });

  it("is counted: every fill is metered or not costed", () => {
    const rows: (readonly CellValue[])[] = [
      ...FILLS,
      ["2026-10-05", "GP9999", "C-020", 500, "air", "air", "air", 3000],
    ];
    const { metered, notCosted } = meterLog(logOf(rows), "us");
    expect(metered.length + notCosted.length).toBe(rows.length);
  });
});

const T = DEFAULT_TEMPERATURE_K.metric;
const state = fc
  .record({
    waterVolumeL: fc.double({ min: 3, max: 30, noNaN: true }),
    startBar: fc.double({ min: ATMOSPHERE_BAR, max: 90, noNaN: true }),
    rise: fc.double({ min: 20, max: 200, noNaN: true }),
    start: fc.double({ min: 0.21, max: 0.36, noNaN: true }),
    end: fc.double({ min: 0.22, max: 0.5, noNaN: true }),
    helium: fc.constantFrom(0, 0, 0.2, 0.45),
  })
  .map(({ waterVolumeL, startBar, rise, start, end, helium }): FillState => {
    const endMix = mixture(end, helium);
    return {
      waterVolumeL,
      startBar,
      startMix: mixture(start),
      endBar: startBar + rise,
      endMix,
      bankMix: endMix,
      temperatureK: T,
    };
  });

/** Moles per litre of free gas, one after the other. */
const molIn = (litres: number, mix = AIR): number => litres * realGas.density(mix, ATMOSPHERE_BAR, T);

describe("conservation", () => {
  it("of gas: what was there and what went in is what is there now, but for what was let out", () => {
    fc.assert(
      fc.property(
        state,
        fc.constantFrom("partial pressure", "continuous", "premix", "air"),
        (fill, method) => {
          let gas;
          try {
            gas = gasIn(fill, method);
          } catch {
            return;
          }
          const { waterVolumeL: volume, startBar, startMix, endBar } = fill;
          const endMix = method === "air" || method === "premix" ? undefined : fill.endMix;
          const start = realGas.density(startMix, startBar, T) * volume;
          const added =
            molIn(gas.oxygenL, mixture(1)) +
            molIn(gas.heliumL, mixture(0, 1)) +
            molIn(gas.airL) +
            (gas.readyMade ? molIn(gas.readyMade.volumeL, gas.readyMade.mix) : 0);
          const oxygen =
            start * startMix.oxygen +
            molIn(gas.oxygenL, mixture(1)) +
            molIn(gas.airL) * AIR.oxygen +
            (gas.readyMade ? molIn(gas.readyMade.volumeL, gas.readyMade.mix) * gas.readyMade.mix.oxygen : 0);
          if (gas.drained) {
            // What was let out is gone: what went in can only have been more.
            expect(start + added).toBeGreaterThan(
              realGas.density(fill.endMix, endBar, T) * volume * (1 - 2e-3),
            );
            return;
          }
          const helium =
            molIn(gas.heliumL, mixture(0, 1)) +
            (gas.readyMade ? molIn(gas.readyMade.volumeL, gas.readyMade.mix) * gas.readyMade.mix.helium : 0);
          const total = start + added;
          const made = mixture(oxygen / total, helium / total);
          // The content that went in is at the pressure that was read.
          expect(realGas.pressure(made, total / volume, T) / endBar).toBeCloseTo(1, 8);
          // Within 0.1 per cent points the top gas alone is the plan.
          if (endMix) expect(Math.abs(made.oxygen - endMix.oxygen)).toBeLessThan(0.00101);
        },
      ),
    );
  });

  it("of time: two fills one after the other take what one fill takes", () => {
    fc.assert(
      fc.property(state, fc.double({ min: 0.2, max: 0.8, noNaN: true }), (fill, share) => {
        const air = { ...fill, startMix: AIR };
        const halfway = air.startBar + share * (air.endBar - air.startBar);
        const whole = gasIn(air, "air").airL;
        const parts =
          gasIn({ ...air, endBar: halfway }, "air").airL + gasIn({ ...air, startBar: halfway }, "air").airL;
        expect(parts / whole).toBeCloseTo(1, 9);
      }),
    );
  });

  it("agrees with a plain recomputation by density alone", () => {
    const startBar = absoluteBar(500, "us");
    const endBar = absoluteBar(3000, "us");
    const temperatureK = DEFAULT_TEMPERATURE_K.us;
    const density = (bar: number) => realGas.density(AIR, bar, temperatureK);
    const { gas, state: of } = meterLog(logOf(FILLS), "us").metered[0]!;
    expect(gas.airL).toBeCloseTo(
      ((density(endBar) - density(startBar)) * of.waterVolumeL) / density(ATMOSPHERE_BAR),
      6,
    );
  });
});
