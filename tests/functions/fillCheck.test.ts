import { describe, expect, it } from "vitest";
import type { Argument } from "../../src/typed/cells";
import { auditOf, onDay, type TestCell } from "../audit/sheets";
import { cell } from "./calls";

/** A fill as FILLCHECK takes it: date, hydro, visual, rating, mix, method. */
type Fill = readonly [
  date: TestCell,
  hydro: TestCell,
  visual: TestCell,
  rating: TestCell,
  mix: TestCell,
  method: TestCell,
];

const DAY = onDay("2026-10-31");
const GOOD: Fill = [DAY, "2022/10", "2026/03", "O2 clean", 32, "partial pressure"];

function fillCheck(fill: Fill, rules = "US"): string {
  const cells = fill.map((each) =>
    typeof each === "object" && each !== null && "date" in each
      ? 36526 + (Date.parse(each.date) - Date.parse("2000-01-01")) / 86_400_000
      : each,
  );
  return cell("FILLCHECK", ...(cells as Argument[]), rules) as string;
}

describe("FILLCHECK", () => {
  it("a good fill is OK, and says what was looked at", () => {
    expect(fillCheck(GOOD)).toBe("OK: hydro, visual, rating, method");
  });

  it("STOP gives every reason", () => {
    expect(fillCheck([DAY, "2021/09", "2025/09", "AIR", 32, "partial pressure"])).toBe(
      "STOP: Hydro 2021-09 was due by 30 September 2026; filled 31 October 2026. " +
        "Visual 2025-09 was due by 30 September 2026; filled 31 October 2026. " +
        'EAN32 is above the 23.5 % that "air only" allows. ' +
        "Partial pressure puts pure oxygen into a cylinder that is not oxygen clean (rated air only).",
    );
  });

  it("the method decides over oxygen service, whatever the final mix", () => {
    expect(fillCheck([DAY, "2022/10", "2026/03", 40, 32, "partial pressure"])).toMatch(
      /^STOP: Partial pressure/,
    );
    expect(fillCheck([DAY, "2022/10", "2026/03", 40, 32, "premix"])).toMatch(/^OK/);
  });

  it("a hydro holds to the end of the month that falls due", () => {
    expect(fillCheck([DAY, "2021/10", "2026/03", 40, 32, "premix"])).toMatch(/^OK/);
    expect(fillCheck([onDay("2026-11-01"), "2021/10", "2026/03", 40, 32, "premix"])).toMatch(/^STOP/);
  });

  it.each([0, 1, 2, 3, 4, 5])("blank in place %i is UNKNOWN, as null, empty text or 0", (place) => {
    for (const nothing of [null, "", 0]) {
      const fill = GOOD.map((each, index) => (index === place ? nothing : each)) as unknown as Fill;
      expect(fillCheck(fill)).toMatch(/^UNKNOWN: .*blank/);
    }
  });

  it("blank rules are UNKNOWN, unknown rules an error", () => {
    expect(fillCheck(GOOD, "")).toMatch(/^UNKNOWN: rules are blank/);
    expect(fillCheck(GOOD, "ZZ")).toMatchObject({ error: "#VALUE!" });
  });

  it("without a national rule it never says a bare OK", () => {
    const text = fillCheck([DAY, "2022/10", "2026/03", "O2 clean", 32, "premix"], "XX");
    expect(text).toMatch(/^OK: hydro, visual, rating, method\. No national rule is known here: .*not law/);
    expect(fillCheck([DAY, "2021/09", "2026/03", 40, 32, "premix"], "XX")).toMatch(/^STOP: Hydro/);
  });

  it("what can be read in two ways is UNKNOWN, not OK", () => {
    expect(fillCheck([DAY, "06/09", "2026/03", 40, 32, "premix"], "FI")).toMatch(/^(UNKNOWN|STOP): /);
    expect(fillCheck([DAY, "2022/10", "2026/03", "yes", 32, "premix"])).toMatch(/^UNKNOWN: /);
    expect(fillCheck([DAY, "2022/10", "2026/03", 40, "30-32", "premix"])).toMatch(/^UNKNOWN: /);
    expect(fillCheck([DAY, "2022/10", "2026/03", 40, 32, "the usual"])).toMatch(/^UNKNOWN: /);
  });

  it("a hydro in the fill's own year, whose day could be an earlier year, is UNKNOWN: 10/19 typed", () => {
    expect(fillCheck([DAY, onDay("2026-10-19"), "2026/03", 40, 32, "premix"])).toMatch(/^UNKNOWN: .*2019-10/);
    expect(fillCheck([DAY, onDay("2026-10-09"), "2026/03", 40, 32, "premix"])).toMatch(/^OK/);
    expect(fillCheck([DAY, onDay("2024-10-19"), "2026/03", 40, 32, "premix"])).toMatch(/^OK/);
  });

  it("a mix just above the rating says so", () => {
    expect(fillCheck([DAY, "2022/10", "2026/03", 40, 40.4, "premix"])).toMatch(/40\.4|EAN40\.4/);
  });

  it("an error in a cell is passed on, naming the argument", () => {
    expect(cell("FILLCHECK", 46326, { error: "#REF!" }, "2026/03", 40, 32, "premix", "US")).toEqual({
      error: "#REF!",
      message: "hydro: the cell holds the error #REF!: put that right first.",
    });
  });
});

