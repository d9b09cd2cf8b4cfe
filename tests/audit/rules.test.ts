import { describe, expect, it } from "vitest";
import { auditOf, onDay, type TestRow } from "./sheets";

/*
 * Every rule through real sheets: what it finds, what it does not find, and what it cannot judge. Due dates: a mark
 * holds to the end of the month that falls due (49 CFR 180.205(c), 180.213(d)); the yearly US visual is custom.
 */

/** A fill against which nothing can be said. */
const GOOD: TestRow = {
  Date: onDay("2026-11-12"),
  Serial: "AB1234",
  Method: "partial pressure",
  "Ordered mix": "EAN32",
  "Analysed O2 %": 32,
  "End psi": 3000,
  Made: "2014/03",
  Hydro: "2024/10",
  Visual: "2026/05",
  "O2 rating": "O2 clean",
};

/** What the audit says of one rule for this fill: its severity, "not checked: why", or "nothing". */
function verdict(rule: string, change: TestRow, country = "US"): string {
  const { findings, notChecked } = auditOf([{ ...GOOD, ...change }], [], country);
  const severities = findings.filter((finding) => finding.rule === rule).map(({ severity }) => severity);
  const lacks = notChecked.filter((lack) => lack.rule === rule).map(({ why }) => `not checked: ${why}`);
  return [...severities, ...lacks].join(", ") || "nothing";
}

describe("V01, filled past its hydro date", () => {
  it.each([
    // the last day of the month that falls due, and the first day after it
    ["2021/06", "2026-06-30", "nothing"],
    ["2021/06", "2026-07-01", "stop"],
    ["2020/02", "2025-02-28", "nothing"],
    ["2020/02", "2025-03-01", "stop"],
    ["2019/02", "2024-02-29", "nothing"],
    ["2019/02", "2024-03-01", "stop"],
    ["2020-02-29", "2025-02-28", "nothing"],
    ["2020-02-29", "2025-03-01", "stop"],
    ["2021/12", "2026-12-31", "nothing"],
    ["2021/12", "2027-01-01", "stop"],
    ["6 A1 23 21", "2026-06-30", "nothing"],
    ["6 A1 23 21", "2026-07-01", "stop"],
    // month only, in the month of the fill: counts as before it
    ["2026/11", "2026-11-01", "nothing"],
    ["2026-11-12", "2026-11-12", "nothing"],
    // only a test that came later: proves nothing, contradicts nothing
    ["2026-11-13", "2026-11-12", "not checked: the only hydro on record is later than the fill"],
    ["2026/12", "2026-11-12", "not checked: the only hydro on record is later than the fill"],
    ["see sticker", "2026-11-12", "not checked: hydro cannot be read"],
    ["N/A", "2026-11-12", "not checked: hydro cannot be read"],
    ["OUT", "2026-11-12", "not checked: hydro cannot be read"],
    // an external visual, whatever its date
    ["10/24 E", "2026-11-12", "not checked: hydro cannot be read"],
  ])("hydro %s, filled %s: %s", (hydro, date, expected) => {
    expect(verdict("V01", { Hydro: hydro, Date: onDay(date), Visual: date })).toBe(expected);
  });

  it.each([
    ["2021/11", "2026-11-30", "nothing"],
    ["2021/11", "2026-12-01", "stop"],
    [null, "2026-11-12", "not checked: hydro is blank"],
    ["worn off", "2026-11-12", "not checked: manufacture date cannot be read"],
  ])("without a hydro counts from manufacture: made %s, filled %s: %s", (made, date, expected) => {
    expect(verdict("V01", { Hydro: null, Made: made, Date: onDay(date) })).toBe(expected);
  });

  it("judges by class: ten years for an ISO-marked cylinder, three for glass fibre, none known for a class unheard of", () => {
    const tested = { Hydro: "2017/06", Date: onDay("2026-11-12") };
    expect(verdict("V01", { ...tested, Class: "UN-ISO7866" })).toBe("nothing");
    expect(verdict("V01", { ...tested, Class: "DOT-3AL" })).toBe("stop");
    expect(verdict("V01", { ...tested, Hydro: "2024/06", Class: "DOT-3AL" })).toBe("nothing");
    expect(verdict("V01", { ...tested, Hydro: "2023/06", Class: "FRP-1" })).toBe("stop");
    expect(verdict("V01", { ...tested, Class: "3ZZ" })).toBe(
      "not checked: class is not in the country's rules",
    );
  });

  it.each([
    // Italy: 48 months after manufacture, then every 24. Norway: 36, then 24.
    ["IT", { Hydro: null, Made: "2022/11" }, "nothing"],
    ["IT", { Hydro: "2022/11", Made: "2022/11" }, "nothing"],
    ["IT", { Hydro: "2024/10", Made: "2020/01" }, "stop"],
    ["IT", { Hydro: "2024/11", Made: "2020/01" }, "nothing"],
    ["NO", { Hydro: null, Made: "2023/11" }, "nothing"],
    ["NO", { Hydro: null, Made: "2023/10" }, "stop"],
    // France counts to the day where there is one.
    ["FR", { Hydro: "2024-11-12" }, "nothing"],
    ["FR", { Hydro: "2024-11-11" }, "stop"],
    ["FR", { Hydro: "2024/11" }, "nothing"],
    // Denmark: custom, not law.
    ["DK", { Hydro: "2021/10" }, "breach"],
    // A US test of 2024 is past due in Australia after a year.
    ["AU", { Hydro: "2025/11" }, "nothing"],
    ["AU", { Hydro: "2025/10" }, "stop"],
    // New Zealand withdrew the approval of the alloy.
    ["NZ", { Hydro: "2026/10", Alloy: "6351-T6" }, "stop"],
  ])("by the rules of %s: %j: %s", (country, change, expected) => {
    expect(verdict("V01", change as TestRow, country)).toBe(expected);
  });

  it("takes a stamp that shows the next date as it stands", () => {
    const due = (next: string): string =>
      verdict("V01", { Hydro: undefined as never, Made: null, "Next hydro due": next, Visual: "2026/05" });
    expect(due("2026/11")).toBe("nothing");
    expect(due("2026/10")).toBe("stop");
    // tested after the fill, for five years
    expect(due("2031/12")).toBe("not checked: the only hydro on record is later than the fill");
  });

  it("names the dates, the law and what to do, and points at the fill", () => {
    const [finding] = auditOf([
      { ...GOOD, Hydro: "2019/10", Date: onDay("2024-11-12"), Visual: "2024/05" },
    ]).findings;
    expect(finding).toEqual({
      rule: "V01",
      severity: "stop",
      basis: "law",
      source: "49 CFR 180.205(c) and 180.209 Table 1",
      cell: { sheet: "Fills", row: 1, column: 7 },
      serial: "AB1234",
      fillDate: "2024-11-12",
      message: "Hydro 2019-10 was due by 31 October 2024; filled 12 November 2024.",
      todo: "Do not fill it again before a hydro, and tell the owner.",
      fault: "Hydro 2019-10 was due by 31 October 2024.",
      evidence: expect.stringMatching(/^[0-9a-z]+$/) as string,
    });
  });
});

