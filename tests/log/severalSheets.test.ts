import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { describeLog } from "../../src/log/describeLog";
import { readLog } from "../../src/log/readLog";
import { sheetOf } from "./sheets";

const HEADINGS = ["Date", "Serial", "PSI In", "PSI Out", "O2 %", "Tech"];
const month = (name: string, date: string) =>
  sheetOf([[name], HEADINGS, [date, "A10001", 500, 3000, 31.8, "R."]], { name });
const register = sheetOf([["Serial", "Hydro", "Visual"], ["A10001", "10/23", "4/26"]], { name: "Register" }); // prettier-ignore

describe("several sheets", () => {
  it("one per month and a register are one log, found by their headings", () => {
    const log = readLog([month("August", "2026-08-03"), month("September", "2026-09-03"), register]);
    expect(log.sheets.map(({ kind }) => kind)).toEqual(["fills", "fills", "register"]);
    expect(log.fills.map(({ sheet }) => sheet)).toEqual(["August", "September"]);
    expect(log.rows).toMatchObject({ total: 8, fills: 2, cylinders: 1, headings: 5 });
  });

  it("agree on the order of dates: one clear day in one month settles the others", () => {
    const log = readLog([month("August", "03/08/2026"), month("September", "13/09/2026")]);
    expect(log.fills.map(({ fields: { date } }) => date.kind === "value" && date.value.toString())).toEqual([
      "2026-08-03",
      "2026-09-13",
    ]);
    expect(log.sheets.flatMap(({ columns }) => columns.flatMap(({ question }) => question ?? []))).toEqual(
      [],
    );
  });

  it("of something else are left out, each with a sentence that says so, and their rows not counted", () => {
    const others = [
      sheetOf([["Item", "Price", "Stock"], ["O-ring", 1.5, 20]], { name: "Prices" }),
      sheetOf([["Date", "Hours", "Filter hrs", "Initials"], ["2026-08-03", 120.5, 20, "R."]], { name: "Compressor" }),
      sheetOf([["Date", "Oil mg/m3", "CO ppm", "Result"], ["2026-08-01", 0.1, 1, "pass"]], { name: "Air tests" }),
      sheetOf([["What", "We pay", "per", "Holds", "Full (psi)", "Left (psi)"], ["Oxygen", 62, "bottle", 300, 2600, 200]], { name: "Price list" }),
      sheetOf([["Date", "What", "In or out", "How many", "Standing at (psi)", "Note"], ["2026-08-03", "Oxygen", "in", 2, 2600, ""]], { name: "Deliveries" }),
      sheetOf([["Remember to lock up"]], { name: "Notes" }),
      sheetOf([], { name: "Empty" }),
    ]; // prettier-ignore
    const log = readLog([month("August", "2026-08-03"), ...others]);
    for (const sheet of log.sheets.slice(1)) {
      expect(sheet).toMatchObject({ kind: "neither", leftOut: true });
      expect(sheet.why).toContain(`“${sheet.name}” was left out`);
    }
    expect(log.rows).toMatchObject({ total: 3, unreadable: 0 });
    expect(
      describeLog(log)
        .sheets.slice(1)
        .every(({ rows }) => rows.length === 0),
    ).toBe(true);
  });

  it("that say neither which cylinder nor which day are blends worked out, unless somebody says they are a log", () => {
    const board = sheetOf(
      [
        ["Start psi", "Mix", "End psi"],
        [500, 32, 3000],
        [800, 36, 3440],
        [0, 50, 2900],
      ],
      { name: "Blend board" },
    );
    const sheets = [month("August", "2026-08-03"), board];
    const log = readLog(sheets);
    expect(log.sheets[1]).toMatchObject({ kind: "neither", leftOut: true });
    expect(log.rows).toMatchObject({ total: 3, fills: 1, unreadable: 0 });
    const chosen = readLog(sheets, { choices: [{ sheet: "Blend board", use: true, columns: [] }] });
    expect(chosen.sheets[1]).toMatchObject({ kind: "fills" });
    expect(chosen.rows.total).toBe(7);
    expect(readLog([board]).sheets[0]).toMatchObject({ kind: "fills" });
  });

  it("that are all something else are read none the less, so that nothing is passed over", () => {
    const log = readLog([sheetOf([["Item", "Price"], ["O-ring", 1.5]], { name: "Prices" })]); // prettier-ignore
    expect(log.sheets[0]).toMatchObject({
      kind: "neither",
      why: expect.stringContaining("Say what") as string,
    });
    expect(log.rows).toMatchObject({ total: 2, headings: 1, unreadable: 1 });
  });

  it("may be hidden, and are read all the same", () => {
    const log = readLog([{ ...month("August", "2026-08-03"), hidden: true }]);
    expect(log.rows.fills).toBe(1);
  });
});

