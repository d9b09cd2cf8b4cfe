import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import type { LogContext } from "../../src/log/context";
import { readLog } from "../../src/log/readLog";
import { readColumn, readTable, said } from "./reading";
import { sheetOf } from "./sheets";

/** Faults reported against general spreadsheet and CSV libraries that would spoil the reading of a fill log. */
const US: LogContext = {
  units: "us",
  dateOrder: "month first",
  stampOrder: "month first",
  asOf: Temporal.PlainDate.from("2026-10-31"),
};
const register = { of: "register" } as const;

describe("blank is not zero", () => {
  it("a blank hydro, or the 0 of an empty cell in a date format, is blank and not the year 1900", () => {
    const cells = [null, "", { v: 0, f: "m/d/yyyy" }, 0];
    expect(readColumn("Hydro", cells, US, register).map(said)).toEqual(["blank", "blank", "blank", "blank"]);
    expect(readColumn("Date", [{ v: 0, f: "m/d/yyyy" }], US).map(said)).toEqual(["blank"]);
  });

  it("a typed 0 psi is an empty cylinder, a blank start pressure is none", () => {
    const [zero, blank, spaces] = readColumn("Start PSI", [0, null, "   "], US);
    expect(said(zero!)).toEqual({ bar: 0, written: { value: 0, unit: "psi" } });
    expect(said(blank!)).toBe("blank");
    expect(said(spaces!)).toBe("blank");
  });

  it("0 % of oxygen is no reading", () => {
    expect(readColumn("O2 %", [0, 31.8], US).map(said)[0]).toBe("unreadable");
  });
});

describe("text stays what it was typed as", () => {
  it("32 % is oxygen, not the year 2032", () => {
    expect(readColumn("O2 %", ["32%", "36%", "50%", "10 %"], US).map(said)).toEqual(
      [32, 36, 50, 10].map((oxygen) => ({ oxygen, helium: 0 })),
    );
  });

  it("words with numbers are no dates", () => {
    expect(readColumn("Serial no.", ["SN 08234", "T-12", "S-DGF-36.2"], US).map(said)).toEqual([
      "08234",
      "T12",
      "SDGF36.2",
    ]);
    expect(readColumn("Ordered mix", ["EAN 32"], US).map(said)).toEqual([{ oxygen: 32, helium: 0 }]);
    expect(readColumn("Date", ["EAN 32", "T-12"], US).map(said)).toEqual(["unreadable", "unreadable"]);
  });

  it("serials keep their zeros and their E", () => {
    expect(
      readColumn("Serial no.", ["00083", "713752e1", "1E1680073", { v: 83, f: "00000" }], US).map(said),
    ).toEqual(["00083", "713752E1", "1E1680073", "00083"]);
  });

  it("a serial that the spreadsheet turned into a power of ten or a date is lost, and said so", () => {
    const lost = readColumn("Serial no.", [1.2e46, { v: 45000, f: "m/d/yyyy" }, 12.5], US);
    expect(lost.map(said)).toEqual(["unreadable", "unreadable", "unreadable"]);
    expect(lost[0]!.unreadable).toContain("formatted as text");
  });
});

describe("days", () => {
  it("old Mac workbooks count from 1904", () => {
    const [day] = readColumn("Date", [{ v: 42277, f: "d/m/yyyy" }], US, { dateSystem: 1904 });
    expect(day!.value).toBe("2019-10-01");
  });

  it("one column is read in one order", () => {
    expect(readColumn("Date", ["03/09/2018", "14/09/2018"]).map(said)).toEqual(["2018-09-03", "2018-09-14"]);
    expect(readColumn("Date", ["03/09/2018", "09/14/2018"]).map(said)).toEqual(["2018-03-09", "2018-09-14"]);
  });

  it("without a day above 12 and without a country both readings stay open", () => {
    expect(readColumn("Date", ["03/09/2018"]).map(said)).toEqual([{ either: ["2018-09-03", "2018-03-09"] }]);
  });

  it("two-digit years end where the field can reach", () => {
    expect(readColumn("Hydro", ["08/94", "6-01"], US, register).map(said)).toEqual(["1994-08", "2001-06"]);
    expect(readColumn("Hydro due", ["05/31"], US, register).map(said)).toEqual(["2031-05"]);
    expect(readColumn("Date", ["10/15/95", "10/15/26"], US).map(said)).toEqual(["1995-10-15", "2026-10-15"]);
  });

  it("29 February 2023 is no day, and not 1 March", () => {
    expect(readColumn("Date", ["02/29/2023", "02/29/2024"], US).map(said)).toEqual([
      "unreadable",
      "2024-02-29",
    ]);
  });
});