/** The rules of the audit that FILLCHECK answers for; a stop or breach of theirs is its STOP. */
const RULES = ["V01", "V06", "O01", "O02", "O07"];

describe("FILLCHECK is one code with the audit", () => {
  const HYDROS: readonly TestCell[] = [
    "2022/10",
    "2021/09",
    "06/09",
    onDay("2022-05-03"),
    onDay("2027-02-01"),
    null,
    "worn",
  ];
  const VISUALS: readonly TestCell[] = ["2026/03", "2025/09", null];
  const RATINGS: readonly TestCell[] = ["AIR", 40, "O2 clean", "EAN40 max", null, "yes"];
  const MIXES: readonly TestCell[] = [32, "EAN40.4", "EAN50", "air", null];
  const METHODS: readonly TestCell[] = ["partial pressure", "PP", "premix", "air", "continuous", null];

  const fills: readonly Fill[] = [
    ...HYDROS.map((hydro): Fill => [DAY, hydro, "2026/03", "O2 clean", 32, "premix"]),
    ...VISUALS.map((visual): Fill => [DAY, "2022/10", visual, "O2 clean", 32, "premix"]),
    ...RATINGS.flatMap((rating) =>
      MIXES.flatMap((mix) => METHODS.map((method): Fill => [DAY, "2022/10", "2026/03", rating, mix, method])),
    ),
  ];

  it("agrees with V01, V06, O01, O02 and O07 on the same cells", () => {
    for (const fill of fills) {
      const [date, hydro, visual, rating, mix, method] = fill;
      const { findings, notChecked } = auditOf([
        {
          Date: date,
          Serial: "GP-1001",
          Hydro: hydro,
          Visual: visual,
          "O2 rating": rating,
          "Ordered mix": mix,
          Method: method,
          "Filled by": "R.",
        },
      ]);
      const stops = findings.filter(
        ({ rule, severity }) => RULES.includes(rule) && ["stop", "breach"].includes(severity),
      );
      const open = notChecked.filter(({ rule }) => RULES.includes(rule));
      const verdict = /^[A-Z]+/.exec(fillCheck(fill))![0];
      const expected = stops.length > 0 ? "STOP" : open.length > 0 ? "UNKNOWN" : "OK";
      expect(`${JSON.stringify(fill)} ${verdict}`).toBe(`${JSON.stringify(fill)} ${expected}`);
    }
  });
});

describe("FILLCHECK and what else judges", () => {
  it("a continuous blend that INJECT refuses is STOP, and one that it makes is OK", () => {
    for (const percent of [22, 32, 39.9, 40, 40.1, 50, 80, 100]) {
      const refused = typeof cell("INJECT", percent, 250) !== "number";
      const verdict = fillCheck([DAY, "2022/10", "2026/03", "O2 clean", percent, "continuous"]);
      expect(verdict.startsWith("STOP"), `${percent} %: ${verdict}`).toBe(refused);
      expect(verdict.startsWith("OK"), `${percent} %: ${verdict}`).toBe(!refused);
    }
  });

  it("the hydro of a stamp that shows the next date clears the visual only from when it was made", () => {
    // Due May 2028 after 60 months: made in May 2023, a look inside that held 30 months, to November 2025.
    expect(fillCheck(["2026-10-15", "2028/05", "2020/03", 40, "air", "air"], "DE")).toMatch(
      /^STOP: .*30 November 2025/,
    );
    expect(fillCheck(["2025-11-30", "2028/05", "2020/03", 40, "air", "air"], "DE")).toBe(
      "OK: hydro, visual, rating, method",
    );
  });
});
