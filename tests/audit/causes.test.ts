import { describe, expect, it } from "vitest";
import { likeliestCause } from "../../src/audit/physics/causes";
import { oxygenAfter } from "../../src/audit/physics/massBalance";
import { workingsOf, type Workings } from "../../src/audit/physics/workings";
import { shopOf } from "../../src/audit/shop/shop";
import { walked } from "./walked";
import { countryRules } from "../../src/cylinders/countryRules";
import { mixture } from "../../src/gas/mixture";
import type { Units } from "../../src/gas/units";
import type { FilledCylinder } from "../../src/audit/judge/rule";
import { logOf, onDay, type TestRow } from "./sheets";

/*
 * A sound fill is written down with one slip. What the analyser showed is worked out from the sound fill, so that each
 * slip must be found again in the row that has it. How likely each is: common practice, no source.
 */

const SHOP = {
  us: shopOf(countryRules("US")),
  metric: { ...shopOf(countryRules("GB")), sources: [{ name: "Bank 32", mix: { oxygen: 0.32, helium: 0 } }] },
};

function read(row: TestRow, units: Units, before: readonly TestRow[] = []): FilledCylinder {
  const log = logOf([...before, row], [], { units, dateOrder: "day first" });
  return walked(log, SHOP[units]).at(-1)!;
}

function workings(filled: FilledCylinder, units: Units): Workings {
  const ways = workingsOf(filled, SHOP[units]);
  if ("kind" in ways) throw new Error(ways.why);
  return ways[0]!;
}

interface Slip {
  readonly units?: Units;
  readonly sound: TestRow;
  readonly slip: TestRow;
  readonly before?: readonly TestRow[];
  /** Points that the analyser shows beside the sound mix. */
  readonly off?: number;
}

function causeOf({ units = "metric", sound, slip, before = [], off = 0 }: Slip): string | undefined {
  const truth = oxygenAfter(workings(read(sound, units), units)).least + off / 100;
  const filled = read({ ...sound, ...slip }, units, before);
  return likeliestCause({
    filled,
    workings: workings(filled, units),
    analysed: mixture(truth),
    tolerance: 0.005,
  });
}

const NITROX: TestRow = {
  Date: onDay("2026-10-05"),
  Serial: "SB1001",
  Method: "partial pressure",
  "Start bar": 52,
  "Start mix": "EAN40",
  "Ordered mix": "EAN50",
  "O2 added bar": 63,
  "End bar": 213,
  "Gas temp C": 15,
};

const PSI: TestRow = {
  Date: onDay("2026-10-05"),
  Serial: "GP1001",
  Method: "partial pressure",
  "Start psi": 810,
  "Start mix": "EAN40",
  "Ordered mix": "EAN50",
  "O2 added psi": 920,
  "End psi": 2310,
  "Gas temp F": 70,
};

const TRIMIX: TestRow = {
  ...NITROX,
  "Start mix": "18/45",
  "Ordered mix": "18/45",
  "He added bar": 46,
  "O2 added bar": 21,
};
const STOPPED: TestRow = {
  Date: onDay("2026-10-05"),
  Serial: "SB1001",
  Method: "partial pressure",
  "Start bar": 52,
  "Start mix": "EAN40",
  "Ordered mix": "EAN50",
  "O2 stop bar": 113,
  "End bar": 213,
};

