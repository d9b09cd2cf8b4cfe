import { AIR } from "../../src/gas/mixture";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { acceptancesOf, identityOf } from "../../src/audit/judge/acceptance";
import { audit } from "../../src/audit/audit";
import { predictedContents, type PredictedContent } from "./predictedContents";
import { dueLists } from "../../src/audit/lists/dueLists";
import { notToFillNext, openRisks } from "../../src/audit/lists/recall";
import type { AuditOptions } from "../../src/audit/shop/shop";
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
    sources: [
      { name: "Bank A", mix: AIR },
      { name: "Bank 36", mix: { oxygen: 0.36, helium: 0 } },
    ],
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
    // a name is only a name: what these hold the shop has not said
    ["Bank EAN32", "unknown"],
    ["60 % full", "unknown"],
    ["TX 18/45 rack", "unknown"],
    ["air bank 2", "unknown"],
    ["Bank 32", "unknown"],
    ["Repair bank", "unknown"],
    ["TX 60/60 rack", "unknown"],
  ])("a vented cylinder filled from %s: %s", (source, mix) => {
    const found = left({ ...PREMIX, "Start mix": mix === "unknown" ? "air" : mix, Source: source });
    expect(found).toBe(`${mix} by ${mix === "unknown" ? "nothing" : "mass balance"}, 3000 psi`);
  });
});

