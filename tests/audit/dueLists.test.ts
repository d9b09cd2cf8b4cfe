import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { dueLists } from "../../src/audit/lists/dueLists";
import { countryRules } from "../../src/cylinders/countryRules";
import { cellName } from "../../src/sheet/sheet";
import { logOf, onDay, type TestRow } from "./sheets";

const cylinder = (serial: string, change: TestRow = {}): TestRow => ({
  Serial: serial,
  Owner: "C-014",
  Class: "3AL",
  Made: "2014/03",
  Hydro: "2024/10",
  Visual: "2026/10",
  "O2 rating": "40",
  ...change,
});

function lists(register: readonly TestRow[], country = "US") {
  const fills = [{ Date: onDay("2026-01-05"), Serial: "S1", "End psi": 3000 }];
  return dueLists(logOf(fills, register), countryRules(country), Temporal.PlainDate.from("2026-11-15"));
}

describe("due lists", () => {
  it("say of a hydro that never was that it counts from the making", () => {
    const { outOfDate } = lists([cylinder("S1", { Hydro: null }), cylinder("S2", { Hydro: "2020/05" })]);
    expect(outOfDate.map(({ serial, last, sinceManufacture }) => [serial, last, sinceManufacture])).toEqual([
      ["S1", "2014-03", true],
      ["S2", "2020-05", false],
    ]);
  });

  it("say what keeps a date from being known, and at which cell", () => {
    const { notKnown } = lists([
      cylinder("S1", { Owner: null, Visual: null, Hydro: null, Made: null }),
      cylinder("S2", { Owner: "C-002", Visual: "2026/12", Hydro: "2026/12", Made: null }),
      cylinder("S3"),
      cylinder("S3", { Made: "2003/07" }),
      cylinder("S4", { Class: "3ZZ" }),
      cylinder("S5", { "O2 rating": "smudged", Hydro: "smudged" }),
    ]);
    expect(
      notKnown.map(
        ({ owner, serial, test, cell, why }) =>
          `${owner ?? "nobody"} ${serial} ${test} ${cellName(cell)}: ${why}`,
      ),
    ).toEqual([
      "C-002 S2 hydro E3: the only hydro on record is later than the day of the list",
      "C-002 S2 visual F3: the only visual on record is later than the day of the list",
      "C-014 S3 hydro A5: serial stands for two cylinders in the register",
      'C-014 S4 hydro C6: The rules of the United States name no class "3ZZ": write it as stamped, such as 3AL.',
      "C-014 S5 hydro E7: “smudged” is not known. Say what it means.",
      "nobody S1 hydro E2: hydro is blank",
      "nobody S1 visual F2: visual is blank",
    ]);
  });

  it("name no visual where the country asks for none", () => {
    const { outOfDate, dueWithin, notKnown } = lists([cylinder("S1", { Visual: null })], "IT");
    const tests = [...outOfDate, ...dueWithin.flatMap(({ entries }) => entries), ...notKnown].map(
      ({ test }) => test,
    );
    expect(tests).toEqual(["hydro"]);
  });

  it("go by shop number where a log has no serials, one customer's number 12 apart from another's", () => {
    const row = {
      Date: onDay("2026-10-05"),
      "Shop number": "pd01",
      Hydro: "2020/05",
      Visual: "2026/10",
      "End psi": 3000,
    };
    const of = (fills: readonly TestRow[], register: readonly TestRow[] = []) =>
      dueLists(
        logOf(fills, register),
        countryRules("US"),
        Temporal.PlainDate.from("2026-11-15"),
      ).outOfDate.map(({ serial, owner, last }) => `${serial} ${owner ?? "nobody"} ${last}`);
    expect(of([row, { ...row, Date: onDay("2026-10-09"), "Shop number": "PD01" }])).toEqual([
      "pd01 nobody 2020-05",
    ]);
    expect(
      of([
        { ...row, Owner: "C-001" },
        { ...row, Owner: "C-002", Hydro: "2019/01" },
      ]),
    ).toEqual(["pd01 C-001 2020-05", "pd01 C-002 2019-01"]);
    const register = [{ "Shop number": "PD02", Class: "3AL", Hydro: "2020/06", Visual: "2026/10" }];
    expect(of([{ Date: row.Date, "Shop number": "PD09", "End psi": 3000 }], register)).toEqual([
      "PD02 nobody 2020-06",
    ]);
  });
});
