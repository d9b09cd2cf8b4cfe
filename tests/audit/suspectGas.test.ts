import { describe, expect, it } from "vitest";
import type { AirTest } from "../../src/audit/shop/shop";
import { suspectCylinders } from "../../src/audit/lists/suspectGas";
import { countryRules } from "../../src/cylinders/countryRules";
import { FULL, logOf, onDay, SHOP, type TestRow } from "./sheets";

/* After a bad test of the air: whom to call. Shares are amounts of gas, at 70 °F, by GERG-2008. */

const US = countryRules("US");
const FAILED: AirTest = { date: "2026-11-10", passed: false, source: "Bank A" };
const AROUND: readonly AirTest[] = [
  { date: "2026-10-01", passed: true },
  { date: "2026-11-20", passed: true },
];

const fill = (day: string | null, change: TestRow = {}): TestRow => ({
  ...FULL,
  Date: day === null ? "smudged" : onDay(day),
  "Start psi": 0,
  "Start mix": "air",
  ...change,
});

interface Setting {
  readonly failed?: AirTest;
  readonly airTests?: readonly AirTest[];
}

function listed(rows: readonly TestRow[], { failed = FAILED, airTests = AROUND }: Setting = {}) {
  return suspectCylinders(logOf(rows), US, failed, { ...SHOP, airTests: [...airTests] });
}

const serials = (rows: readonly TestRow[], setting?: Setting): readonly string[] =>
  listed(rows, setting).map(({ serial }) => serial);

describe("whom to call after a bad air test", () => {
  const days = [
    "2026-09-30",
    "2026-10-01",
    "2026-11-09",
    "2026-11-10",
    "2026-11-19",
    "2026-11-20",
    "2026-11-21",
  ];
  const rows = days.map((day) => fill(day, { Serial: `D${day.slice(5).replace("-", "")}` }));

  it("every fill from the good test before to the good test after", () => {
    expect(serials(rows)).toEqual(["D1001", "D1109", "D1110", "D1119"]);
    // with no good test after it, to the end; with none before, from the start
    expect(serials(rows, { airTests: [AROUND[0]!] })).toEqual([
      "D1001",
      "D1109",
      "D1110",
      "D1119",
      "D1120",
      "D1121",
    ]);
    expect(serials(rows, { airTests: [AROUND[1]!] })).toEqual(["D0930", "D1001", "D1109", "D1110", "D1119"]);
  });

  it("a good test on the day of the bad one clears what came after, not that day", () => {
    const airTests = [...AROUND, { date: "2026-11-10", passed: true }];
    expect(serials(rows, { airTests })).toEqual(["D1001", "D1109", "D1110"]);
  });

  it("another bad test clears nothing", () => {
    const airTests = [...AROUND, { date: "2026-11-15", passed: false }];
    expect(serials(rows, { airTests })).toEqual(["D1001", "D1109", "D1110", "D1119"]);
  });

  it("of one bank only its own; of all the air every source", () => {
    const banks = [
      fill("2026-11-01"),
      fill("2026-11-01", { Serial: "OTHER", Source: "Bank Z" }),
      fill("2026-11-01", { Serial: "OPEN", Source: null }),
    ];
    expect(
      listed(banks).map(({ serial, share, suspectFills: [first] }) => [
        serial,
        share.least > 0,
        first!.isCertain,
      ]),
    ).toEqual([
      ["AB1234", true, true],
      ["OPEN", false, false],
    ]);
    const ofAll = { failed: { date: "2026-11-10", passed: false } };
    expect(
      listed(banks, ofAll).map(({ serial, suspectFills: [first] }) => [serial, first!.isCertain]),
    ).toEqual([
      ["AB1234", true],
      ["OTHER", true],
      ["OPEN", true],
    ]);
  });

  it("a fill whose day cannot be read may be one of them", () => {
    const [found] = listed([fill(null)]);
    expect(found).toMatchObject({ share: { least: 0 }, lastFillDate: "" });
    expect(found!.share.most).toBeGreaterThan(0.99);
    expect(found!.suspectFills).toEqual([{ sheet: "Fills", row: 1, date: "", isCertain: false }]);
  });

  it("each fill of a cylinder without a serial, as no later one is known to be of the same", () => {
    const nameless = { Serial: null, Owner: "C-020" };
    const rows = [fill("2026-11-01", nameless), fill("2026-11-25", { ...nameless, Source: "Bank Z" })];
    expect(
      listed(rows).map(({ serial, owner, suspectFills }) => [serial, owner, suspectFills.length]),
    ).toEqual([["no serial", "C-020", 1]]);
    const numbered = rows.map((row) => ({ ...row, "Shop number": "12" }));
    expect(listed(numbered).map(({ serial, lastFillDate }) => [serial, lastFillDate])).toEqual([
      ["12", "2026-11-01"],
    ]);
  });
});

describe("how much of it is left", () => {
  const suspect = fill("2026-11-01");
  const clean = fill("2026-11-05", { Source: "Bank Z", "Start psi": 1500, "Start mix": null });
  const shareAfter = (...later: readonly TestRow[]) => listed([suspect, ...later])[0]?.share;

  it("goes by amounts, on what the fill before left", () => {
    // 1500 of 3000 psi of EAN32 at 70 °F: 0.5026 by pressure (absolute), 0.52 by amount
    expect(shareAfter(clean)!.most).toBeGreaterThan(0.51);
    expect(shareAfter(clean)!.most).toBeLessThan(0.53);
    expect(shareAfter(clean)!.least).toBe(shareAfter(clean)!.most);
    // helium in its place is more of the pressure, and so less of what is there at the end
    const light = shareAfter({ ...clean, "Start mix": "10/80" })!.most;
    expect(light).toBeLessThan(shareAfter(clean)!.most - 0.02);
  });

  it("is nothing once it was emptied and filled often enough", () => {
    const emptied = { ...clean, "Start psi": 0 };
    expect(shareAfter(emptied)!.most).toBeLessThan(0.01);
    expect(
      shareAfter(
        emptied,
        { ...emptied, Date: onDay("2026-11-06") },
        { ...emptied, Date: onDay("2026-11-07") },
        { ...emptied, Date: onDay("2026-11-08") },
      ),
    ).toBeUndefined();
  });

  it.each<[string, TestRow]>([
    ["the start pressure is not known", { "Start psi": null }],
    ["the end pressure is not known", { "End psi": null }],
    ["it was filled elsewhere in between", { "Start psi": 3200 }],
  ])("is open where %s", (_what, change) => {
    expect(shareAfter({ ...clean, ...change })!.least).toBe(0);
  });

  it("puts the largest share first, and of two that may be as large the surer", () => {
    const rows = [
      { ...suspect, Serial: "OPEN", Source: null },
      { ...suspect, Serial: "SURE" },
      { ...suspect, Serial: "HALF" },
      { ...clean, Serial: "HALF" },
    ];
    expect(serials(rows)).toEqual(["SURE", "OPEN", "HALF"]);
  });
});