describe("V06, filled past its visual date", () => {
  it.each([
    ["2025/11", "2026-11-30", "nothing"],
    ["2025/11", "2026-12-01", "breach"],
    ["2024/02", "2025-02-28", "nothing"],
    ["2024/02", "2025-03-01", "breach"],
    [null, "2026-11-12", "not checked: visual is blank"],
    ["??", "2026-11-12", "not checked: visual cannot be read"],
    ["2027/01", "2026-11-12", "nothing"],
  ])("visual %s, filled %s: %s", (visual, date, expected) => {
    // the hydro of the last row's month counts as a visual there
    const hydro = visual === "2027/01" ? "2026/01" : "2023/01";
    expect(verdict("V06", { Visual: visual, Hydro: hydro, Date: onDay(date) })).toBe(expected);
  });

  it("a hydro counts as a visual: the later of both decides (49 CFR 180.205(f))", () => {
    expect(verdict("V06", { Visual: "2024/03", Hydro: "2025/11" })).toBe("nothing");
    expect(verdict("V06", { Visual: null, Hydro: "2025/11" })).toBe("nothing");
    expect(verdict("V06", { Visual: "2024/03", Hydro: "2025/10" })).toBe("breach");
    expect(verdict("V06", { Visual: null, Hydro: "2025/10" })).toBe("not checked: visual is blank");
  });

  it("is law in Britain, every 30 months; no visual is asked for in Italy", () => {
    expect(verdict("V06", { Visual: "2024/05", Hydro: "2024/02" }, "GB")).toBe("nothing");
    expect(verdict("V06", { Visual: "2024/04", Hydro: "2024/02" }, "GB")).toBe("stop");
    expect(verdict("V06", { Visual: "2015/04", Hydro: "2025/02" }, "IT")).toBe("nothing");
    expect(verdict("V06", { Visual: null, Hydro: "2025/02" }, "IT")).toBe("nothing");
  });

  it("says which look inside was the last", () => {
    const message = (change: TestRow) =>
      auditOf([{ ...GOOD, ...change }]).findings.find(({ rule }) => rule === "V06")?.message;
    expect(message({ Visual: "2025/03" })).toBe(
      "Visual 2025-03 was due by 31 March 2026; filled 12 November 2026.",
    );
    expect(message({ Visual: "2024/03", Hydro: "2025/10" })).toBe(
      "Visual: the last one on record is the hydro of 2025-10, good until 31 October 2026; filled 12 November 2026.",
    );
  });

  it("is not provable where the only visual on record came after the fill, whatever an older hydro says", () => {
    const notProvable = "not checked: the only visual on record is later than the fill";
    const filled = { Date: onDay("2024-12-12"), Hydro: "2019/10", Made: "2014/03" };
    expect(verdict("V06", { ...filled, Visual: "2026/05" })).toBe(notProvable);
    // the hydro itself still clears it
    expect(verdict("V06", { ...filled, Visual: "2026/05", Hydro: "2024/01" })).toBe("nothing");
    // a visual before the fill shows that the register keeps them all
    expect(verdict("V06", { ...filled, Visual: "2026/05", "Previous visual": "2022/05" })).toBe("breach");
    // in the month of the fill it counts as before it
    expect(verdict("V06", { ...filled, Visual: "2024/12" })).toBe("nothing");
    expect(verdict("V06", { ...filled, Visual: "2025/01" })).toBe(notProvable);
  });
});