describe("numbers", () => {
  it("decimal commas", () => {
    expect(readColumn("O2", ["31,8", "32,4"], US).map(said)).toEqual([
      { oxygen: 31.8, helium: 0 },
      { oxygen: 32.4, helium: 0 },
    ]);
    expect(readColumn("Start bar", ["207,5", "1.355,90"]).map(said)[0]).toEqual({
      bar: 207.5,
      written: { value: 207.5, unit: "bar" },
    });
    expect(readColumn("Price", ["1.355,90", "8,00 €", "1,355.90", "8.-"]).map(said)).toEqual([
      1355.9, 8, 1355.9, 8,
    ]);
  });

  it("thousands in every style", () => {
    const spellings = [
      "3,000",
      "3 000",
      "3\u00a0000",
      "3\u202f000",
      "3'000",
      "3’000",
      " 3000 ",
      "'3000",
      "3000 psi",
    ];
    for (const reading of readColumn("End PSI", spellings, US))
      expect(said(reading)).toEqual({ bar: 206.843, written: { value: 3000, unit: "psi" } });
  });
});

describe("headings", () => {
  it("a byte-order mark and typesetter's spaces do not hide a heading", () => {
    const { columns } = readTable(["\ufeffSerial", "Hydro\u00a0Date"], [["A10001", "2024-05"]]);
    expect(columns.map(({ field }) => field)).toEqual(["serial", "hydro"]);
  });

  it("names that come twice keep their columns: first in, then out", () => {
    const { columns } = readTable(
      ["Serial", "Press", "Mix", "Press", "Mix"],
      [["A10001", 50, "air", 200, "32"]],
    );
    expect(columns.map(({ field }) => field)).toEqual([
      "serial",
      "startPressure",
      "startMix",
      "endPressure",
      "analysedMix",
    ]);
  });

  it("groups over two rows give each column its own meaning, merged or not", () => {
    for (const merges of [[], ["A1:B1", "C1:D1"]]) {
      const sheet = sheetOf(
        [
          ["INITIAL", null, "FINAL"],
          ["psi", "O2", "psi", "O2"],
          [500, 21, 3000, 32],
        ],
        { merges },
      );
      expect(readLog([sheet]).sheets[0]!.columns.map(({ field }) => field)).toEqual([
        "startPressure",
        "startMix",
        "endPressure",
        "analysedMix",
      ]);
    }
  });

  it("a heading called __proto__ or constructor is a heading like others", () => {
    const { columns, rows } = readTable(
      ["__proto__", "constructor", "toString", "Serial", "Hydro"],
      [["x", "y", "z", "A10001", "2024-05"]],
    );
    expect(columns.map(({ field }) => field)).toEqual([null, null, null, "serial", "hydro"]);
    expect(rows[1]!.kind).toBe("cylinder");
    const context = {
      choices: [{ sheet: "Fills", columns: [{ heading: "Hydro", nth: 0, field: "__proto__", answers: {} }] }],
    };
    expect(readTable(["Serial", "Hydro"], [["A1", "2024-05"]], context).columns[1]!.field).toBe("hydro");
  });
});

describe("rows far down", () => {
  it("a sheet whose rows are blank to row 12,000 has twenty cylinders and the rest blank", () => {
    const rows = Array.from({ length: 12000 }, (_, at) => (at < 20 ? [`A1000${at}`, "2024-05"] : []));
    const { rows: counts } = readLog([sheetOf([["Serial", "Hydro"], ...rows])]);
    expect(counts).toMatchObject({ total: 12001, cylinders: 20, blank: 11980, headings: 1 });
  });
});
