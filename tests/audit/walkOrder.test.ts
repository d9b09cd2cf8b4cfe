import { describe, expect, it } from "vitest";
import { predictedContents, type PredictedContent } from "../../src/audit/contents";
import type { AuditOptions } from "../../src/audit/shop";
import { inTimeOrder } from "../../src/audit/walk/timeOrder";
import { countryRules } from "../../src/cylinders/countryRules";
import { nameMix } from "../../src/gas/nameMix";
import { gaugeReading } from "../../src/gas/units";
import { readLog } from "../../src/log/readLog";
import { auditOf, FULL, logOf, onDay, sheetOf, SHOP, without, type TestRow } from "./sheets";

/* In which order fills were made, what each left in its cylinder, and which fills are of one cylinder. */

const US = countryRules("US");

describe("the order of fills", () => {
  /** Rows as they are written: a day of November (or `?`), and a time; the fills by the order they were made. */
  const order = (...sheets: readonly (readonly string[])[]): readonly string[] => {
    const log = readLog(
      sheets.map((rows, at) =>
        sheetOf(
          `Sheet ${at + 1}`,
          rows.map((written, row) => {
            const [day, time] = written.split(" ");
            return {
              ...FULL,
              Date: day === "?" ? "smudged" : onDay(`2026-11-${day}`),
              Time: time ?? null,
              Serial: `AB${at + 1}00${row + 1}`,
            };
          }),
        ),
      ),
      { units: "us", stampOrder: "month first", dateOrder: "month first" },
    );
    return [...inTimeOrder(log)].map(({ fill }) => {
      const { serial } = fill.fields;
      return serial.kind === "value" ? serial.value.join().replace("AB", "").replace("00", ".") : "?";
    });
  };

  it.each<[string, readonly (readonly string[])[], string]>([
    ["days as they come", [["10", "11", "12"]], "1.1 1.2 1.3"],
    ["newest first", [["12", "11", "10"]], "1.3 1.2 1.1"],
    // one step down is enough to tell which way a sheet runs; rows of one day then count backwards too
    ["newest first, with two of a day", [["12", "12", "11"]], "1.3 1.2 1.1"],
    ["oldest first, with two of a day", [["11", "12", "12"]], "1.1 1.2 1.3"],
    ["one day only: as the rows stand", [["12", "12", "12"]], "1.1 1.2 1.3"],
    ["one row out of place does not turn the sheet", [["10", "12", "12", "11", "13"]], "1.1 1.4 1.2 1.3 1.5"],
    ["more rows down than up turn it, however far they go", [["12", "11", "10", "30"]], "1.3 1.2 1.1 1.4"],
    ["a row without a date, first: before all", [["?", "11", "12"]], "1.1 1.2 1.3"],
    ["without a date, newest first: with the older row", [["12", "?", "11", "11"]], "1.4 1.3 1.2 1.1"],
    ["no dates at all: as they stand", [["?", "?", "?"]], "1.1 1.2 1.3"],
    ["times of a day", [["12 15:00", "12 09:30", "12 09:29"]], "1.3 1.2 1.1"],
    ["to the minute, over the hour", [["12 10:01", "12 09:59", "12 10:00"]], "1.2 1.3 1.1"],
    ["one time twice: as they stand", [["12 10:00", "12 10:00"]], "1.1 1.2"],
    ["the last minute of a day and the first of the next", [["12 00:00", "11 23:59"]], "1.2 1.1"],
    ["a row without a time, after the one above it", [["12 10:00", "12", "12 09:00"]], "1.3 1.1 1.2"],
    ["a day begins anew", [["11 15:00", "12", "12 08:00"]], "1.1 1.2 1.3"],
    ["a sheet for each month is one log", [["20", "21"], ["10", "11"]], "2.1 2.2 1.1 1.2"],
    ["each sheet runs its own way", [["10", "11", "12"], ["14", "14", "13"]], "1.1 1.2 1.3 2.3 2.2 2.1"],
    ["the first newest first, the second not", [["12", "12", "11"], ["13", "13"]], "1.3 1.2 1.1 2.1 2.2"],
    ["three sheets", [["10", "11"], ["12", "12", "11"], ["13", "13"]], "1.1 1.2 2.3 2.2 2.1 3.1 3.2"],
    ["two sheets of one day, the first before the second", [["12", "12"], ["12", "12"]], "1.1 1.2 2.1 2.2"],
  ])("%s", (_what, sheets, expected) => {
    expect(order(...sheets).join(" ")).toBe(expected);
  }); // prettier-ignore
});

const AIR_ROW: TestRow = {
  ...FULL,
  Method: "air",
  "Ordered mix": "air",
  "O2 added psi": null,
  "Analysed O2 %": null,
  "Start mix": "air",
};

/** What is known of a content, in a line. */
function inWords({ mix, mixBy, leftWithBar }: PredictedContent): string {
  const left = leftWithBar === undefined ? "?" : String(Math.round(gaugeReading(leftWithBar, "us")));
  return `${mix ? nameMix(mix) : "unknown"} by ${mixBy ?? "nothing"}, ${left} psi`;
}

