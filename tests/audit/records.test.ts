import { describe, expect, it } from "vitest";
import { audit } from "../../src/audit/audit";
import type { AuditOptions } from "../../src/audit/shop/shop";
import { countryRules } from "../../src/cylinders/countryRules";
import { readLog } from "../../src/log/readLog";
import { cellName, type Sheet } from "../../src/sheet/sheet";
import { auditOf, FULL, logOf, onDay, sheetOf, SHOP, verdictOf, without, type TestRow } from "./sheets";

/* Rules of the records themselves, through real sheets. */

/** Of several sheets of fills. */
const of = (sheets: readonly Sheet[], options = SHOP) =>
  audit(readLog(sheets, { units: "us", stampOrder: "month first" }), countryRules("US"), options);

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

  it("names every cell of six rows, one row of a twin set once, and each sheet for itself", () => {
    expect(found(6).map(({ message }) => message)).toEqual([
      "Nothing says whether the end pressure is in psi or bar. In 6 rows: AG2, AG3, AG4, AG5, AG6, AG7.",
    ]);
    const twins = open(2).map((row, at) => ({ ...row, Serial: `AB100${at} / CD200${at}` }));
    const sheets = [sheetOf("Twins", twins), sheetOf("Air", open(1))];
    expect(
      of(sheets)
        .findings.filter(({ rule }) => rule === "R06")
        .map(({ cell, message }) => `${cell.sheet}: ${message}`),
    ).toEqual([
      "Twins: Nothing says whether the end pressure is in psi or bar. In 2 rows: AG2, AG3.",
      "Air: Nothing says whether the end pressure is in psi or bar. In 1 row: AG2.",
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

describe("a period", () => {
  const NOVEMBER: AuditOptions = { ...SHOP, period: { from: "2026-11-01", to: "2026-11-30" } };
  const unsigned: TestRow = { "Analysed by": null, "External check": { error: "#REF!" } };
  it.each<[date: TestRow[string], counts: boolean]>([
    [onDay("2026-10-31"), false],
    [onDay("2026-11-01"), true],
    [onDay("2026-11-30"), true],
    [onDay("2026-12-01"), false],
    // may have been made then
    ["see book", true],
    [null, true],
  ])("from 1 to 30 November: a fill of %j counts: %s", (date, counts) => {
    const change = { ...unsigned, Date: date };
    expect(verdictOf("G09", change, { options: NOVEMBER })).toBe(counts ? "breach" : "nothing");
    expect(verdictOf("V18", change, { options: NOVEMBER })).toBe(
      counts ? "not checked: external check cannot be read" : "nothing",
    );
  });

  it("counts no fill outside it by a rule for which there is no column, and names no rule where no fill is in it", () => {
    const rows = [FULL, { ...FULL, Date: onDay("2026-12-01") }].map((row) => without(row, "Certification"));
    const lacks = (period: AuditOptions["period"]) =>
      auditOf(rows, [], "US", { ...SHOP, period }).notChecked.map(({ rule, count }) => `${rule} ${count}`);
    expect(lacks(undefined)).toEqual(["G05 2", "G10 2"]);
    expect(lacks(NOVEMBER.period)).toEqual(["G05 1", "G10 1"]);
    expect(lacks({ from: "2025-01-01", to: "2025-12-31" })).toEqual([]);
  });

  it("keeps a cylinder on the recall list whose last fill was before it", () => {
    const before = { ...FULL, Date: onDay("2026-10-31"), "Analysed O2 %": null };
    const { findings, recall } = auditOf([before], [], "US", NOVEMBER);
    expect(findings).toEqual([]);
    expect(recall.map(({ serial }) => serial)).toEqual(["AB1234"]);
  });
});

describe("a column that only one of the sheets has", () => {
  const air = without(FULL, "Consent", "Signature", "Planned depth (ft)");
  const sheets = [
    sheetOf("Air", [
      { ...air, Serial: "AB1" },
      { ...air, Serial: "AB2", Date: onDay("2026-10-01") },
    ]),
    sheetOf("Nitrox", [{ ...FULL, Consent: null, Signature: null }]),
  ];
  const said = (options: AuditOptions) => {
    const { findings, notChecked } = of(sheets, options);
    return [
      ...findings.map(({ rule, cell }) => `${rule} ${cell.sheet} ${cellName(cell)}`),
      ...notChecked.map(({ rule, count, why, cells }) => `${rule} ${count} ${why} ${cells.length}`),
    ];
  };

  it("is blank there, and missing in the others, whose fills are not checked", () => {
    expect(said(SHOP)).toEqual([
      "G09 Nitrox U2",
      "R09 Nitrox F2",
      "G09 2 the log has no column for signature 0",
      "R09 2 the log has no column for consent 0",
    ]);
  });

  it("of a period, those of its fills only", () => {
    expect(said({ ...SHOP, period: { from: "2026-11-01", to: "2026-11-30" } }).slice(2)).toEqual([
      "G09 1 the log has no column for signature 0",
      "R09 1 the log has no column for consent 0",
    ]);
  });

  it("is missing too where the row says nothing of its cylinder", () => {
    const bare = without(FULL, "Class", "Material", "Alloy", "Made", "Service psi", "Hydro", "Visual", "Eddy current", "O2 cleaned", "O2 rating", "Status", "Neck thread", "Valve thread"); // prettier-ignore
    const { findings, notChecked } = of([
      sheetOf("Air", [bare]),
      sheetOf("Nitrox", [{ ...FULL, Serial: "CD1" }]),
    ]);
    // which leads to the serial, as there is nowhere else
    expect(findings.map(({ rule, cell }) => `${rule} ${cell.sheet} ${cellName(cell)}`)).toEqual([
      "V09 Air C2",
    ]);
    const lacks = notChecked.map(({ rule, count, why }) => `${rule} ${count} ${why}`);
    for (const lack of ["V01 1 the log has no column for hydro", "V03 1 the log has no column for service pressure", "V05 1 the log has no column for class"]) expect(lacks).toContain(lack); // prettier-ignore
  });
});

describe("what the audit found", () => {
  const unsigned = (serial: string, date: TestRow[string]): TestRow => ({
    ...FULL,
    Serial: serial,
    Date: date,
    "Analysed by": null,
  });

  it("is told of each fill, the earliest first, those without a date last", () => {
    const rows = [
      unsigned("AB1", "see book"),
      unsigned("AB2", onDay("2026-11-12")),
      unsigned("AB3", onDay("2026-11-14")),
      unsigned("AB4", onDay("2026-11-10")),
      unsigned("AB5", null),
      unsigned("AB6", onDay("2026-11-11")),
    ];
    expect(
      auditOf(rows, [], "US", SHOP).findings.map(({ rule, serial, fillDate }) =>
        [rule, serial, fillDate].join(" "),
      ),
    ).toEqual([
      "G09 AB4 2026-11-10",
      "G09 AB6 2026-11-11",
      "G09 AB2 2026-11-12",
      "G09 AB3 2026-11-14",
      "G09 AB1 ",
      "G09 AB5 ",
    ]);
  });

  it("in the register is told of each cylinder once", () => {
    const fill = (serial: string): TestRow => ({
      Date: onDay("2026-11-12"),
      Serial: serial,
      "End psi": 3000,
    });
    const cylinder = (serial: string): TestRow => ({
      Serial: serial,
      Class: "3AL",
      Hydro: null,
      Visual: "2026/05",
    });
    const { findings, notChecked } = auditOf(
      [fill("AB1"), fill("CD2"), fill("CD2")],
      [cylinder("AB1"), cylinder("CD2"), { ...cylinder("EF3"), Hydro: "2024/10" }],
    );
    expect(findings.map(({ rule, cell }) => `${rule} ${cell.sheet} ${cellName(cell)}`)).toEqual([
      "V09 Cylinders C2",
      "V09 Cylinders C3",
    ]);
    const [hydro] = notChecked.filter(({ rule }) => rule === "V01");
    expect([hydro?.count, hydro?.cells.map(cellName)]).toEqual([3, ["C2", "C3"]]);
  });

  it("and what it could not check is counted whole, and twenty cells of it are shown", () => {
    const rows = Array.from({ length: 21 }, (_, at) => ({ ...FULL, Serial: `AB${at}`, Hydro: "see sticker", "External check": { error: "#REF!" } })); // prettier-ignore
    const shown = (...sheets: readonly (readonly TestRow[])[]) =>
      of(sheets.map((each, at) => sheetOf(`Book ${at}`, each))).notChecked.map(
        ({ rule, count, cells }) => `${rule} ${count} ${cells.length}`,
      );
    // in the order of harm, whichever came first
    expect(shown(rows)).toEqual(["V01 21 20", "V18 21 20", "O05 21 20"]);
    expect(shown(rows.slice(0, 20))).toEqual(["V01 20 20", "V18 20 20", "O05 20 20"]);
    expect(shown(rows.slice(0, 2), rows.slice(2, 3))).toEqual(["V01 3 3", "V18 3 3", "O05 3 3"]);
    const { Hydro, ...late } = rows[0]!;
    expect(
      shown([
        { ...late, Hydro: "2024/10" },
        { ...FULL, Hydro },
      ]),
    ).toEqual(["V01 1 1", "V18 1 1", "O05 1 1"]);
  });
});

describe("a twin set", () => {
  const twin = { ...FULL, Serial: "AB1234 / CD5678" };
  const found = (change: TestRow) =>
    auditOf([{ ...twin, ...change }]).findings.map(({ rule, serial }) => `${rule} ${serial}`);
  it("what is wrong with the fill is told once, what is wrong with a cylinder for each", () => {
    expect(found({ "Analysed by": null })).toEqual(["G09 AB1234"]);
    expect(found({ "End psi": 3500 })).toEqual(["V03 AB1234"]);
    const fill = { Date: onDay("2026-11-12"), Serial: "AB1 / CD2", "End psi": 3000 };
    const late = { Class: "3AL", Hydro: "2019/10", Visual: "2026/05" };
    const { findings } = auditOf(
      [fill],
      ["AB1", "CD2"].map((Serial) => ({ Serial, ...late })),
    );
    expect(findings.map(({ rule, serial }) => `${rule} ${serial}`)).toEqual(["V01 AB1", "V01 CD2"]);
  });
});