describe("O01, oxygen into a cylinder that is not oxygen clean", () => {
  it.each([
    [{ "O2 rating": "O2 clean" }, "nothing"],
    [{ "O2 rating": "100" }, "nothing"],
    [{ "O2 rating": "40" }, "stop"],
    [{ "O2 rating": "AIR", "Ordered mix": "air", "Analysed O2 %": 21 }, "stop"],
    // what goes in decides, not the final mix
    [{ "O2 rating": "40", "Ordered mix": "EAN28", "Analysed O2 %": 28 }, "stop"],
    [{ "O2 rating": "40", Method: "premix" }, "nothing"],
    [{ "O2 rating": "40", Method: "continuous" }, "nothing"],
    [{ "O2 rating": "40", Method: "membrane" }, "nothing"],
    // gas above 40 % flowed in, whatever the method is called
    [{ "O2 rating": "40", Method: "premix", "Ordered mix": "EAN50", "Analysed O2 %": 50 }, "stop"],
    [{ "O2 rating": "40", Method: "premix", "Ordered mix": "EAN40", "Analysed O2 %": 40.5 }, "nothing"],
    [{ "O2 rating": "40", Method: "premix", "Ordered mix": "EAN40", "Analysed O2 %": 40.6 }, "stop"],
    // a pure oxygen entry
    [{ "O2 rating": "40", Method: "premix", "O2 added psi": 400 }, "stop"],
    [{ "O2 rating": "40", Method: "premix", "O2 added psi": 0 }, "nothing"],
    [{ "O2 rating": null }, "not checked: oxygen rating is blank"],
    [{ "O2 rating": "nitrox" }, "not checked: oxygen rating can be read in more than one way"],
    [{ Method: null }, "not checked: method is blank"],
    [{ "O2 rating": "40", Method: null }, "not checked: method is blank"],
    [{ "O2 rating": "40", Method: "the usual" }, "not checked: the method “the usual” is not known"],
  ] as const)("%j: %s", (change, expected) => {
    expect(verdict("O01", change)).toBe(expected);
  });

  it("holds in every country, and is law in France", () => {
    for (const country of ["US", "GB", "IT", "HK"])
      expect(verdict("O01", { "O2 rating": "40" }, country)).toBe("stop");
    const [finding] = auditOf([{ ...GOOD, "O2 rating": "40", Hydro: "2026/10" }], [], "FR").findings;
    expect([finding?.rule, finding?.basis, finding?.source]).toEqual([
      "O01",
      "law",
      "Code du sport art. A322-92",
    ]);
  });

  it("does not take a cleaning that came after the fill for one before it", () => {
    expect(verdict("O01", { "O2 cleaned": "2026/10" })).toBe("nothing");
    expect(verdict("O01", { "O2 cleaned": "2026/12" })).toBe(
      "not checked: the only oxygen cleaning on record is later than the fill",
    );
    // on a day that is not known it may have been before or after
    expect(verdict("O01", { "O2 cleaned": "2026/10", Date: null })).toBe("not checked: fill date is blank");
    expect(verdict("O01", { Date: null })).toBe("nothing");
  });

  it("says what went in and what the cylinder is rated for", () => {
    const [finding] = auditOf([{ ...GOOD, "O2 rating": "40" }]).findings;
    expect(finding?.message).toBe(
      "Partial pressure puts pure oxygen into a cylinder that is not oxygen clean (rated 40 %).",
    );
    expect(finding?.cell).toEqual({ sheet: "Fills", row: 1, column: 2 });
  });
});