describe("the likeliest cause, of a row with one slip", () => {
  it.each<[string, Slip, string | undefined]>([
    ["none", { sound: NITROX, slip: {} }, undefined],
    [
      "end in psi among bar",
      { sound: { ...NITROX, "Start bar": 1, "O2 added bar": 3, "End bar": 14 }, slip: { "End bar": 203 } },
      "psi and bar mixed up (the end pressure is in psi)",
    ],
    [
      "oxygen in bar among psi",
      { units: "us", sound: PSI, slip: { "O2 added psi": 63.4 } },
      "psi and bar mixed up (the oxygen added is in bar)",
    ],
    [
      "start in bar among psi",
      { units: "us", sound: PSI, slip: { "Start psi": 55.8 } },
      "psi and bar mixed up (the start pressure is in bar)",
    ],
    [
      "helium in psi among bar",
      { sound: { ...TRIMIX, "He added bar": 6 }, slip: { "He added bar": 87 } },
      "psi and bar mixed up (the helium added is in psi)",
    ],
    [
      "start, digits swapped",
      { sound: NITROX, slip: { "Start bar": 25 } },
      "digits swapped (start pressure: 52 bar fits)",
    ],
    [
      "oxygen, digits swapped",
      { sound: NITROX, slip: { "O2 added bar": 36 } },
      "digits swapped (oxygen added: 63 bar fits)",
    ],
    [
      "end, digits swapped",
      { units: "us", sound: PSI, slip: { "End psi": 3210 } },
      "digits swapped (end pressure: 2,310 psi fits)",
    ],
    [
      "end read warm, where nothing says how warm",
      {
        sound: { ...NITROX, "Gas temp C": 43 },
        slip: { "Gas temp C": null },
      },
      "a hot reading (it fits an end read at about 43 °C)",
    ],
    [
      "oxygen's stop, digits swapped",
      { sound: STOPPED, slip: { "O2 stop bar": 131 } },
      "digits swapped (oxygen added: 113 bar fits)",
    ],
    [
      "a residue that was let out",
      { units: "us", sound: { ...PSI, "Start psi": 0, "O2 added psi": 600 }, slip: { "Start psi": 560 } },
      "the residue: the row fits a cylinder that was emptied before",
    ],
    [
      "a residue of air, on which another gas was topped",
      { sound: { ...NITROX, Source: "Bank 32", "Start mix": "air" }, slip: { "Start mix": "EAN80" } },
      "the residue: the row fits a start of air",
    ],
  ])("%s", (_what, row, cause) => {
    expect(causeOf(row)).toBe(cause);
  });

  it("is not heat where the end was read cold", () => {
    const sound = { ...NITROX, "Gas temp C": 43 };
    expect(causeOf({ sound, slip: { "Gas temp C": 15 } }) ?? "").not.toMatch(/hot/);
    expect(causeOf({ sound, slip: { "Gas temp C": null, "Settled bar": 213 } }) ?? "").not.toMatch(/hot/);
  });

  it("is looked for up to forty degrees, and from six", () => {
    const hot = (celsius: number): string | undefined =>
      causeOf({ sound: { ...NITROX, "Gas temp C": celsius }, slip: { "Gas temp C": null } });
    expect(hot(55)).toBe("a hot reading (it fits an end read at about 55 °C)");
    expect(hot(75) ?? "").not.toMatch(/hot/);
  });
});

describe("two rows that have each other's analysis", () => {
  const above: TestRow = { ...NITROX, Serial: "SB1002", "Ordered mix": "EAN60", "Analysed mix": "EAN50.6" };
  const swappedWith = (other: TestRow): string | undefined => {
    const filled = read({ ...NITROX, "Analysed mix": "EAN60" }, "metric", [other]);
    const expected = oxygenAfter(workings(filled, "metric")).least;
    expect(expected).toBeCloseTo(0.506, 3);
    return likeliestCause({
      filled,
      workings: workings(filled, "metric"),
      analysed: mixture(0.6),
      tolerance: 0.01,
    });
  };

  it("are named", () => {
    expect(swappedWith(above)).toBe("swapped with the row above, whose analysis fits here");
  });

  it.each<[string, TestRow]>([
    ["its analysis does not fit here", { "Analysed mix": "EAN48" }],
    ["what stands here is not what it ordered", { "Ordered mix": "EAN70" }],
    ["its analysis is what it ordered", { "Ordered mix": "EAN50" }],
    ["it was not analysed", { "Analysed mix": null }],
    ["it says no order", { "Ordered mix": null }],
  ])("are not where %s", (_what, change) => {
    expect(swappedWith({ ...above, ...change }) ?? "").not.toMatch(/swapped with/);
  });
});
