import { describe, expect, it } from "vitest";
import { cylinderRules } from "../../src/cylinders/cylinderClass";
import { countryRules } from "../../src/cylinders/countryRules";
import { pressureLimitBar } from "../../src/cylinders/pressureLimit";
import { readTestStamp } from "../../src/cylinders/readTestStamp";
import { absoluteBar, gaugeReading } from "../../src/gas/units";

/* 49 CFR 173.302a(b); PHMSA interpretation 13-0042: the plus belongs to the test, and to 3A and 3AA only. */
describe("how far a cylinder may be filled", () => {
  const limitPsi = (servicePsi: number, cylinderClass: string, stamp?: string): number =>
    gaugeReading(
      pressureLimitBar(
        absoluteBar(servicePsi, "us"),
        cylinderRules(countryRules("US"), { cylinderClass }),
        stamp === undefined ? undefined : readTestStamp(stamp),
      ),
      "us",
    );

  it.each([
    [2400, "3AA", "03 23+", 2640],
    [2250, "3A", "03 23+", 2475],
    [2400, "3AA", "03 23", 2400],
    [2400, "3AA", undefined, 2400],
    [3000, "3AL", "03 23+", 3000],
    [3442, "SP-STEEL", "03 23+", 3442],
  ])("%d psi, %s, stamped %s: %d psi", (service, cylinderClass, stamp, limit) => {
    expect(limitPsi(service, cylinderClass, stamp)).toBeCloseTo(limit, 9);
  });
});