describe("what a fill leaves in its cylinder", () => {
  const BANK: AuditOptions = {
    ...SHOP,
    sources: [{ name: "Bank 36", mix: { oxygen: 0.36, helium: 0 } }],
  };
  const left = (row: TestRow, before: readonly TestRow[] = []): string =>
    inWords(predictedContents(logOf([...before, row]), US, BANK).get("AB1234")!);
  const OCTOBER = onDay("2026-10-01");
  const AIR_BEFORE: TestRow = { ...FULL, Date: OCTOBER, Method: "air", "Ordered mix": "air", "O2 added psi": null, "Analysed O2 %": 20.9 }; // prettier-ignore
  const NITROX_BEFORE: TestRow = { ...FULL, Date: OCTOBER };
  const PREMIX: TestRow = { ...FULL, Method: "premix", "O2 added psi": null, "Analysed O2 %": null, "Ordered mix": null, "Start psi": 0 }; // prettier-ignore

  it.each<[string, TestRow, readonly TestRow[], string]>([
    ["as analysed, at the end pressure", FULL, [], "EAN32 by analysis, 3000 psi"],
    ["as settled, where that was read", { ...FULL, "Settled psi": 2850 }, [], "EAN32 by analysis, 2850 psi"],
    ["as settled, though the end is not written", { ...FULL, "End psi": null, "Settled psi": 2850 }, [], "EAN32 by analysis, 2850 psi"],
    ["neither", { ...FULL, "End psi": null }, [], "EAN32 by analysis, ? psi"],
    ["an analysis that cannot be read", { ...FULL, "Analysed O2 %": "smudged" }, [], "unknown by nothing, 3000 psi"],
    // nobody analyses air that went on top of air
    ["air on air of its row", AIR_ROW, [], "air by order, 3000 psi"],
    ["air on air of the fill before", { ...AIR_ROW, "Start mix": null }, [AIR_BEFORE], "air by order, 3000 psi"],
    ["air by method, no order", { ...AIR_ROW, "Ordered mix": null }, [], "air by order, 3000 psi"],
    // 80 bar of EAN32 topped with air to 200 bar: 25.58 % by the reference code (tests/outside/worked-blends.json)
    ["air on EAN32 of its row, whatever the fill before", { ...AIR_ROW, "Start mix": "EAN32", "Start psi": 1160.3, "End psi": 2900.75 }, [AIR_BEFORE], "EAN25.6 by mass balance, 2901 psi"],
    ["air on EAN32 of the fill before", { ...AIR_ROW, "Start mix": null, "Start psi": 1160.3, "End psi": 2900.75 }, [NITROX_BEFORE], "EAN25.6 by mass balance, 2901 psi"],
    ["air by method on EAN32, no order", { ...AIR_ROW, "Ordered mix": null, "Start mix": "EAN32", "Start psi": 1160.3, "End psi": 2900.75 }, [], "EAN25.6 by mass balance, 2901 psi"],
    ["air on top of what nobody knows", { ...AIR_ROW, "Start mix": null }, [], "air by order, 3000 psi"],
    ["nothing ordered, on top of what nobody knows", { ...AIR_ROW, "Ordered mix": null, "Start mix": null }, [], "unknown by nothing, 3000 psi"],
    ["neither ordered nor by method", { ...AIR_ROW, "Ordered mix": null, Method: null }, [], "unknown by nothing, 3000 psi"],
    // an atmosphere of air is a half per cent of it
    ["a bank's mix in a vented cylinder", { ...PREMIX, "Ordered mix": "EAN36", Source: "Bank 36", "Start mix": "air" }, [], "EAN35.9 by mass balance, 3000 psi"],
    // which of the two a heading means is open: both rows rise, and give other mixes
    ["amount or stop, nobody says: as ordered", { ...without(FULL, "O2 added psi"), "O2 psi": 800, "Analysed O2 %": null }, [], "EAN32 by order, 3000 psi"],
    // vented, oxygen to 402 psi, air to 3000 psi at 70 °F: 31.92 % by the reference code (outsideBalance.test.ts)
    ["an amount, as the heading says", { ...FULL, "Start psi": 0, "Start mix": "air", "O2 added psi": 402, "Analysed O2 %": null }, [], "EAN31.9 by mass balance, 3000 psi"],
    // a stream set by hand may be anything up to 40 %
    ["a stream: as ordered", { ...FULL, Method: "continuous", "O2 added psi": null, "Analysed O2 %": null }, [], "EAN32 by order, 3000 psi"],
    ["a stream without an order", { ...FULL, Method: "continuous", "O2 added psi": null, "Analysed O2 %": null, "Ordered mix": null }, [], "unknown by nothing, 3000 psi"],
  ])("%s", (_what, row, before, expected) => {
    expect(left(row, before)).toBe(expected);
  }); // prettier-ignore

  it.each([
    ["Bank 36", "EAN36"],
    ["BANK36", "EAN36"],
    ["Bank EAN32", "EAN32"],
    ["nitrox 32 bank", "EAN32"],
    ["32 % bank", "EAN32"],
    ["TX 18/45 rack", "TX 18/45"],
    ["air bank 2", "air"],
    // of these nobody can tell what they hold
    ["Bank 32", "unknown"],
    ["Repair bank", "unknown"],
    ["TX 60/60 rack", "unknown"],
  ])("a vented cylinder filled from %s: %s", (source, mix) => {
    const found = left({ ...PREMIX, "Start mix": mix === "unknown" ? "air" : mix, Source: source });
    expect(found).toBe(`${mix} by ${mix === "unknown" ? "nothing" : "mass balance"}, 3000 psi`);
  });
});

