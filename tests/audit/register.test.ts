import { describe, expect, it } from "vitest";
import { auditOf, onDay, type TestRow } from "./sheets";

const fill = (serial: string, change: TestRow = {}): TestRow => ({
  Date: onDay("2026-11-12"),
  Serial: serial,
  Method: "premix",
  "Ordered mix": "EAN32",
  "Analysed O2 %": 32,
  "End psi": 3000,
  ...change,
});
const cylinder = (serial: string, change: TestRow = {}): TestRow => ({
  Serial: serial,
  Class: "3AL",
  Made: "2014/03",
  Size: "AL80",
  Hydro: "2024/10",
  Visual: "2026/05",
  "O2 rating": "40",
  ...change,
});

const rules = (result: ReturnType<typeof auditOf>): string[] =>
  result.findings.map(({ rule, cell, serial }) => `${rule} ${cell.sheet} ${cell.row + 1} ${serial}`);
/** Rules that every log with dates and ratings lets us judge; for others these logs have no columns. */
const CORE = ["O01", "V01", "O02", "V06", "V09", "R01", "R04"];
const lacks = (result: ReturnType<typeof auditOf>): string[] =>
  result.notChecked
    .filter(({ rule }) => CORE.includes(rule))
    .map(({ rule, count, why }) => `${rule} ${count} ${why}`);

describe("fills joined to the register", () => {
  it("take dates and rating from there, and point at the fill's serial", () => {
    const result = auditOf(
      [fill("AB1234"), fill("CD5678")],
      [cylinder("AB1234"), cylinder("CD5678", { Hydro: "2021/10" })],
    );
    expect(rules(result)).toEqual(["V01 Fills 3 CD5678"]);
    expect(result.findings[0]?.cell.column).toBe(1);
    expect(lacks(result)).toEqual([]);
  });

  it("judge each fill on its own day", () => {
    const onDays = ["2026-10-31", "2026-11-01"].map((date) => fill("AB1234", { Date: onDay(date) }));
    const result = auditOf(onDays, [cylinder("AB1234", { Hydro: "2021/10" })]);
    expect(result.findings.map(({ fillDate }) => fillDate)).toEqual(["2026-11-01"]);
  });

  it("several tests of one cylinder: the one valid on the day counts, the later one proves nothing", () => {
    const tests = [cylinder("AB1234", { Hydro: "2021/06" }), cylinder("AB1234", { Hydro: "2026/09" })];
    const filledOn = (date: string) => auditOf([fill("AB1234", { Date: onDay(date) })], tests);
    expect(rules(filledOn("2026-06-30"))).toEqual([]);
    expect(rules(filledOn("2026-08-15"))).toEqual(["V01 Fills 2 AB1234"]);
    expect(rules(filledOn("2026-09-01"))).toEqual([]);
  });

  it("R01: a cylinder that is not there is a finding, and nothing about it passes", () => {
    const result = auditOf([fill("ZZ9999"), fill("AB1234")], [cylinder("AB1234")]);
    expect(rules(result)).toEqual(["R01 Fills 2 ZZ9999"]);
    expect(lacks(result)).toEqual([
      "O01 1 serial is not in the register",
      "V01 1 serial is not in the register",
      "O02 1 serial is not in the register",
      "V06 1 serial is not in the register",
      "V09 1 serial is not in the register",
    ]);
    expect(result.fullyJudged).toBe(false);
  });

  it("R01: suggests the serial that was probably meant", () => {
    const result = auditOf([fill("AB123A")], [cylinder("AB1234")]);
    expect(result.findings[0]?.todo).toContain("AB1234");
  });

  it("R01: one serial for two cylinders is told once, in the register, and its fills are not judged", () => {
    const twice = [cylinder("AB1234"), cylinder("AB1234", { Made: "2019/01", Size: "HP100" })];
    const result = auditOf([fill("AB1234"), fill("AB1234")], twice);
    expect(rules(result)).toEqual(["R01 Cylinders 3 AB1234"]);
    expect(result.findings[0]?.fillDate).toBe("");
    expect(lacks(result).filter((lack) => lack.startsWith("V01"))).toEqual([
      "V01 2 serial stands for two cylinders in the register",
    ]);
  });

  it("a fault of the register is told once, each fill it makes wrong for itself", () => {
    const blank = auditOf(
      [fill("AB1234"), fill("AB1234")],
      [cylinder("AB1234", { Hydro: null, Made: null }), cylinder("CD5678")],
    );
    expect(rules(blank)).toEqual(["V09 Cylinders 2 AB1234"]);
    expect(lacks(blank)).toEqual(["V01 2 hydro is blank"]);
    const late = auditOf([fill("AB1234"), fill("AB1234")], [cylinder("AB1234", { Hydro: "2020/01" })]);
    expect(rules(late)).toEqual(["V01 Fills 2 AB1234", "V01 Fills 3 AB1234"]);
  });

  it("a twin set is filled as two: each member is judged", () => {
    const result = auditOf(
      [fill("AB1234 + CD5678")],
      [cylinder("AB1234"), cylinder("CD5678", { Hydro: "2020/01" })],
    );
    expect(rules(result)).toEqual(["V01 Fills 2 CD5678"]);
  });

  it("a twin set that lacks the same twice is one fill not checked", () => {
    const blank = { Hydro: null };
    const register = [
      cylinder("AB1234", { ...blank, Made: "see sticker" }),
      cylinder("CD5678", { ...blank, Made: "see sticker" }),
    ];
    const result = auditOf([fill("AB1234 + CD5678")], register);
    expect(lacks(result)).toEqual(["V01 1 manufacture date cannot be read"]);
  });

  it("of two ratings the stricter holds", () => {
    const result = auditOf(
      [fill("AB1234", { "O2 rating": "O2 clean", Method: "partial pressure" })],
      [cylinder("AB1234")],
    );
    expect(rules(result)).toEqual(["O01 Fills 2 AB1234"]);
  });

  it("a fill without a serial is counted for every rule that needs its cylinder", () => {
    const result = auditOf([fill("AB1234"), { ...fill(""), Serial: null }], [cylinder("AB1234")]);
    expect(rules(result)).toEqual([]);
    expect(lacks(result)).toEqual(
      ["O01", "V01", "O02", "V06", "V09", "R01"].map((rule) => `${rule} 1 serial is blank`),
    );
  });
});

