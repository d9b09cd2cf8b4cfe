import { describe, expect, it } from "vitest";
import type { Cylinder, Log } from "../../src/log/log";
import { readLog } from "../../src/log/readLog";
import { cylindersOf, joinRegister, testsOf } from "../../src/log/register";
import { sheetOf, type FixtureCell } from "./sheets";

const FILLS = ["Date", "Serial", "Tank #", "Start psi", "End psi"];
const REGISTER = ["Serial", "Tank #", "Made", "Hydro 1", "Hydro 2", "Hydro 3", "Visual", "VIP exp"];
const CYLINDERS: readonly (readonly FixtureCell[])[] = [
  ["A10001", "12", "6/04", "6/04", "7/09", "8/14", "5/25", "5/26"],
  ["K00482", "13", "6/04", "06/04, 07/09", "08/14, 09/16", null, "4/26", null],
  ["P327710", "14", "6/14", "6/24", null, null, "4/26", null],
  ["P327711", "14", "6/14", "6/24", null, null, "4/26", null],
  ["D55101 / D55102", "15", "6/14", "6/24", null, null, "4/26", null],
  ["K00482", "13", null, null, null, "9/19", null, null],
];

function read(...fills: readonly (readonly FixtureCell[])[]): Log {
  const rows = fills.map(([serial = null, number = null]) => ["2026-10-03", serial, number, 500, 3000]);
  const sheets = [sheetOf([FILLS, ...rows]), sheetOf([REGISTER, ...CYLINDERS], { name: "Register" })];
  return readLog(sheets, { stampOrder: "month first" });
}

function matches(serial: FixtureCell, number: FixtureCell = null) {
  const log = read([serial, number]);
  return cylindersOf(log.fills[0]!, joinRegister(log));
}

const months = (records: readonly Cylinder[], field: "hydro" | "visual") =>
  testsOf(records, field).map(({ reading }) =>
    reading.kind === "value" ? `${reading.value.month.toString()} ${reading.value.means}` : reading.kind,
  );

describe("the cylinder of a fill", () => {
  it("is found by its serial, however it is written", () => {
    for (const written of ["A10001", "a10001", "A-10001", "A 10001", "S/N A10001"])
      expect(matches(written)).toMatchObject([{ serial: "A10001", by: "serial", records: [{ row: 1 }] }]);
  });

  it("is found by its shop number only with a warning, and not where two cylinders have it", () => {
    expect(matches(null, "12")).toMatchObject([
      { serial: "A10001", by: "shop number", note: expect.stringContaining("Write the serial") as string },
    ]);
    expect(matches(null, "14")).toMatchObject([
      { serial: "", by: "nothing", note: expect.stringContaining("more than one") as string },
    ]);
  });

  it("is not found by a number that contradicts no serial, nor by no name at all", () => {
    expect(matches(null, "99")).toMatchObject([{ by: "nothing", records: [] }]);
    expect(matches("??")).toMatchObject([{ serial: "", by: "nothing" }]);
  });

  it.each([
    ["a letter for a digit", "AI0001", "A10001"],
    ["a zero for an O", "KOO482", "K00482"],
    ["a zero lost in front", "K0482", "K00482"],
    ["two characters swapped", "A10010", "A10001"],
    ["one character off", "A10007", "A10001"],
  ])("is suggested where its serial is a slip: %s", (_, slip, serial) => {
    expect(matches(slip)).toMatchObject([{ by: "nothing", records: [], suggestion: serial }]);
  });

  it("is not suggested where two would fit, nor where nothing is near", () => {
    expect(matches("P32771")[0]!.suggestion).toBeUndefined();
    expect(matches("P327719")[0]!.suggestion).toBeUndefined();
    expect(matches("Z99999")[0]!.suggestion).toBeUndefined();
  });

  it("is two cylinders where a twin set is written as two serials in one cell", () => {
    for (const written of ["A10001 / K00482", "A10001 & K00482", "A10001\nK00482", "A10001/K00482"])
      expect(matches(written).map(({ serial, by }) => [serial, by])).toEqual([
        ["A10001", "serial"],
        ["K00482", "serial"],
      ]);
  });

  it("is found by either serial of a set that the register keeps as one", () => {
    expect(matches("D55102")).toMatchObject([{ serial: "D55102", by: "serial", records: [{ row: 5 }] }]);
  });
});

describe("the tests of a cylinder over time", () => {
  it("are all kept: one per column, the next one due beside the last", () => {
    const [match] = matches("A10001");
    expect(months(match!.records, "hydro")).toEqual(["2004-06 test", "2009-07 test", "2014-08 test"]);
    expect(months(match!.records, "visual")).toEqual(["2025-05 test", "2026-05 due"]);
  });

  it("are all kept: several in one cell, and in several rows", () => {
    const [match] = matches("K00482");
    expect(months(match!.records, "hydro")).toEqual([
      "2009-07 test", "2004-06 test", "2016-09 test", "2014-08 test", "2019-09 test",
    ]); // prettier-ignore
  });

  it("stand in the fill's own row too, before those of the register", () => {
    const flat = sheetOf([[...FILLS, "Hydro"], ["2026-10-03", "A10001", null, 500, 3000, "8/19"]]); // prettier-ignore
    const log = readLog([flat, sheetOf([REGISTER, ...CYLINDERS], { name: "Register" })], {
      stampOrder: "month first",
    });
    const [match] = cylindersOf(log.fills[0]!, joinRegister(log));
    expect(months(match!.records, "hydro")).toEqual([
      "2019-08 test", "2004-06 test", "2009-07 test", "2014-08 test",
    ]); // prettier-ignore
  });
});
