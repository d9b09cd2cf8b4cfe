import { describe, expect, it } from "vitest";
import { decant } from "../../src/blending/decant";
import { mixAfter } from "../../src/blending/mixAfter";
import { mixOf } from "../../src/blending/mixOf";
import { planFill, type FillOrder } from "../../src/blending/planFill";
import { settled } from "../../src/blending/settled";
import { topWith } from "../../src/blending/topWith";
import { bestMix } from "../../src/depth/bestMix";
import { ead } from "../../src/depth/ead";
import { end } from "../../src/depth/end";
import { gasDensity } from "../../src/depth/gasDensity";
import { mod } from "../../src/depth/mod";
import { roundDepthDown } from "../../src/depth/roundDown";
import { idealGas, realGas, type EquationOfState } from "../../src/gas/equationOfState";
import { freeGas } from "../../src/gas/freeGas";
import { gerg2008Density } from "../../src/gas/gerg2008";
import { AIR, HELIUM, mixture, OXYGEN, type Mixture } from "../../src/gas/mixture";
import {
  absoluteBar,
  ATMOSPHERE_BAR,
  BAR_PER_PSI,
  gaugeReading,
  kelvin,
  litres,
  volume,
} from "../../src/gas/units";
import { zFactor } from "../../src/gas/zFactor";
import { json, PURE_GASES } from "./fixtures";

/*
 * worked-examples.json: published examples of the trade. Each is either checked here or listed with the reason why not.
 *
 * Most of them take the figures of the gauge for absolute pressures and the cylinder for evacuated. That is their
 * convention, not Brimbook's (a vented cylinder, gauge readings), so they are asked of the same functions in theirs:
 * `plain` starts at 0 bar absolute.
 */

interface Example {
  readonly id: string;
  readonly source: string;
  readonly reproduces: string;
  readonly inputs: Readonly<Record<string, never>>;
  readonly expected: Readonly<Record<string, never>>;
}
const examples = json<{ examples: readonly Example[] }>("worked-examples.json").examples;

const ROOM_K = 293.15;
const psi = (value: number) => value * BAR_PER_PSI;

/** An order with the numbers taken as absolute pressures, ideal gas, air as given. */
function plain(
  start: number,
  startOxygen: number,
  endBar: number,
  endMix: Mixture,
  airPercent = 21,
  equation: EquationOfState = idealGas,
): FillOrder {
  return {
    startPressureBar: start,
    startMix: mixture(startOxygen / 100),
    endPressureBar: endBar,
    endMix,
    topMix: mixture(airPercent / 100),
    oxygenSupply: OXYGEN,
    temperatureK: ROOM_K,
    order: "helium first",
    equation,
  };
}
const ean = (percent: number) => mixture(percent / 100);

/** By how much each gas raises the gauge. */
function rises(order: FillOrder): Record<string, number> {
  let before = order.startPressureBar;
  const rise: Record<string, number> = { helium: 0, oxygen: 0, top: 0 };
  for (const { step, stopBar } of planFill(order).steps) {
    rise[step] = stopBar - before;
    before = stopBar;
  }
  return rise;
}

/** The mix after filling an evacuated cylinder up to each reading, the numbers taken as absolute. */
const filled = (equation: EquationOfState, ...stops: readonly (readonly [Mixture, number])[]) =>
  mixOf(equation, [
    { gas: AIR, pressureBar: 0, temperatureK: ROOM_K },
    ...stops.map(([gas, pressureBar]) => ({ gas, pressureBar, temperatureK: ROOM_K })),
  ]);

/** Both readings at one temperature, the numbers taken as absolute. */
const topped = (start: number, startMix: Mixture, endBar: number, topMix: Mixture, equation = idealGas) =>
  mixAfter({
    startPressureBar: start,
    startMix,
    endPressureBar: endBar,
    topMix,
    startTemperatureK: ROOM_K,
    endTemperatureK: ROOM_K,
    equation,
  });

const within = (value: number, published: number, tolerance: number) =>
  expect(Math.abs(value - published)).toBeLessThanOrEqual(tolerance);

