import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { labelText, type Label } from "../../src/depth/labelText";
import { mixture } from "../../src/gas/mixture";
import { absoluteBar } from "../../src/gas/units";

const LABEL: Label = {
  pressureBar: absoluteBar(3000, "us"),
  analysedMix: mixture(0.319),
  analysedBy: "R.",
  fillDate: Temporal.PlainDate.from("2026-10-31"),
  serial: "GP-0417",
  units: "us",
  maxPpO2: 1.4,
};

describe("a label", () => {
  it("names mix, MOD, pressure, serial, who analysed and when", () => {
    expect(labelText(LABEL)).toBe(
      "EAN31.9 · O2 31.9 % · MOD 111 ft at ppO2 1.4 · 3000 psi · serial GP-0417 · analysed by R. · 2026-10-31",
    );
  });

  it("rounds the MOD down, but not for float noise: EAN40 is 25 m", () => {
    expect(labelText({ ...LABEL, analysedMix: mixture(0.4), units: "metric" })).toContain("MOD 25 m");
    expect(labelText({ ...LABEL, analysedMix: mixture(0.32), units: "metric" })).toContain("MOD 33 m");
  });

  it("says above which depth a hypoxic mix must not be breathed, rounded up", () => {
    const label = labelText({ ...LABEL, analysedMix: mixture(0.11, 0.5), units: "metric" });
    expect(label).toContain("not to be breathed above 7 m");
    expect(labelText(LABEL)).not.toContain("breathed above");
  });

  it("is refused without a name, as a plan is not a label", () => {
    expect(() => labelText({ ...LABEL, analysedBy: "-" })).toThrow(/a plan is not a label/);
  });
});