describe("O02, mix above the cylinder's oxygen rating", () => {
  it.each([
    ["40", 32, "nothing"],
    ["40", 40, "nothing"],
    // within half a point, what an analyser may be off
    ["40", 40.1, "warn"],
    ["40", 40.5, "warn"],
    ["40", 40.6, "stop"],
    ["40", 50, "stop"],
    ["AIR", 21, "nothing"],
    ["AIR", 23.5, "nothing"],
    ["AIR", 24, "warn"],
    ["AIR", 24.1, "stop"],
    ["AIR", 32, "stop"],
    ["Suitable for 23.5 % only", 32, "stop"],
    ["O2 clean", 99, "nothing"],
    [null, 32, "not checked: oxygen rating is blank"],
    ["02", 32, "not checked: oxygen rating cannot be read"],
    ["40", "??", "not checked: analysis cannot be read"],
  ])("rated %s, analysed %s: %s", (rating, analysed, expected) => {
    const change = { "O2 rating": rating, "Analysed O2 %": analysed, Method: "premix" };
    expect(verdict("O02", change)).toBe(expected);
  });

  it("takes the ordered mix where nothing was analysed, and says so", () => {
    const fill = { ...GOOD, "O2 rating": "40", Method: "premix", "Analysed O2 %": null };
    expect(verdict("O02", { ...fill, "Ordered mix": "EAN36" })).toBe("nothing");
    expect(verdict("O02", { ...fill, "Ordered mix": null })).toBe("not checked: mix is blank");
    const found = auditOf([{ ...fill, "Ordered mix": "EAN50" }]).findings.find(({ rule }) => rule === "O02");
    expect(found?.message).toBe("EAN50 is above the rating of 40 %.");
    expect(found?.cell.column).toBe(3);
  });

  it('holds "air only" to 22 % in Britain and 23.5 % in the US', () => {
    const air = { "O2 rating": "AIR", Method: "air", "Ordered mix": "air", "Analysed O2 %": 22.8 };
    expect(verdict("O02", air, "GB")).toBe("stop");
    expect(verdict("O02", air, "US")).toBe("nothing");
  });
});

describe("V09, neither a hydro nor a manufacture date", () => {
  it.each([
    [{ Hydro: null, Made: null }, "breach"],
    [{ Hydro: null, Made: "2014/03" }, "nothing"],
    [{ Hydro: "2024/10", Made: null }, "nothing"],
    [{ Hydro: "see sticker", Made: null }, "nothing"],
    [{ Hydro: null, Made: "worn off" }, "nothing"],
  ])("%j: %s", (change, expected) => {
    expect(verdict("V09", change)).toBe(expected);
  });

  it("the fill stays not checked by V01", () => {
    expect(verdict("V01", { Hydro: null, Made: null })).toBe("not checked: hydro is blank");
  });
});

describe("R04, a stamp that the spreadsheet turned into a date", () => {
  // Typed 10/19; month stamps stand in the rest of the column.
  const others: TestRow[] = ["2022/03", "2022/07", "2023/01", "2024/10"].map((hydro, at) => ({
    ...GOOD,
    Serial: `CD20${at}0`,
    Hydro: hydro,
  }));
  const doubtsIn = (notChecked: ReturnType<typeof auditOf>["notChecked"]): string[] =>
    notChecked.filter(({ cells }) => cells.length > 0).map(({ rule, why }) => `${rule} ${why}`);
  const swallowed = (change: TestRow) => auditOf([...others, { ...GOOD, ...change }]);

  it("is found, and the fill is not taken for tested", () => {
    const { findings, notChecked, fullyJudged } = swallowed({ Hydro: onDay("2026-10-19"), Made: "2014/03" });
    expect(findings.map(({ rule, severity, cell }) => [rule, severity, cell.row])).toEqual([
      ["R04", "breach", 5],
    ]);
    expect(findings[0]?.message).toContain("2019-10");
    expect(doubtsIn(notChecked)).toEqual(["V01 hydro can be read in more than one way"]);
    expect(fullyJudged).toBe(false);
  });

  it("is no doubt where the cylinder was made after that month", () => {
    const { findings, notChecked } = swallowed({ Hydro: onDay("2026-10-19"), Made: "2023/05" });
    expect([findings, doubtsIn(notChecked)]).toEqual([[], []]);
  });

  it("is no doubt on the first of a month", () => {
    expect(swallowed({ Hydro: onDay("2024-10-01") }).findings).toEqual([]);
  });
});
