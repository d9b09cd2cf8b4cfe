import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readCylinderSize } from "../../src/cylinders/readCylinderSize";
import { Refusal } from "../../src/gas/refusal";

/* Volumes: US college scuba handbook p. 5 (cubic inches), and what is stamped on the metric ones. */
describe("a cylinder's size", () => {
  it.each([
    ["AL80", 11.1, 1],
    ["al 80", 11.1, 1],
    ["Aluminum 80", 11.1, 1],
    ["S80", 11.1, 1],
    ["HP100", 12.9, 1],
    ["LP85", 13.2, 1],
    ["Steel 72", 12, 1],
    ["12L232", 12, 1],
    ["12 L 232 bar", 12, 1],
    ["12L/232", 12, 1],
    ["12/232", 12, 1],
    ["2x200", 2, 1],
    [12, 12, 1],
    ["12", 12, 1],
    ["8,5", 8.5, 1],
    ["12 L", 12, 1],
    [" 12\t L ", 12, 1],
    ["8.25", 8.25, 1],
    ["12,25 l", 12.25, 1],
    ["8,5 L/300", 8.5, 1],
    ["12L300", 12, 1],
    [40, 40, 1],
    // a twin set counts both its cylinders
    ["D12", 24, 2],
    ["2x12", 24, 2],
    ["12+12", 24, 2],
    ["twin 7s", 14, 2],
    ["D8.5", 17, 2],
    ["2x8", 16, 2],
    ["2×8", 16, 2],
    ["2xAL80", 22.2, 2],
    ["double LP85s", 26.4, 2],
  ])("%s is %d L in %d", (size, waterVolumeL, count) => {
    const read = readCylinderSize(size);
    expect(read.waterVolumeL).toBeCloseTo(waterVolumeL, 9);
    expect(read.count).toBe(count);
  });

  it.each([
    "S80 / LP85 / HP100",
    "350 cu ft",
    "15 LB",
    "AL",
    "",
    "twin D12",
    "12 or 15",
    "a 12 L",
    "12;5 L",
    "big twin 7",
    "barrel",
  ])("%j names no volume: unknown", (size) => {
    expect(refusalOf(size)).toBe("unknown");
  });

  it.each([80, "80", "41", "72", 0, -12, "-12", NaN, Infinity])("%s litres cannot be", (size) => {
    expect(refusalOf(size)).toBe("unusable");
  });

  it("is said to be blank, unknown or impossible, and what to write", () => {
    expect(() => readCylinderSize("  ")).toThrow(
      "The size is blank: write the water volume in litres, or a size such as AL80.",
    );
    expect(() => readCylinderSize("Steel  99 ")).toThrow(
      '"Steel 99" is no size we know the volume of: write the water volume in litres, or a size such as AL80.',
    );
    expect(() => readCylinderSize("x".repeat(61))).toThrow(`"${"x".repeat(60)}" is no size`);
    expect(() => readCylinderSize(0)).toThrow(
      "A cylinder of 0 L cannot be: write its water volume in litres, such as 12.",
    );
    expect(() => readCylinderSize("80")).toThrow(
      "80 L is no scuba cylinder: write the water volume in litres, or name the size, such as AL80.",
    );
  });

  it("is named as it was written, except where it is litres", () => {
    expect(readCylinderSize(" Al  80 ").name).toBe("Al 80");
    expect(readCylinderSize("2x 8").name).toBe("2x 8");
    expect(readCylinderSize("12").name).toBeUndefined();
  });

  it("never answers anything but a size or a refusal", () => {
    const sizeLike = fc.string({ unit: fc.constantFrom(..."0123456789xXdDlLaAhHpP/+., ") });
    fc.assert(
      fc.property(fc.oneof(sizeLike, fc.double()), (size) => {
        const refused = refusalOf(size);
        expect(refused).not.toBe("crashed");
        if (refused === "read") expect(readCylinderSize(size).waterVolumeL).toBeGreaterThan(0);
      }),
    );
  });
});

function refusalOf(size: string | number): string {
  try {
    readCylinderSize(size);
    return "read";
  } catch (thrown) {
    return thrown instanceof Refusal ? thrown.kind : "crashed";
  }
}
