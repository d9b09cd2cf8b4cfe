import { describe, expect, it } from "vitest";
import type { Argument } from "../../src/typed/cells";
import { error } from "./calls";

type Refusal = readonly [name: string, given: readonly Argument[], sentence: RegExp];

/** Rows of oxygen and air as MIXOF takes them. */
const steps = (...rows: readonly (readonly unknown[])[]) => rows as unknown as Argument;

function refuses(cases: readonly Refusal[]): void {
  it.each(cases)("%s %j", (name, given, sentence) => {
    expect(error(name, ...given)).toMatch(sentence);
  });
}

describe("arguments are refused by name", () => {
  refuses([
    ["MOD", [], /^#VALUE! units: blank or left out/],
    ["MOD", [null, "ft"], /^#VALUE! mix: blank or left out\. The gas: 32/],
    ["MOD", ["", "ft"], /^#VALUE! mix: blank or left out/],
    ["MOD", ["  ", "ft"], /^#VALUE! mix: blank or left out/],
    ["MOD", [[[null]], "ft"], /^#VALUE! mix: blank or left out/],
    ["MOD", [[], "ft"], /^#VALUE! mix: blank or left out/],
    ["MOD", [0, "ft"], /^#VALUE! mix: .*blank \(or 0\)/],
    ["MOD", [3, "ft"], /^#VALUE! mix: Oxygen 3: write 0\.32, 32 or EAN32/],
    ["MOD", [true, "ft"], /^#VALUE! mix: TRUE is not a gas/],
    ["MOD", ["argon", "ft"], /^#VALUE! mix: .*not a breathing gas/],
    ["MOD", [18537, "ft"], /^#VALUE! mix: .*turned into a date.*TX 10\/50/],
    ["MOD", ["10 50", "ft"], /^#VALUE! mix: .*TX 10\/50/],
    ["MOD", ["HeO2 20/80", "ft"], /^#VALUE! mix: /],
    ["MOD", ["EAN32", "feet"], /^#VALUE! units: .*write "psi"/],
    ["MOD", ["EAN32", 3000], /^#VALUE! units: /],
    ["MOD", ["EAN32", "ft", 3.1], /^#VALUE! maxPpO2: 3\.1 is not a partial pressure/],
    ["MOD", ["EAN32", "ft", -1], /^#VALUE! maxPpO2: /],
    ["MOD", ["EAN32", "ft", "high"], /^#VALUE! maxPpO2: "high" is not a number/],
    ["MOD", ["EAN32", "ft", 1.4, "brackish"], /^#VALUE! water: .*"salt" or "fresh"/],
    [
      "MOD",
      ["EAN32", "ft", 1.4, "salt", "extra"],
      /^#VALUE! MOD takes 4 arguments \(mix, units, maxPpO2, water\): 5/,
    ],
    ["OXYGENPP", [-1, "air", "m"], /^#VALUE! depth: Depth -1 is above the surface/],
    ["OXYGENPP", ["30 m", "air", "m"], /^#VALUE! depth: "30 m" is not a number/],
    ["END", [30, "air", "m", "maybe"], /^#VALUE! oxygenNarcotic: "maybe" is neither: write TRUE or FALSE/],
    [
      "MIXPART",
      ["air", "argon"],
      /^#VALUE! part: "argon" isn't one of these: write "oxygen", "helium" or "nitrogen"/,
    ],
    ["MIX", [18, 0.45], /^#VALUE! .*both as fractions.*or both in per cent/],
    ["MIX", [0.18, 45], /^#VALUE! .*both as fractions/],
    ["MIX", [60, 60], /^#VALUE! /],
    ["MIX", [18, -1], /^#VALUE! helium: /],
    ["STOPAT", ["argon", "empty", null, 200, 32, "bar"], /^#VALUE! gas: "argon" isn't one of these/],
    ["NOSUCH", [1], /^#VALUE! There is no worksheet function "NOSUCH"/],
  ]);
});

describe("errors and odd values in an argument's cell", () => {
  refuses([
    ["MOD", [{ error: "#N/A" }, "ft"], /^#N\/A mix: the cell holds the error #N\/A: put that right first/],
    ["MOD", [{ error: "#REF!" }, "ft"], /^#REF! mix: the cell holds the error #REF!/],
    ["MOD", ["#N/A", "ft"], /^#N\/A mix: the cell holds the error/],
    ["MOD", ["#DIV/0!", "ft"], /^#DIV\/0! mix: the cell holds the error #DIV\/0!/],
    ["MOD", ["EAN32", "#N/A"], /^#N\/A units: the cell holds the error/],
    [
      "MIXOF",
      [steps(["air", 0], ["oxygen", { error: "#N/A" }]), "bar"],
      /^#N\/A steps: the cell holds the error/,
    ],
    ["MOD", [Number.NaN, "ft"], /^#NUM! mix: the cell holds the error #NUM!/],
    ["OXYGENPP", [Number.POSITIVE_INFINITY, 32, "ft"], /^#NUM! depth: the cell holds the error #NUM!/],
    ["OXYGENPP", [1.7e308, 32, "ft"], /^#VALUE! |^no error/],
    ["MOD", ["x".repeat(5000), "ft"], /^#VALUE! mix: a text of 5000 characters/],
  ]);
});

describe("pressures and temperatures", () => {
  const fill = (start: Argument, end: Argument, units: string) =>
    ["oxygen", start, "air", end, 32, units] as const;
  refuses([
    ["STOPAT", fill(0, 220, "psi"), /^#VALUE! endPressure: 220 psi\? For bar write "bar"/],
    ["STOPAT", fill(0, "220", "psi"), /^#VALUE! endPressure: 220 psi\? For bar write "bar"/],
    ["STOPAT", fill(0, 349.9, "us"), /^#VALUE! endPressure: 349\.9 psi\?/],
    ["STOPAT", fill(0, 0, "bar"), /^#VALUE! endPressure: blank \(or 0\)/],
    ["STOPAT", fill(0, 450.1, "bar"), /^#VALUE! endPressure: 450\.1 bar is above 450 bar \(6527 psi\)/],
    ["STOPAT", fill(0, 6528, "psi"), /^#VALUE! endPressure: 6528 psi is above 450 bar \(6527 psi\)/],
    ["STOPAT", fill(0, "460 bar", "psi"), /^#VALUE! endPressure: 460 bar is above/],
    ["STOPAT", fill(-1, 200, "bar"), /^#VALUE! startPressure: A gauge cannot read -1 bar/],
    ["STOPAT", fill("full", 200, "bar"), /^#VALUE! startPressure: "full" is not a pressure/],
    [
      "STOPAT",
      fill("2.500 psi", 200, "bar"),
      /^#VALUE! startPressure: "2\.500" can be a decimal or a count of thousands/,
    ],
    ["STOPAT", fill(true, 200, "bar"), /^#VALUE! startPressure: TRUE is not a pressure/],
    ["SETTLED", ["empty", "air", 20, 30, "bar"], /^#VALUE! pressure: "empty" is not a pressure/],
    [
      "SETTLED",
      [200, "air", 20, 70.1, "bar"],
      /^#VALUE! toTemperature: .*outside -20 to 70 °C \(-4 to 158 °F\)/,
    ],
    ["SETTLED", [3000, "air", -5, 70, "psi"], /^#VALUE! fromTemperature: .*outside -20 to 70 °C/],
    ["SETTLED", [200, "air", null, 20, "bar"], /^#VALUE! fromTemperature: blank or left out/],
    ["SETTLED", [200, "air", "20 °K", 20, "bar"], /^#VALUE! fromTemperature: "20 °K" is not a number/],
    ["SETTLED", [200, "air", 0, 20, "bar"], /^#VALUE! fromTemperature: 0 may be a blank cell\. Write "0 °C"/],
    ["STOPAT", ["oxygen", 50, 32, 200, 36, "bar", "air", 0], /^#VALUE! temperature: 0 may be a blank cell/],
    ["END", [60, "18/45", "m", 0], /^#VALUE! oxygenNarcotic: 0 may be a blank cell: write TRUE or FALSE/],
  ]);

  it("takes the limits themselves", () => {
    expect(error("STOPAT", ...fill(0, 350, "psi"))).toMatch(/^no error/);
    expect(error("STOPAT", ...fill(0, "220 psi", "psi"))).toMatch(/^no error/);
    expect(error("STOPAT", ...fill(0, 450, "bar"))).toMatch(/^no error/);
    expect(error("STOPAT", ...fill(0, 6527, "psi"))).toMatch(/^no error/);
    expect(error("SETTLED", 200, "air", -20, 70, "bar")).toMatch(/^no error/);
    expect(error("SETTLED", 3000, "air", -4, 158, "psi")).toMatch(/^no error/);
  });
});

describe("the start of a fill", () => {
  refuses([
    ["STOPAT", ["oxygen", 0, null, 200, 32, "bar"], /^#VALUE! startMix: blank\. .*"empty"/],
    ["STOPAT", ["oxygen", 0, 0, 200, 32, "bar"], /^#VALUE! startMix: blank\./],
    ["STOPAT", ["oxygen", 50, "", 200, 32, "bar"], /^#VALUE! startMix: blank\./],
    ["MIXAFTER", [50, 0, 200, "air", "bar"], /^#VALUE! startMix: blank\./],
    ["STOPAT", ["oxygen", "empty", "EAN32", 200, 32, "bar"], /^#VALUE! startMix: EAN32 beside "empty"/],
  ]);
});

describe("what physics or a limit forbids", () => {
  refuses([
    ["MOD", ["oxygen", "m", 0.9], /^#VALUE! oxygen is above a ppO2 of 0\.9 even at the surface/],
    ["MOD", ["helium", "m"], /^#VALUE! .*no oxygen/],
    ["BESTMIX", [5000, "m"], /^#VALUE! /],
    [
      "STOPAT",
      ["oxygen", "empty", null, 100, "oxygen", "bar"],
      /^#VALUE! oxygen cannot be reached.*best.*99\.2/,
    ],
    ["FILLSTEPS", [100, "18/45", 200, "EAN32", "bar"], /./],
    ["STOPAT", ["oxygen", "empty", null, 200, 32, "bar", "EAN50"], /^#VALUE! EAN32 cannot be reached/],
    ["STOPAT", ["oxygen", "empty", null, 200, 32, "bar", "air", 20, "18/45"], /^#VALUE! .*oxygen supply/],
    ["ADDGAS", ["oxygen", 150, "EAN50", 200, "EAN32", "bar"], /^#VALUE! Drain to .* first/],
    ["MIXAFTER", [200, "EAN32", 80, "air", "bar"], /^#VALUE! /],
    ["TOPWITH", [200, "EAN32", 80, "EAN36", "bar"], /^#VALUE! /],
    ["TOPWITH", [100, "EAN32", 200, "EAN80", "bar"], /^#VALUE! /],
    ["DRAINTO", [100, "EAN32", 200, "EAN40", "bar"], /^#VALUE! /],
    ["DECANT", [15, 100, 3, 200, "air", "bar"], /^#VALUE! The donor stands below the receiver/],
    ["INJECT", ["EAN41", 100], /^#VALUE! .*above 40 %/],
    ["INJECT", ["18/45", 100], /^#VALUE! .*helium/],
    ["INJECT", [15, 100], /^#VALUE! .*leaner than air/],
    ["INJECT", [32, 0], /^#VALUE! .*above 0/],
  ]);
});

describe("tables", () => {
  refuses([
    ["MIXOF", [null, "bar"], /^#VALUE! steps: blank or left out/],
    ["MIXOF", [steps(["oxygen", 20], ["air", 200]), "bar"], /^#VALUE! .*Row 1 is what is in the cylinder/],
    ["MIXOF", [steps(["air", 200], ["air", 100]), "bar"], /^#VALUE! Row 2: .*drain/],
    ["MIXOF", [steps(["air", 0], ["xenon", 100]), "bar"], /^#VALUE! steps: row 2: "xenon" is not a mix/],
    ["MIXOF", [steps(["air", 0], [null, 100]), "bar"], /^#VALUE! steps: row 2: the gas is blank/],
    [
      "MIXOF",
      [steps(["air", 0], ["oxygen", null]), "bar"],
      /^#VALUE! steps: row 2: the gauge reading is blank/,
    ],
    [
      "MIXOF",
      [steps(["air", 0, 20], ["oxygen", 40, 0]), "bar"],
      /^#VALUE! steps: row 2: a temperature of 0 may be a blank/,
    ],
    ["MIXOF", [steps(["air"], ["oxygen"]), "bar"], /^#VALUE! steps: row 1: give two or three columns/],
    ["MIXOF", ["air", "bar"], /^#VALUE! steps: /],
    ["MIXOF", [steps(["empty", 50], ["oxygen", 100]), "bar"], /^#VALUE! steps: row 1: "empty" means/],
    [
      "FILLCOST",
      [12, "empty", null, 200, 32, steps(["top", 1]), "bar"],
      /^#N\/A .*oxygen gas.*no row "oxygen"/,
    ],
    [
      "FILLCOST",
      [12, "empty", null, 200, 32, steps(["oxygen", -1]), "bar"],
      /^#VALUE! prices: row 1: the price of "oxygen"/,
    ],
    [
      "FILLCOST",
      [12, "empty", null, 200, 32, steps(["nitrox", 1]), "bar"],
      /^#VALUE! prices: row 1: "nitrox" is not priced/,
    ],
    [
      "FILLCOST",
      [12, "empty", null, 200, 32, steps(["top", 1], ["Top", 2]), "bar"],
      /^#VALUE! prices: row 2: "top" stands there twice/,
    ],
    [
      "FILLCOST",
      [12, "empty", null, 200, 32, steps(["top", 1, 2]), "bar"],
      /^#VALUE! prices: give two columns/,
    ],
  ]);

  it("MIXOF: a vented cylinder is air at 0, or empty", () => {
    const rest = ["oxygen", 40] as const;
    const vented = error("MIXOF", steps(["air", 0], rest), "bar");
    expect(vented).toMatch(/^no error/);
    expect(error("MIXOF", steps(["empty", 0], rest), "bar")).toBe(vented);
    expect(error("MIXOF", steps(["air", "empty"], rest), "bar")).toBe(vented);
    expect(error("MIXOF", steps([null, "empty"], rest), "bar")).toBe(vented);
    expect(
      error("MIXOF", steps(["air", 0], rest, [null, null], [0, 0]), "bar"),
      "blank rows at the end",
    ).toBe(vented);
  });
});

describe("cylinders, stamps and labels", () => {
  refuses([
    ["FREEGAS", [80, 200, "air", "bar"], /^#VALUE! cylinder: 80 L is no scuba cylinder/],
    ["FREEGAS", ["80", 200, "air", "bar"], /^#VALUE! cylinder: 80 L is no scuba cylinder/],
    ["FREEGAS", [0, 200, "air", "bar"], /^#VALUE! cylinder: /],
    ["FREEGAS", ["AL999", 200, "air", "bar"], /^#N\/A cylinder: /],
    ["TESTDATE", ["06/09"], /^#N\/A .*can be 2006-09 or 2009-06/],
    ["TESTDATE", ["soon"], /^#VALUE! .*not a test date/],
    ["TESTDATE", [2019], /^#VALUE! .*year without its month/],
    ["TESTDATE", ["06/09", "day first"], /^#VALUE! order: .*"month first" or "year first"/],
    ["HYDRODUE", ["2021/10", "ZZ"], /^#VALUE! rules: There are no rules for "ZZ"/],
    ["HYDRODUE", ["2021/10", null], /^#VALUE! rules: blank or left out/],
    ["HYDRODUE", ["2021/10", "US", "NONE"], /^#N\/A .*name no class "NONE"/],
    ["HYDRODUE", ["2021/10", "US", null, "maybe"], /^#VALUE! stampMeans: /],
    ["LABELTEXT", [200, null, "R.", "2026-10-31", "C-1", "bar"], /^#VALUE! analysedMix: blank or left out/],
    ["LABELTEXT", [200, 32, null, "2026-10-31", "C-1", "bar"], /^#VALUE! analysedBy: blank or left out/],
    ["LABELTEXT", [200, 32, 7, "2026-10-31", "C-1", "bar"], /^#VALUE! .*a plan is not a label/],
    ["LABELTEXT", [200, 32, "R.", "10/11/2026", "C-1", "bar"], /^#N\/A fillDate: .*day or month first/],
    ["LABELTEXT", [200, 32, "R.", "2026-10-31", 0, "bar"], /^#VALUE! serial: blank/],
  ]);
});