describe("a log described", () => {
  const log = readLog(
    [
      sheetOf([
        ["Date", "Serial", "Start psi", "End psi", "Ordered mix", "O2 %"],
        ["10/3/2026", "G-16807130", 500, "3300/3000", { v: 18537, f: "mmm-yy" }, "??"],
        [null, null, null, 3000, null, null],
      ]),
      sheetOf([["Serial", "Hydro", "Hydro 2", "Visual"], ["A10001", "6/04", "7/09", { v: 46314, f: "d-mmm" }], ["A10002", "6/04", null, "4/26"]], { name: "Register" }),
    ],
    { dateOrder: "month first", stampOrder: "month first", asOf: Temporal.PlainDate.from("2026-10-31") },
  ); // prettier-ignore
  const described = describeLog(log);

  it("names its sheets, their columns and how sure they are", () => {
    expect(described.sheets.map(({ name }) => name)).toEqual(["Fills", "Register"]);
    expect(described.sheets[0]!.columns[3]).toEqual({
      column: "D",
      heading: "End psi",
      field: "endPressure",
      unit: "psi",
      confidence: 0.95,
    });
  });

  it("gives every field as it stands and as it was read", () => {
    expect(described.sheets[0]!.rows[1]).toEqual({
      row: 2,
      kind: "fill",
      fields: {
        date: { raw: "10/3/2026", value: "2026-10-03" },
        serial: { raw: "G-16807130", value: "G16807130" },
        startPressure: {
          raw: 500,
          value: { bar: 34.474, written: { value: 500, unit: "psi" } },
          unit: "psi",
        },
        endPressure: {
          raw: "3300/3000",
          value: { bar: 206.843, written: { value: 3000, unit: "psi" }, hotBar: 227.527 },
          unit: "psi",
          note: "hot and cold: “3300/3000”",
        },
        orderedMix: {
          raw: 18537,
          value: { oxygen: 10, helium: 50 },
          unit: "%",
          note: expect.stringContaining("turned into a date") as string,
        },
        analysedMix: { raw: "??", unreadable: expect.stringContaining("not known") as string },
      },
    });
  });

  it("gives doubts as choices, and further tests beside the first", () => {
    expect(described.sheets[1]!.rows[1]).toMatchObject({
      fields: { visual: { raw: 46314, choices: ["2019-10", "2026-10"] }, hydro: { value: "2004-06" } },
      furtherTests: [{ field: "hydro", column: "C", raw: "7/09", value: "2009-07" }],
    });
  });

  it("adds up its rows, and names the cell that could not be read", () => {
    const { total, fills, cylinders, blank, headings, totals, unreadable } = described.rows;
    expect(total).toBe(fills + cylinders + blank + headings + totals + unreadable);
    expect(described.rows).toMatchObject({ total: 6, fills: 1, cylinders: 2, headings: 2, unreadable: 1 });
    expect(described.sheets[0]!.rows[2]).toMatchObject({
      kind: "unreadable",
      cell: "D3",
      why: expect.stringMatching(/\.$/) as string,
    });
  });
});