describe("what a row and its neighbours say", () => {
  const CONTEXT = { units: "us", stampOrder: "month first", dateOrder: "month first" } as const;
  const NITROX: TestRow = { ...without(FULL, "O2 added psi"), "Start psi": 300, "Start mix": "air", "Analysed O2 %": null }; // prettier-ignore

  it("is read under the headings of its own table: an amount in one, in the next the reading it stopped at", () => {
    // the columns of the second stand in another order
    const fills = (serials: readonly string[], row: (serial: string) => TestRow) =>
      sheetOf("Fills", serials.map(row));
    const amounts = fills(["A1", "A2", "A3"], (Serial) => ({ ...NITROX, Serial, "O2 added psi": 402 }));
    const stops = fills(["B1", "B2", "B3"], (Serial) => ({ "O2 stop psi": 702, ...NITROX, Serial }));
    const log = readLog([{ ...amounts, rows: [...amounts.rows, { values: [] }, ...stops.rows] }], CONTEXT);
    const contents = [...predictedContents(log, US, SHOP).values()];
    expect(contents.map(({ serial, mixBy }) => `${serial} ${mixBy}`)).toEqual(
      ["A1", "A2", "A3", "B1", "B2", "B3"].map((serial) => `${serial} mass balance`),
    );
    // 702 psi are 402 above 300
    expect(new Set(contents.map(({ mix }) => mix!.oxygen.toFixed(6))).size).toBe(1);
  });

  it("stays open where its own heading leaves it open, whatever a table further down says", () => {
    const open = sheetOf("Fills", [{ ...NITROX, Serial: "A1", "O2 psi": 702 }]);
    const stops = sheetOf("Fills", [{ "O2 stop psi": 702, ...NITROX, Serial: "B1" }]);
    const log = readLog([{ ...open, rows: [...open.rows, { values: [] }, ...stops.rows] }], CONTEXT);
    expect(
      [...predictedContents(log, US, SHOP).values()].map(({ serial, mixBy }) => `${serial} ${mixBy}`),
    ).toEqual(["A1 order", "B1 mass balance"]);
  });

  it("is read for each gas as its own heading says", () => {
    const trimix: TestRow = { ...NITROX, "Start psi": 0, "Ordered mix": "18/35", Serial: "TX1" };
    const mixOf = (added: TestRow) =>
      [...predictedContents(logOf([{ ...trimix, ...added }]), US, SHOP).values()][0]!;
    // helium first: from nothing, the stop is the amount
    const amounts = mixOf({ "He added psi": 1000, "O2 added psi": 200 });
    expect(amounts.mixBy).toBe("mass balance");
    const written: readonly TestRow[] = [
      { "He added psi": 1000, "O2 stop psi": 1200 },
      { "O2 stop psi": 1200, "He added psi": 1000 },
      { "O2 stop psi": 1200, "He stop psi": 1000 },
    ];
    for (const same of written) expect(mixOf(same)).toEqual(amounts);
  });

  it("is compared with the rows beside it on its sheet, not with those of another sheet", () => {
    // each has the other's analysis
    const one: TestRow = { ...FULL, "Analysed O2 %": 36 };
    const other: TestRow = { ...FULL, "Ordered mix": "EAN36", Serial: "CD5678" };
    const causes = (...sheets: readonly (readonly TestRow[])[]): readonly string[] => {
      const log = readLog(
        sheets.map((rows, at) => sheetOf(`Sheet ${at + 1}`, rows)),
        CONTEXT,
      );
      return audit(log, US, SHOP)
        .findings.filter(({ rule, serial }) => rule === "G12" && serial === "AB1234")
        .map(({ message }) => /with the row (\w+)/.exec(message)?.[1] ?? "not swapped");
    };
    expect(causes([one, other])).toEqual(["below"]);
    expect(causes([other, one])).toEqual(["above"]);
    expect(causes([one], [other])).toEqual(["not swapped"]);
    expect(causes([other], [one])).toEqual(["not swapped"]);
    // the row between is in the way
    expect(causes([one, { ...FULL, Serial: "EF9012" }, other])).toEqual(["not swapped"]);
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

  it("without a serial are told apart by their shop numbers, and go on by them", () => {
    /** Nothing of the cylinder in the rows of the fills. */
    const fill = (number: string, row: TestRow): TestRow => ({
      ...without(row, "Class", "Material", "Alloy", "Made", "Service psi", "Hydro", "Visual", "Eddy current", "O2 cleaned", "O2 rating", "Status", "Neck thread", "Valve thread"),
      Serial: null,
      "Shop number": number,
    }); // prettier-ignore
    const register = [
      { "Shop number": "12", Hydro: "2024/10", Visual: "2026/05" },
      { "Shop number": "14", Hydro: "2019/10", Visual: "2026/05" },
    ];
    const fills = [
      fill("12", { ...FULL, Date: onDay("2026-11-01") }),
      fill("14", { ...FULL, Date: onDay("2026-11-02"), "Analysed O2 %": 36 }),
      fill("12", { ...AIR_ROW, "Start mix": null, "Start psi": 1160.3, "End psi": 2900.75 }),
    ];
    expect(logOf(fills, register).fills.some(({ cylinderInRow }) => cylinderInRow)).toBe(false);
    expect(contents(fills, register)).toEqual([
      "12: EAN25.6 by mass balance, 2901 psi",
      "14: EAN36 by analysis, 3000 psi",
    ]);
    expect(
      auditOf(fills, register, "US", SHOP)
        .findings.filter(({ rule }) => rule === "V01")
        .map(({ serial, cell }) => [serial, cell.row]),
    ).toEqual([["14", 2]]);
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

describe("whom to call about its last fill, and what not to fill next", () => {
  const listed = (fills: readonly TestRow[], register: readonly TestRow[] = []) =>
    auditOf(fills, register, "US", SHOP);
  const NOT_ANALYSED: TestRow = { ...FULL, "Analysed O2 %": null };
  const next = (fills: readonly TestRow[], register: readonly TestRow[] = []): readonly string[] => {
    const log = logOf(fills, register);
    const due = dueLists(log, US, Temporal.PlainDate.from("2026-11-30"));
    return notToFillNext(audit(log, US, SHOP), due).map(
      ({ serial, owner, reasons }) => `${serial} of ${owner ?? "?"}: ${reasons.join(" ")}`,
    );
  };

  it("a call is for what can hurt somebody, not for every fault", () => {
    // past its visual is against a custom, and nobody's to be called about
    const late = { ...FULL, Visual: "2025/03" };
    expect(listed([late]).recall).toEqual([]);
    expect(listed([late]).doNotFill.map(({ findings }) => findings.map(({ rule }) => rule))).toEqual([
      ["V06"],
    ]);
    expect(
      listed([{ ...late, "Analysed O2 %": null }]).recall.map(({ findings }) =>
        findings.map(({ rule }) => rule),
      ),
    ).toEqual([["G01"]]);
  });

  it.each([
    ["AB1234", null, "AB1234 Serial"],
    ["AB1234", "12", "AB1234 Serial"],
    [null, "12", "12 Shop number"],
    ["??", "12", "12 Shop number"],
    [null, null, "no serial Serial"],
  ])("serial %s, shop number %s: leads to the cell that names it, %s", (serial, number, expected) => {
    const row = { "Shop number": number, ...NOT_ANALYSED, Serial: serial };
    const [found] = listed([
      { ...row, Date: onDay("2026-11-20") },
      { ...FULL, "Shop number": "99" },
    ]).recall;
    expect(`${found!.serial} ${Object.keys(row)[found!.lastFill.column]}`).toBe(expected);
  });

  it("a fill whose date cannot be read is called about too", () => {
    const { recall } = listed([{ ...NOT_ANALYSED, Date: "smudged" }]);
    expect(recall.map(({ serial, fillDate, nameless }) => [serial, fillDate, nameless])).toEqual([
      ["AB1234", "", undefined],
    ]);
  });

  it.each([
    ["C-014", "C-020", "C-014"],
    ["C-014", null, "C-014"],
    [null, "C-020", "C-020"],
    [null, null, undefined],
  ])("an owner by the fill %s, by the register %s: %s", (ofFill, ofRegister, owner) => {
    const fill = { ...NOT_ANALYSED, Owner: ofFill };
    const other = { ...FULL, Owner: "C-099", Serial: "ZZ9999" };
    const register = [
      { Serial: "AB1234", Owner: ofRegister, Hydro: "2024/10", Visual: "2026/05" },
      { Serial: "ZZ9999", Owner: "C-098", Hydro: "2024/10", Visual: "2026/05" },
    ];
    expect(listed([fill, other], register).recall.map(({ serial, owner }) => [serial, owner])).toEqual([
      ["AB1234", owner],
    ]);
  });

  it("the worst is told first", () => {
    // a mark missing is against a rule; a valve of the wrong thread kills
    const [cylinder] = listed([{ ...FULL, Class: "CE", "Valve thread": "M25x2" }]).doNotFill;
    expect(cylinder!.findings.map(({ rule, severity }) => `${rule} ${severity}`)).toEqual([
      "V14 stop",
      "V13 breach",
    ]);
  });

  it("a hydro that was past due is no matter once it is made", () => {
    const late = { ...FULL, Hydro: "2021/06", Date: onDay("2026-10-20") };
    expect(next([late])).toEqual(["AB1234 of C-014: Hydro 2021-06 was due by 30 June 2026."]);
    const own = { ...late, Hydro: null, Visual: null };
    const register = ["2021/06", "2026/11"].map((Hydro) => ({
      Serial: "AB1234",
      Made: "2014/03",
      Hydro,
      Visual: "2026/05",
    }));
    expect(listed([own], register).findings.map(({ rule }) => rule)).toContain("V01");
    expect(next([own], register)).toEqual([]);
    // without a serial nobody knows which cylinder was tested since
    const numbered = { ...late, Serial: null, "Shop number": "12" };
    expect(next([numbered])).toEqual(["12 of C-014: Hydro 2021-06 was due by 30 June 2026."]);
  });

  it("what the shop looked into and accepted is on no list; what else is wrong with the cylinder is", () => {
    const result = listed([{ ...NOT_ANALYSED, Hydro: "2021/06" }]);
    const accept = (...rules: readonly string[]) =>
      acceptancesOf(
        result.findings
          .filter(({ rule }) => rules.includes(rule))
          .map((finding) => ({ ...identityOf(finding), reason: "label found", by: "R.", on: "2026-11-30" })),
      );
    const open = (...rules: readonly string[]): readonly string[] =>
      openRisks(result.recall, accept(...rules)).map(({ serial, findings }) =>
        [serial, ...findings.map(({ rule }) => rule)].join(" "),
      );
    expect(open()).toEqual(["AB1234 V01 G01"]);
    expect(open("G01")).toEqual(["AB1234 V01"]);
    expect(open("G01", "V01")).toEqual([]);
  });
});