describe("which fill was its last", () => {
  const trust = (first: TestRow, last: TestRow): readonly string[] =>
    predictedContents(
      logOf([
        { ...FULL, Time: null, ...first },
        { ...FULL, Time: null, ...last },
      ]),
      US,
      SHOP,
    ).get("AB1234")!.notKnown;
  const ON_TRUST = "Which fill was its last is taken on trust: ";
  const SAME_DAY = `${ON_TRUST}the cylinder was filled more than once that day, and times do not say in which order.`;
  const NO_DATE = `${ON_TRUST}a fill of the cylinder has no date that can be read.`;

  it.each<[string, TestRow, TestRow, readonly string[]]>([
    ["two days", { Date: onDay("2026-11-11") }, {}, []],
    ["one day, no times", {}, {}, [SAME_DAY]],
    ["one day, a time for the first", { Time: "10:00" }, {}, [SAME_DAY]],
    ["one day, a time for the second", {}, { Time: "15:00" }, [SAME_DAY]],
    ["one day, both times", { Time: "10:00" }, { Time: "15:00" }, []],
    ["one day, a time that cannot be read", { Time: "10:00" }, { Time: "smudged" }, [SAME_DAY]],
    ["no date of the first", { Date: "smudged" }, {}, [NO_DATE]],
    ["no date of the second", {}, { Date: "smudged" }, [NO_DATE]],
    ["no date of either", { Date: "smudged" }, { Date: "smudged" }, [NO_DATE]],
  ])("%s", (_what, first, last, expected) => {
    expect(trust(first, last)).toEqual(expected);
  });
});

describe("fills of one cylinder", () => {
  /** What is known of every cylinder of a log. */
  const contents = (fills: readonly TestRow[], register: readonly TestRow[] = []) =>
    [...predictedContents(logOf(fills, register), US, SHOP).values()].map(
      (content) => `${content.serial}: ${inWords(content)}`,
    );

  it("are those of one serial, however it is written, as the register writes it first", () => {
    const rows = ["ab-1234", "AB 1234", "AB1234"].map((serial, at) => ({
      ...FULL,
      Serial: serial,
      Date: onDay(`2026-11-0${at + 1}`),
      "Analysed O2 %": 30 + at,
    }));
    expect(contents(rows)).toHaveLength(1);
    expect(contents(rows)[0]).toMatch(/: EAN32 by analysis, 3000 psi$/);
    expect(contents(rows, [{ Serial: "AB-1234", Hydro: "2024/10", Visual: "2026/05" }])).toEqual([
      "AB-1234: EAN32 by analysis, 3000 psi",
    ]);
  });

  it("are found by a shop number of the register, with those of its serial", () => {
    const air = { ...AIR_ROW, "Start mix": null, "Start psi": 1160.3, "End psi": 2900.75 };
    const fills = [
      { ...FULL, "Shop number": null, Date: onDay("2026-11-01") },
      { ...air, Serial: null, "Shop number": "12" },
    ];
    const register = [{ Serial: "AB1234", "Shop number": "12", Hydro: "2024/10", Visual: "2026/05" }];
    expect(contents(fills, register)).toEqual(["AB1234: EAN25.6 by mass balance, 2901 psi"]);
    // a number alone may be two customers' own: the fill before is of another cylinder, as far as anybody knows
    expect(contents(fills.map((fill) => ({ ...fill, Serial: null, "Shop number": "12" })))).toEqual([
      "12: air by order, 2901 psi",
    ]);
  });

  it("of a twin set are of both its cylinders", () => {
    const air = { ...AIR_ROW, Serial: "CD5678", "Start mix": null, "Start psi": 1160.3, "End psi": 2900.75 };
    expect(contents([{ ...FULL, Serial: "AB1234 + CD5678", Date: onDay("2026-11-01") }, air])).toEqual([
      "AB1234: EAN32 by analysis, 3000 psi",
      "CD5678: EAN25.6 by mass balance, 2901 psi",
    ]);
  });

  it("each row of a flat log is judged by its own dates", () => {
    const rows = [
      { ...FULL, Date: onDay("2026-11-01"), Hydro: "2020/01" },
      { ...FULL, Hydro: "2026/11" },
    ];
    expect(
      auditOf(rows, [], "US", SHOP)
        .findings.filter(({ rule }) => rule === "V01")
        .map(({ cell }) => cell.row),
    ).toEqual([1]);
  });
});
