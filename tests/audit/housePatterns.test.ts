import { describe, expect, it } from "vitest";
import { housePatterns, meanOf } from "../../src/audit/lists/housePatterns";
import { FULL, logOf, type TestRow } from "./sheets";

const TRIMIX: TestRow = { ...FULL, "Ordered mix": "18/45", "Analysed O2 %": 17.5, "Analysed He %": 44 };
const times = (count: number, row: TestRow): readonly TestRow[] => Array.from({ length: count }, () => row);
const ofPeople = (rows: readonly TestRow[]) =>
  housePatterns(logOf(rows))
    .patterns.filter(({ by }) => by === "filledBy")
    .map(({ name, gas, fills, meanPoints }) => [name, gas, fills, Number(meanPoints.toFixed(2))]);

describe("house patterns", () => {
  it("look at helium beside oxygen where both were ordered and analysed", () => {
    expect(ofPeople(times(5, TRIMIX))).toEqual([
      ["T.", "oxygen", 5, -0.5],
      ["T.", "helium", 5, -1],
    ]);
    const oxygenOnly = [["T.", "oxygen", 5, -0.5]];
    expect(ofPeople(times(5, { ...TRIMIX, "Analysed He %": null }))).toEqual(oxygenOnly);
    expect(ofPeople(times(5, { ...FULL, "Analysed O2 %": 31.5, "Analysed He %": 2 }))).toEqual(oxygenOnly);
  });

  it("leave out a blend that is a mistake in either gas, and only past three points", () => {
    const leftOut = (row: TestRow): number => housePatterns(logOf([row])).leftOut;
    expect(leftOut({ ...TRIMIX, "Analysed He %": 41 })).toBe(1);
    expect(leftOut({ ...TRIMIX, "Analysed O2 %": 14 })).toBe(1);
    expect(leftOut({ ...FULL, "Analysed O2 %": 35 })).toBe(0);
    expect(leftOut({ ...FULL, "Analysed O2 %": 28.9 })).toBe(1);
  });

  it.each<[string, TestRow, number]>([
    ["of nitrox", {}, 1],
    ["of nitrox, the method not written", { Method: null }, 1],
    ["that was not ordered", { "Ordered mix": null }, 0],
    ["that was not analysed", { "Analysed O2 %": null }, 0],
    ["whose analysis cannot be read", { "Analysed O2 %": "smudged" }, 0],
    ["that was filled as air, whatever was ordered", { Method: "air" }, 0],
    ["of air by another method", { "Ordered mix": "air", Method: "premix" }, 0],
  ])("count a blend %s: %j", (_what, change, blends) => {
    expect(housePatterns(logOf([{ ...FULL, ...change }])).blends).toBe(blends);
  });

  it("take a name in either case for one, and nobody for none", () => {
    const off = { "Analysed O2 %": 31.5 };
    const rows = [
      ...times(3, { ...FULL, ...off, "Filled by": " Robin " }),
      ...times(2, { ...FULL, ...off, "Filled by": "ROBIN" }),
      ...times(5, { ...FULL, ...off, "Filled by": null }),
      ...times(4, { ...FULL, ...off, "Filled by": "T." }),
    ];
    expect(ofPeople(rows)).toEqual([["Robin", "oxygen", 5, -0.5]]);
  });

  it("have the surest first", () => {
    const by = (name: string, ...analysed: number[]): readonly TestRow[] =>
      analysed.map((oxygen) => ({ ...FULL, "Filled by": name, Source: null, "Analysed O2 %": oxygen }));
    const rows = [
      ...by("level", 32, 32, 32, 32, 32),
      ...by("chance", 32.2, 31.9, 32.3, 31.8, 32),
      ...by("wide", 33, 32.5, 33.5, 32.8, 33.2),
      ...by("close", 32.5, 32.6, 32.4, 32.5, 32.5),
      ...by("always", 32.5, 32.5, 32.5, 32.5, 32.5),
    ];
    expect(ofPeople(rows).map(([name]) => name)).toEqual(["always", "close", "wide", "chance", "level"]);
  });

  it("are a bias on either side of zero, and not at it", () => {
    expect(meanOf([-0.1, -0.3, -0.5, -0.7, -0.9]).isBias).toBe(true);
    expect(meanOf([0, 0, 0]).isBias).toBe(false);
    expect(meanOf([-0.5, -0.5]).isBias).toBe(true);
  });
});
