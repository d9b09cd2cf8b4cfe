import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readOxygenService } from "../../src/cylinders/readOxygenService";
import { Refusal } from "../../src/gas/refusal";

const AIR_ONLY = { maxOxygen: undefined, oxygenClean: false };
const to = (maxOxygen: number) => ({ maxOxygen, oxygenClean: false });
const CLEAN = { maxOxygen: 1, oxygenClean: true };

/* Grades: NOAA Diving Manual ch. 15.12 (oxygen service, premix to 40 %); French G1 and G2, German TG marks. */
describe("an oxygen rating", () => {
  it.each([
    ["AIR", AIR_ONLY],
    ["Air only", AIR_ONLY],
    [" Air  only ", AIR_ONLY],
    [20, AIR_ONLY],
    ["compressed air", AIR_ONLY],
    ["DRUCKLUFT-TG", AIR_ONLY],
    ["21", AIR_ONLY],
    [0.21, AIR_ONLY],
    ["EAN40 max", to(0.4)],
    ["40", to(0.4)],
    ["40 %", to(0.4)],
    [40, to(0.4)],
    [0.4, to(0.4)],
    ["Nitrox 40", to(0.4)],
    ["max 40%", to(0.4)],
    ["G2", to(0.4)],
    ["Groupe 2", to(0.4)],
    ["23.5", to(0.235)],
    ["23,5", to(0.235)],
    ["Suitable for 23.5% only", to(0.235)],
    ["22", to(0.22)],
    ["50", to(0.5)],
    [" max  50 % ", to(0.5)],
    ["O2 clean", CLEAN],
    ["O2-CLEAN", CLEAN],
    ["oxygen service", CLEAN],
    ["SAUERSTOFF-TG", CLEAN],
    ["G1", CLEAN],
    ["100", CLEAN],
    ["100 %", CLEAN],
    [1, CLEAN],
    [100, CLEAN],
  ])("%s", (written, service) => {
    expect(readOxygenService(written)).toEqual(service);
  });

  it.each(["Y", "yes", "N", "no", "nitrox", "EAN", "clean", "02", "not O2 clean"])(
    "%s leaves the limit open: unknown",
    (written) => {
      expect(refusalOf(written)).toBe("unknown");
    },
  );

  it.each(["", "abc", "10/24", 3, 120, 0, -40, NaN, "40/100", "x".repeat(10_000)])(
    "%s is no rating",
    (written) => {
      expect(refusalOf(written)).toBe("unusable");
    },
  );

  it("that leaves the limit open, is none or cannot be says what to write", () => {
    expect(() => readOxygenService("nitrox")).toThrow(
      '"nitrox" does not say how rich: write AIR, 40 or O2 clean.',
    );
    expect(() => readOxygenService("x".repeat(61))).toThrow(
      `"${"x".repeat(60)}" is not an oxygen rating: write AIR, 40 or O2 clean.`,
    );
    expect(() => readOxygenService(0.04)).toThrow(
      "An oxygen rating of 0.04 cannot be: write AIR, 40 or O2 clean.",
    );
    expect(() => readOxygenService(0.05)).toThrow("An oxygen rating of 0.05 cannot be");
  });

  it("never answers anything but a rating or a refusal", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.double()), (written) => {
        const refused = refusalOf(written);
        if (refused === "read") {
          const { maxOxygen = 0.2 } = readOxygenService(written);
          expect(maxOxygen).toBeGreaterThanOrEqual(0.2);
          expect(maxOxygen).toBeLessThanOrEqual(1);
        } else expect(refused).not.toBe("crashed");
      }),
    );
  });
});

function refusalOf(written: string | number): string {
  try {
    readOxygenService(written);
    return "read";
  } catch (thrown) {
    return thrown instanceof Refusal ? thrown.kind : "crashed";
  }
}