const CHECKED: Readonly<Record<string, (expected: Readonly<Record<string, number>>) => void>> = {
  WE01: (e) => within(rises(plain(0, 21, 210, ean(33))).oxygen!, e.o2_add_bar!, 0.05),
  WE03: (e) => {
    const rise = rises(plain(0, 21, 200, OXYGEN));
    within(rise.oxygen!, e.o2_add_bar!, 1e-9);
    within(rise.top!, e.air_add_bar!, 1e-9);
  },
  WE04: (e) => {
    const rise = rises(plain(0, 21, 230, ean(21)));
    within(rise.oxygen!, e.o2_add_bar!, 1e-9);
    within(rise.top!, e.air_add_bar!, 1e-9);
  },
  WE05: (e) => {
    const rise = rises(plain(0, 21, 230, ean(32)));
    within(rise.oxygen!, e.o2_add_bar!, 0.1);
    within(rise.top!, e.air_add_bar!, 0.1);
    within(230 * 0.32, e.check_total_o2_bar!, 0.1);
  },
  WE06: (e) => {
    const rise = rises(plain(70, 34, 230, ean(32)));
    within(rise.oxygen!, e.o2_add_bar!, 0.05);
    within(rise.top!, e.air_add_bar!, 0.05);
  },
  WE07: (e) => {
    const published = e.o2_pct as unknown as readonly number[];
    [200, 220, 230, 232].forEach((final, index) =>
      within(100 * filled(idealGas, [OXYGEN, 32], [ean(21), final]).oxygen, published[index]!, 0.01),
    );
  },
  // Does not reproduce: 411 psi was published; the usual values of air give 417.7 and 421.0.
  WE09: (e) => {
    const stop = (air: number) => rises(plain(0, air, psi(3000), ean(32), air)).oxygen! / BAR_PER_PSI;
    within(stop(21), e.recomputed_21pct_psi!, 0.05);
    within(stop(20.9), e.recomputed_209pct_psi!, 0.05);
    expect(Math.abs(stop(21) - e.published_o2_add_psi!)).toBeGreaterThan(5);
  },
  WE10: (e) => {
    const gas = topWith({ ...plain(50, 32, 200, ean(36)) });
    within(100 * gas.oxygen, e.required_topup_o2_pct!, 0.01);
  },
  WE11: (e) => {
    within(100 * topped(psi(2500), ean(32), psi(3000), ean(21)).oxygen, e.o2_pct_ideal!, 0.01);
    within(100 * topped(psi(2500), ean(32), psi(3000), ean(20.9), realGas).oxygen, e.o2_pct_real_gas!, 0.02);
  },
  // Reproduces in part: 54 % was published without the order of the gases, and the order turns the error round.
  WE13: (e) => {
    within(100 * filled(realGas, [OXYGEN, 100], [HELIUM, 200]).oxygen, e.real_gas_o2_first!, 0.3);
    within(100 * filled(realGas, [HELIUM, 100], [OXYGEN, 200]).oxygen, e.real_gas_he_first!, 0.3);
    within(100 * filled(idealGas, [OXYGEN, 100], [HELIUM, 200]).oxygen, e.ideal!, 1e-9);
  },
  // Reproduces approximately: the published figures are rounded, within 1.5 bar of the ideal gas.
  WE14: (e) => {
    const ideal = rises(plain(0, 21, 220, mixture(0.21, 0.35)));
    within(ideal.helium!, e.ideal_he_bar!, 0.05);
    within(ideal.oxygen!, e.ideal_o2_add_bar_air21!, 0.05);
    within(ideal.helium!, e.published_he_bar!, 1.5);
    within(ideal.oxygen!, e.published_o2_bar!, 1.5);
    within(rises(plain(0, 20.9, 220, mixture(0.21, 0.35), 20.9)).oxygen!, e.ideal_o2_add_bar_air209!, 0.05);
    const real = rises(plain(0, 20.9, 220, mixture(0.21, 0.35), 20.9, realGas));
    within(real.helium!, e.real_gas_he_bar!, 0.7);
    within(real.oxygen!, e.real_gas_o2_add_bar!, 0.7);
  },
  // Does not reproduce: three rules of thumb for helium disagree even in sign. It takes less of it than the ideal gas says.
  WE15: (e) => {
    const helium = (equation: EquationOfState) =>
      rises(plain(0, 20.9, psi(3000), mixture(0.18, 0.5), 20.9, equation)).helium! / BAR_PER_PSI;
    within(helium(idealGas), e.ideal_psi!, 1e-6);
    within(helium(realGas), e.real_gas_psi!, 20);
  },
  WE17: (e) => {
    const mix = mixture(0.18, 0.45);
    const real = rises(plain(0, 20.9, 232, mix, 20.9, realGas));
    within(real.helium!, e.real_he_bar!, 0.7);
    within(real.oxygen!, e.real_o2_add_bar!, 0.7);
    const ideal = rises(plain(0, 20.9, 232, mix, 20.9));
    within(ideal.helium!, e.ideal_he_bar!, 0.01);
    within(ideal.oxygen!, e.ideal_o2_add_bar!, 0.01);
    const result = e.ideal_recipe_result as unknown as { o2: number; he: number };
    const made = filled(
      realGas,
      [HELIUM, ideal.helium!],
      [OXYGEN, ideal.helium! + ideal.oxygen!],
      [ean(20.9), 232],
    );
    within(100 * made.oxygen, result.o2, 0.3);
    within(100 * made.helium, result.he, 0.3);
  },
  WE19: (e) => {
    within(rises(plain(0, 20.9, 230, ean(32), 20.9, realGas)).oxygen!, e.real_o2_add_bar!, 0.7);
    const ideal = rises(plain(0, 20.9, 230, ean(32), 20.9)).oxygen!;
    within(ideal, e.ideal_o2_add_bar!, 0.01);
    const result = e.ideal_recipe_result as unknown as { o2: number };
    within(100 * filled(realGas, [OXYGEN, ideal], [ean(20.9), 230]).oxygen, result.o2, 0.3);
  },
  // A published table it is set against has air at Z = 1.025 at 100 bar: wrong in sign.
  WE22: (e) => {
    const table = e as unknown as Record<string, readonly number[]>;
    const argon = (bar: number) =>
      (bar * 100) / (gerg2008Density(PURE_GASES.Ar!, bar, ROOM_K) * 8.314472 * ROOM_K);
    [50, 100, 150, 200, 232, 300].forEach((bar, index) => {
      within(zFactor(realGas, AIR, bar, ROOM_K), table.Z![index]!, 0.002);
      within(zFactor(realGas, OXYGEN, bar, ROOM_K), table.Z_oxygen![index]!, 0.002);
      within(zFactor(realGas, HELIUM, bar, ROOM_K), table.Z_helium![index]!, 0.002);
      within(argon(bar), table.Z_argon![index]!, 0.002);
    });
  },
  WE23: (e) => {
    const free = (equation: EquationOfState) =>
      volume(freeGas(equation, AIR, 11.1, absoluteBar(3000, "us"), kelvin(70, "us")), "us");
    within(free(realGas), e.published_cuft!, 0.3);
    within(free(realGas), e.real_gas_cuft!, 0.3);
    // 80.4 cu ft counts the atmosphere that stays in the cylinder.
    within(free(idealGas) + volume(11.1, "us"), e.ideal_cuft!, 0.05);
  },
  // In its own convention: its "bar" are psi / 14.7, which are atmospheres, 1.3 % below bar. The 104 does not reproduce
  // to its 0.1 L: 16.5 was published, it gives 16.40.
  WE25: (e) => {
    const table = e as unknown as Record<string, readonly number[]>;
    const rows = [
      [50, 3100],
      [71.2, 2470],
      [80, 3000],
      [95, 2640],
      [104, 2640],
      [100, 3500],
      [120, 3500],
    ] as const;
    rows.forEach(([cubicFeet, pressure], index) => {
      const waterL = litres(cubicFeet, "us") / (pressure / 14.7);
      within(pressure / 14.7, table.bar![index]!, 0.1);
      within(waterL, cubicFeet === 104 ? 16.4 : table.water_L![index]!, 0.1);
      within(psi(pressure) / table.bar![index]!, 1.0135, 0.001);
    });
  },
  // The rule of 5 psi per degree understates: 3300 where the real gas gives 3488.
  WE26: (e) => {
    const hot = (equation: EquationOfState) =>
      gaugeReading(
        settled(equation, AIR, absoluteBar(3000, "us"), kelvin(70, "us"), kelvin(130, "us")),
        "us",
      );
    within(hot(realGas), e.real_gas_psi!, 15);
    within(hot(idealGas), e.ideal_psi!, 15);
    expect(hot(realGas) - e.rule_5psi_per_F!).toBeGreaterThan(150);
  },
  WE27: (e) => {
    const cold = (equation: EquationOfState) =>
      gaugeReading(
        settled(equation, AIR, absoluteBar(3300, "us"), kelvin(120, "us"), kelvin(70, "us")),
        "us",
      );
    within(cold(realGas), e.real_gas_psi!, 15);
    within(cold(idealGas), e.ideal_psi!, 15);
  },
  WE30: (e) => within(decanted(idealGas, [10, 200], [10, 100]), e.final_bar!, 1e-9),
  WE31: (e) => {
    within(decanted(idealGas, [15, 230], [3, 100]), e.ideal_bar!, 0.01);
    within(decanted(idealGas, [15, 230], [3, 100]), e.published_bar!, 0.5);
    within(decanted(realGas, [15, 230], [3, 100]), e.real_gas_bar!, 0.2);
  },
  // Water volumes in proportion to rated content over rated pressure.
  WE33: (e) => {
    const equal = decanted(idealGas, [300 / 2250, psi(2250)], [72 / 2475, 0]) / BAR_PER_PSI;
    within(equal, e.ideal_psi!, 1);
    within(equal, 1800, 50); // "about 1800"
    within((72 * 1800) / 2475, e.published_cuft!, 0.1);
  },
  // Its litres are at 1 bar, Brimbook's at 1 atm.
  WE34: (e) => {
    const free = freeGas(idealGas, AIR, e.bank_water_L!, 150 + ATMOSPHERE_BAR, ROOM_K) * ATMOSPHERE_BAR;
    within(free, 30_000, 1e-6);
  },
  // 22.4 litres to the mole, plain nitrogen; ours carries the argon of air, which weighs 0.3 % more here.
  WE35: (e) => {
    const freeL = 10 * 200;
    within(freeL * gasDensity(0, mixture(0.19, 0.35), "us"), e.total_g!, 0.005 * e.total_g!);
    within(freeL * 0.35 * gasDensity(0, HELIUM, "us"), e.he_g!, 1);
    within(freeL * 0.19 * gasDensity(0, OXYGEN, "us"), e.o2_g!, 1);
  },
  WE36: (e) => {
    within(mod(ean(36), "metric"), e.mod_m!, 0.05);
    expect(roundDepthDown(mod(ean(36), "us"))).toBe(e.mod_ft);
  },
  WE37: (e) => within(mod(ean(32), "metric"), e.mod_m!, 1e-9),
  WE38: (e) => within(mod(ean(50), "metric"), e.mod_m!, 1e-9),
  WE39: (e) => within(ead(24, ean(34), "metric"), e.ead_m!, 0.05),
  WE40: (e) => within(end(60, mixture(0.18, 0.45), "metric"), e.end_m!, 0.05),
  WE42: (e) => {
    const published = e.max_o2_pct as unknown as readonly number[];
    expect([20, 25, 30, 33, 35, 40].map((depth) => bestMix(depth, "metric"))).toEqual(published);
  },
  // Litres at 1 bar again.
  WE47: (e) => {
    const freeBar = (volumeL: number, bar: number) =>
      freeGas(idealGas, AIR, volumeL, bar + ATMOSPHERE_BAR, ROOM_K) * ATMOSPHERE_BAR;
    within(freeBar(7, 50), e.a_L!, 1);
    within(freeBar(18, 220) - freeBar(18, 50), e.b_L!, 1);
  },
};

