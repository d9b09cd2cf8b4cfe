import { describe, expect, it } from "vitest";
import { audit } from "../../src/audit/audit";
import { countryRules } from "../../src/cylinders/countryRules";
import { auditOf, FULL, logOf, onDay, SHOP, verdictOf, without, type TestRow } from "./sheets";

/* Rules of the records themselves, through real sheets. */

type Case = readonly [change: TestRow, expected: string];
const table = (rule: string, cases: readonly Case[], country = "US", row = FULL): void => {
  it.each(cases)(`${rule} %j: %s`, (change, expected) => {
    expect(verdictOf(rule, change, { country, row })).toBe(expected);
  });
};

it("a log that says everything is judged by every rule, and nothing is found in a good fill", () => {
  expect(auditOf([FULL], [], "US", SHOP)).toEqual({
    findings: [],
    notChecked: [],
    fullyJudged: true,
    recall: [],
    doNotFill: [],
    overrides: [],
  });
});

describe("R03, a test before manufacture or in the future", () => {
  table("R03", [
    [{ Hydro: "2014/03" }, "nothing"],
    [{ Hydro: "2014/02" }, "breach"],
    [{ Visual: "2013/05" }, "breach"],
    [{ "O2 cleaned": "2012/05" }, "breach"],
    // the audit is of 30 November 2026
    [{ Visual: onDay("2026-11-30") }, "nothing"],
    [{ Hydro: "2026/11" }, "nothing"],
    [{ Hydro: "2026/12" }, "breach"],
    [{ Made: null, Hydro: "2014/02" }, "nothing"],
  ]);
  it("a test after the fill is no fault where it may have been made since", () => {
    const options = { ...SHOP, asOf: "2027-03-31" };
    expect(verdictOf("R03", { Hydro: "2026/12" }, { options })).toBe("nothing");
    expect(verdictOf("R03", { Hydro: "2026/12" }, { options: {} })).toBe("nothing");
  });
});

describe("R05, a stamp that can be read either way round", () => {
  it("is a fault of the register, told once, where neither country nor column gives the order", () => {
    const fill = (serial: string): TestRow => ({
      Date: onDay("2026-11-12"),
      Serial: serial,
      "End bar": 200,
      Mix: "air",
    });
    const cylinder = { Serial: "AB1234", Made: "2001/03", Hydro: "04/05", Visual: "2026/05" };
    const of = (stampOrder?: "month first") => {
      const log = logOf([fill("AB1234"), fill("AB1234")], [cylinder], { units: "metric", stampOrder });
      return audit(log, countryRules("GB"))
        .findings.filter(({ rule }) => rule === "R05")
        .map(({ severity, cell }) => [severity, cell.sheet, cell.row]);
    };
    expect(of()).toEqual([["warn", "Cylinders", 1]]);
    expect(of("month first")).toEqual([]);
  });
});

describe("R06, a pressure in the wrong unit", () => {
  table("R06", [
    [{ "End psi": 3000 }, "nothing"],
    [{ "End psi": 207 }, "warn"],
    [{ "End psi": 150 }, "warn"],
    [{ "End psi": 149 }, "nothing"],
    [{ "End psi": 330 }, "warn"],
    [{ "End psi": 331 }, "nothing"],
    [{ "End psi": "207 bar" }, "nothing"],
    // at the start a psi-cylinder may well have 200 psi
    [{ "Start psi": 200 }, "nothing"],
    [{ "End psi": 207, "Service psi": null }, "nothing"],
  ]);
  const bar = {
    ...without(FULL, "Start psi", "End psi", "Service psi"),
    "Service bar": 232,
    "Start bar": 50,
    "End bar": 230,
  };
  table(
    "R06",
    [
      [{}, "nothing"],
      [{ "End bar": 3000 }, "warn"],
      [{ "Start bar": 700 }, "warn"],
    ],
    "GB",
    bar,
  );
});

describe("R06, a column of pressures that may be psi or bar", () => {
  const bare = without(FULL, "Start psi", "End psi", "Service psi", "O2 added psi");
  const open = (rows: number): TestRow[] =>
    Array.from({ length: rows }, (_, at) => ({
      ...bare,
      Serial: `AB${1000 + at}`,
      "Start pressure": 50,
      "End pressure": 210 + at,
    }));
  const found = (rows: number) =>
    auditOf(open(rows), [], "US", SHOP).findings.filter(({ rule }) => rule === "R06");

  it("is told once, with the number of rows and the first cells", () => {
    expect(found(9)).toEqual([
      expect.objectContaining({
        severity: "warn",
        serial: "",
        fillDate: "",
        cell: expect.objectContaining({ row: 1 }) as unknown,
        message:
          "Nothing says whether the end pressure is in psi or bar. In 9 rows: AG2, AG3, AG4, AG5, AG6, AG7 and 3 more.",
        todo: "Write the unit into the heading of the column, or behind each number, such as 207 bar.",
      }),
    ]);
    expect(found(1).map(({ message }) => message)).toEqual([
      "Nothing says whether the end pressure is in psi or bar. In 1 row: AG2.",
    ]);
  });

  it("keeps every fill not checked by what needs the pressure", () => {
    const { notChecked } = auditOf(open(9), [], "US", SHOP);
    expect(notChecked.find(({ rule }) => rule === "V03")?.count).toBe(9);
  });
});

describe("R07, an end pressure not above the start", () => {
  table("R07", [
    [{ "Start psi": 2999, "End psi": 3000 }, "nothing"],
    [{ "Start psi": 3000, "End psi": 3000 }, "warn"],
    [{ "Start psi": 3000, "End psi": 500 }, "warn"],
    [{ "Start psi": null }, "not checked: start pressure is blank"],
    [{ "End psi": "full" }, "not checked: end pressure cannot be read"],
  ]);
});

describe("R09, the owner's consent", () => {
  table("R09", [
    [{ Consent: "yes" }, "nothing"],
    [{ Consent: null }, "note"],
    [{ Consent: null, Owner: "Shop" }, "nothing"],
    [{ Consent: null, Owner: "Rentals" }, "nothing"],
    [{ Consent: null, Owner: "school 3" }, "nothing"],
    [{ Consent: null, Owner: null }, "nothing"],
    // names that only begin like it, and a shop of somebody else's
    [{ Consent: null, Owner: "Shopley" }, "note"],
    [{ Consent: null, Owner: "Ownby" }, "note"],
    [{ Consent: null, Owner: "A. House" }, "note"],
  ]);
});

describe("R10, a year unused", () => {
  const twice = (first: string, visual: string) =>
    auditOf(
      [
        { ...FULL, Date: onDay(first), Visual: visual },
        { ...FULL, Date: onDay("2026-11-12"), Visual: visual },
      ],
      [],
      "GB",
    ).findings.filter(({ rule }) => rule === "R10").length;
  it("is a note where nobody looked inside since", () => {
    expect(twice("2025-11-11", "2025/06")).toBe(1);
    expect(twice("2025-11-12", "2025/06")).toBe(0);
    expect(twice("2025-11-11", "2026/02")).toBe(0);
  });
});

describe("a twin set", () => {
  const twin = { ...FULL, Serial: "AB1234 / CD5678" };
  const found = (change: TestRow) =>
    auditOf([{ ...twin, ...change }]).findings.map(({ rule, serial }) => `${rule} ${serial}`);
  it("what is wrong with the fill is told once, what is wrong with a cylinder for each", () => {
    expect(found({ "Analysed by": null })).toEqual(["G09 AB1234"]);
    expect(found({ "End psi": 3500 })).toEqual(["V03 AB1234"]);
  });
});