describe("a column that the log does not have", () => {
  it("is not checked once for the rule, for all its fills", () => {
    const withoutVisual = Object.fromEntries(
      Object.entries(cylinder("AB1234")).filter(([name]) => name !== "Visual"),
    );
    const result = auditOf([fill("AB1234"), fill("AB1234")], [withoutVisual]);
    expect(lacks(result)).toEqual(["V06 2 the log has no column for visual"]);
    expect(result.notChecked.find(({ rule }) => rule === "V06")?.cells).toEqual([]);
  });

  it("where no rule can judge anything, every rule says so", () => {
    const bare = {
      Date: onDay("2026-11-12"),
      Serial: "AB1234",
      "End psi": 3000,
      "Start psi": 500,
      Mix: "EAN32",
    };
    const result = auditOf(["AB1234", "CD5678", "EF9012"].map((serial) => ({ ...bare, Serial: serial })));
    expect(result.findings).toEqual([]);
    expect(result.fullyJudged).toBe(false);
    expect(lacks(result)).toEqual([
      "O01 3 the log has no column for oxygen rating",
      "V01 3 the log has no column for hydro or manufacture date",
      "O02 3 the log has no column for oxygen rating",
      "V06 3 the log has no column for visual or hydro",
      "V09 3 the log has no column for hydro or manufacture date",
    ]);
  });
});

describe("the answer", () => {
  it("is ordered by harm: severity, then rank, then day", () => {
    const result = auditOf(
      [
        fill("AB1234", { Date: onDay("2026-11-20"), "Ordered mix": "EAN40", "Analysed O2 %": 40.3 }),
        fill("CD5678", { Date: onDay("2026-11-15") }),
        fill("EF9012", { Date: onDay("2026-11-18") }),
        fill("EF9012", { Date: onDay("2026-11-16") }),
        fill("AB1234", { Date: onDay("2026-11-19"), Method: "partial pressure" }),
        fill("ZZ0000", { Date: onDay("2026-11-01") }),
      ],
      [
        cylinder("AB1234"),
        cylinder("CD5678", { Visual: "2025/01" }),
        cylinder("EF9012", { Hydro: "2020/01" }),
      ],
    );
    expect(result.findings.map(({ severity, rule, fillDate }) => `${severity} ${rule} ${fillDate}`)).toEqual([
      "stop O01 2026-11-19",
      "stop V01 2026-11-16",
      "stop V01 2026-11-18",
      "breach V06 2026-11-15",
      "breach R01 2026-11-01",
      "warn O02 2026-11-20",
    ]);
  });

  it("is never fully judged where a row could not be read, or where there is no fill at all", () => {
    expect(auditOf([], []).fullyJudged).toBe(false);
    const unreadable = auditOf(
      [fill("AB1234"), { Serial: "??", Method: "??", "End psi": "??" }],
      [cylinder("AB1234")],
    );
    expect(unreadable.findings).toEqual([]);
    expect(unreadable.fullyJudged).toBe(false);
  });
});