function decanted(
  equation: EquationOfState,
  [donorL, donorBar]: readonly [number, number],
  [receiverL, receiverBar]: readonly [number, number],
): number {
  const donor = { waterVolumeL: donorL, pressureBar: donorBar };
  return decant(equation, AIR, donor, { waterVolumeL: receiverL, pressureBar: receiverBar }, ROOM_K);
}

const NOT_PHYSICS: Readonly<Record<string, string>> = {
  WE44: "a bill by the final percentage: checked with the charges, tests/costs/costLog.test.ts",
  WE46: "a bill by the gas added: checked with the charges, tests/costs/costLog.test.ts",
  WE48: "the cost of air and what is left of the price: tests/costs/costLog.test.ts",
  WE49: "a price of helium: checked with the charges, tests/costs/costLog.test.ts",
  WE50: "hours of a filter: checked with the price lists, tests/costs/prices.test.ts",
  WE51: "life of a filter over temperature: tests/costs/prices.test.ts",
  WE52: "the result of a hydro test, which the test station judges",
  WE53: "plus ratings: a rule of the audit",
  WE55: "due dates: a rule of the audit",
  WE56: "test stamps: read with the cylinders",
  WE57: "month ends: a rule of the audit",
  WE58: "when a membrane pays, a rule of thumb: what a membrane costs is for the price list to say",
};

describe("worked examples of the trade", () => {
  it("each is checked, or said why not", () => {
    const ids = examples.map(({ id }) => id);
    expect([...Object.keys(CHECKED), ...Object.keys(NOT_PHYSICS)].sort()).toEqual([...ids].sort());
  });

  const checked = examples.filter(({ id }) => id in CHECKED);
  it.each(checked.map((example) => [example.id, example.source, example] as const))(
    "%s: %s",
    (id, _source, { expected }) => CHECKED[id]!(expected),
  );
});
