import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { countryRules } from "../../src/cylinders/countryRules";
import type { LogContext } from "../../src/log/context";
import { countryContext } from "../../src/log/countryContext";
import type { Reading } from "../../src/log/reading";
import { readLog } from "../../src/log/readLog";
import { readColumn, said, understood } from "./reading";
import { sheetOf, type FixtureCell } from "./sheets";

const asOf = Temporal.PlainDate.from("2026-10-31");
const US: LogContext = { ...countryContext(countryRules("US")), units: "us", asOf };
const GERMANY: LogContext = { ...countryContext(countryRules("DE")), units: "metric", asOf };
const register = { of: "register" } as const;

/** The hydros of a register, as the log keeps them. */
function hydros(cells: readonly FixtureCell[], context: LogContext = US): readonly Reading<unknown>[] {
  const rows = cells.map((cell, at) => [`A1000${at}`, "6061", cell]);
  return readLog([sheetOf([["Serial", "Alloy", "Hydro"], ...rows])], context).cylinders.map(
    ({ fields }) => fields.hydro,
  );
}

const doubts = (readings: readonly Reading<unknown>[]) =>
  readings.map((reading) => (reading.kind === "ambiguous" ? reading.doubt : reading.kind));

/** 19 October 2026, as a month-first spreadsheet keeps a typed 10/19. */
const OCTOBER_19 = 46314;

describe("a bare start pressure in a column whose unit nobody stated", () => {
  const start = (cell: FixtureCell, end: FixtureCell, heading = "In") => {
    const others = [500, 600, 700].map((psi) => ["2026-10-03", "A10001", psi, 3000]);
    const rows = [["Date", "Serial", heading, "Out"], ...others, ["2026-10-04", "A10002", cell, end]];
    const reading = readLog([sheetOf(rows)], { asOf }).fills.at(-1)!.fields.startPressure;
    if (reading.kind === "ambiguous")
      return reading.choices.map(({ written: { unit } }) => unit).join(" or ");
    return reading.kind === "value" ? reading.value.written.unit : reading.kind;
  };

  it("is in doubt beside an end pressure in the other unit, or in nobody knows which", () => {
    expect(start(50, "200 bar")).toBe("bar or psi");
    expect(start("50", 210)).toBe("bar or psi");
  });

  it("is none where it could be nothing else, or its cell or heading says the unit", () => {
    expect(start(50, 3000)).toBe("psi");
    expect(start(500, "200 bar")).toBe("psi");
    expect(start(0, "200 bar")).toBe("psi");
    expect(start("50 psi", "200 bar")).toBe("psi");
    expect(start(50, "200 bar", "Start psi")).toBe("psi");
  });
});

describe("units that nobody stated", () => {
  const read = (country: string, headings: readonly string[], rows: readonly (readonly FixtureCell[])[]) =>
    readLog([sheetOf([["Datum", "Seriennummer", ...headings], ...rows.map((row) => ["2026-10-03", "A10001", ...row])])], {
      ...countryContext(countryRules(country)),
      asOf,
    }); // prettier-ignore
  const columns = (...given: Parameters<typeof read>) =>
    read(...given).sheets[0]!.columns.slice(2).map(({ unit, assumed, question }) => ({ unit, assumed, asked: question?.about })); // prettier-ignore
  const GERMAN = ["Restdruck", "Enddruck", "MOD", "Temperatur"];
  const METRIC = [
    [50, 200, 34, 21],
    [30, 232, 29, 38],
  ];
  const IMPERIAL = [
    [500, 3000, 111, 75],
    [400, 3300, 130, 101],
  ];

  it("are bar, m and °C where those are usual, and that is said", () => {
    const [start, ...rest] = columns("DE", GERMAN, METRIC);
    expect(start).toEqual({
      unit: "bar",
      assumed: "The pressures under “Restdruck” were taken for bar, as is usual where the rules hold.",
      asked: undefined,
    });
    expect(rest.map(({ unit }) => unit)).toEqual(["bar", "m", "°C"]);
    expect(rest.map(({ assumed }) => assumed)).toEqual([
      expect.stringContaining("“Enddruck” were taken for bar"),
      expect.stringContaining("The depths under “MOD” were taken for m,"),
      expect.stringContaining("The temperatures under “Temperatur” were taken for °C,"),
    ]);
    expect(read("DE", GERMAN, METRIC).fills[1]!.fields.endPressure).toMatchObject({
      kind: "value",
      value: { written: { value: 232, unit: "bar" } },
    });
  });

  it("are psi, ft and °F in the US", () => {
    const all = columns("US", ["Start pressure", "End pressure", "MOD", "Temperature"], IMPERIAL);
    expect(all.map(({ unit }) => unit)).toEqual(["psi", "psi", "ft", "°F"]);
    expect(all[2]!.assumed).toContain("taken for ft");
    const [start] = columns("US", ["Start pressure"], [[500], [300]]);
    expect(start).toMatchObject({ unit: "psi", asked: undefined });
  });

  it("are asked where the values say otherwise", () => {
    const asked = (...given: Parameters<typeof read>) =>
      columns(...given).map(({ unit, asked }) => unit ?? asked);
    expect(asked("US", ["Start pressure", "End pressure", "MOD"], [[50, 200, 34], [30, 232, 29]])).toEqual(["unit", "unit", "unit"]); // prettier-ignore
    expect(asked("DE", ["Enddruck"], [[200], [232], [3000]])).toEqual(["unit"]);
    expect(asked("DE", ["Enddruck"], [[200], [232], ["3000 psi"]])).not.toEqual(["bar"]);
    expect(asked("DE", GERMAN, IMPERIAL)).toEqual(["psi", "psi", "unit", "°F"]);
    expect(asked("DE", ["MOD"], [[111], [34]])).toEqual(["unit"]);
    expect(asked("US", ["MOD"], [[34], [29]])).toEqual(["unit"]);
  });

  it.each(["CA", "CA-NB", "HK", "JP"])("are asked under the rules of %s, where both are used", (country) => {
    expect(columns(country, GERMAN, METRIC).map(({ unit, asked }) => unit ?? asked)).toEqual([
      "unit",
      "unit",
      "unit",
      "unit",
    ]);
  });

  it("are those of the shop before those of the country", () => {
    const rows = [["Date", "Serial", "Start pressure", "MOD"], ["2026-10-03", "A10001", 50, 34]]; // prettier-ignore
    const context = { ...countryContext(countryRules("US")), units: "metric", asOf } as const;
    const [, , start, mod] = readLog([sheetOf(rows)], context).sheets[0]!.columns;
    expect([start!.unit, start!.assumed, mod!.unit, mod!.assumed]).toEqual([
      "bar",
      undefined,
      "m",
      undefined,
    ]);
  });
});

describe("“Fülldruck”", () => {
  const columns = (headings: readonly string[], rows: readonly (readonly FixtureCell[])[], said: LogContext["said"] = []) =>
    readLog([sheetOf([["Datum", "Seriennummer", ...headings], ...rows.map((row) => ["2026-10-03", "A10001", ...row])])], { ...GERMANY, said }).sheets[0]!.columns.slice(2); // prettier-ignore
  const fields = (...given: Parameters<typeof columns>) => columns(...given).map(({ field }) => field);

  it("beside “Enddruck” is the working pressure, wherever it stands", () => {
    expect(fields(["Fülldruck", "Enddruck"], [[232, 240], [200, 195]])).toEqual(["servicePressure", "endPressure"]); // prettier-ignore
    expect(fields(["Enddruck", "Fuelldruck"], [[240, 232], [195, 200]])).toEqual(["endPressure", "servicePressure"]); // prettier-ignore
  });

  it("beside “Enddruck” is asked where its cells are no working pressures", () => {
    const [full, end] = columns(["Fülldruck", "Enddruck"], [[215, 201], [238, 228]]); // prettier-ignore
    expect(end!.field).toBe("endPressure");
    expect(full).toMatchObject({
      field: undefined,
      question: { about: "field", choices: ["pressure reached", "working pressure"] },
    });
  });

  it("alone is the pressure reached, but asked where it shows only working pressures", () => {
    expect(fields(["Restdruck", "Fülldruck"], [[50, 198], [30, 232]])).toEqual(["startPressure", "endPressure"]); // prettier-ignore
    const [, full] = columns(["Restdruck", "Fülldruck"], [[50, 200], [30, "232 bar"]]); // prettier-ignore
    expect(full!.field).toBeUndefined();
    expect(full!.question!.sentence).toBe(
      "Does “Fülldruck” show the pressure reached in the fill, or the working pressure?",
    );
  });

  it("is what the shop says it is", () => {
    const rows = [[50, 200], [30, 232]]; // prettier-ignore
    for (const [choice, field] of [
      ["pressure reached", "endPressure"],
      ["working pressure", "servicePressure"],
    ] as const) {
      // prettier-ignore
      const said = [{ heading: "Fülldruck", answers: { field: choice } }];
      const [, full] = columns(["Restdruck", "Fülldruck"], rows, said);
      expect([full!.field, full!.question]).toEqual([field, undefined]);
    }
  });
});

describe("a stamp that the spreadsheet swallowed", () => {
  it("is suspected in a column that otherwise holds month stamps, with the likely stamp first", () => {
    const [, , , swallowed] = readColumn("Hydro", ["8/22", "3/24", "2023/07", { v: OCTOBER_19, f: "d-mmm" }], US, register); // prettier-ignore
    expect(swallowed).toMatchObject({
      choices: ["2019-10", "2026-10"],
      note: expect.stringContaining("2019/10") as string,
    });
    expect(doubts(hydros(["8/22", "3/24", "2023/07", { v: OCTOBER_19, f: "d-mmm" }]))[3]).toBe(
      "swallowed stamp",
    );
  });

  it("is not suspected in a column of whole dates", () => {
    const dates = ["2022-08-03", "2024-03-11", "2023-07-30", { v: OCTOBER_19, f: "m/d/yyyy" }];
    expect(doubts(hydros(dates))).toEqual(["value", "value", "value", "value"]);
  });

  it("is not suspected of the first of a month, nor where the stamp would lie after the day", () => {
    const first = { v: 45931, f: "m/d/yyyy" }; // 1 October 2025
    const later = { v: 46233, f: "m/d/yyyy" }; // 30 July 2026, which as a stamp would be July 2030
    expect(doubts(hydros(["8/22", "3/24", "2023/07", first, later]))[3]).toBe("value");
    expect(doubts(hydros(["8/22", "3/24", "2023/07", first, later]))[4]).toBe("value");
  });

  it("is suspected of a day below 13 as well", () => {
    const fifth = { v: 46300, f: "m/d/yyyy" }; // 5 October 2026, or the stamp 10/05
    expect(readColumn("Hydro", ["8/22", "3/24", fifth], US, register).map(said)[2]).toEqual({
      either: ["2005-10", "2026-10"],
    });
  });

  it("is the same in the text a spreadsheet exports", () => {
    expect(doubts(hydros(["8/22", "3/24", "19-Oct"]))[2]).toBe("swallowed stamp");
  });
});

describe("two numbers, both 12 or less", () => {
  it("are no doubt where the country gives the order: month first in the US", () => {
    expect(readColumn("Hydro", ["09/11", "10/12"], US, register).map(said)).toEqual(["2011-09", "2012-10"]);
    expect(readColumn("Date", ["03/04/2026"], US).map(said)).toEqual(["2026-03-04"]);
  });

  it("are no doubt where the column gives the order, whatever the country", () => {
    expect(readColumn("Hydro", ["09/11", "22/08"], US, register).map(said)).toEqual(["2009-11", "2022-08"]);
    expect(readColumn("Date", ["03/04/2026", "31/03/2026"], US).map(said)).toEqual([
      "2026-04-03",
      "2026-03-31",
    ]);
  });

  it("are a doubt, and asked about, where neither does", () => {
    const readings = hydros(["09/11", "10/12"], { asOf });
    expect(doubts(readings)).toEqual(["stamp order", "stamp order"]);
    expect(understood("Hydro", ["09/11", "10/12"], { asOf }, register).question).toMatchObject({
      about: "stamp order",
      choices: ["month first", "year first"],
    });
    expect(understood("Date", ["03/04/2026"], { asOf }).question).toMatchObject({
      about: "date order",
      choices: ["day first", "month first"],
    });
  });

  it("are a doubt where the column contradicts itself", () => {
    const readings = readColumn("Date", ["13/04/2026", "04/13/2026", "03/04/2026"], { asOf }).map(said);
    expect(readings).toEqual(["2026-04-13", "2026-04-13", { either: ["2026-04-03", "2026-03-04"] }]);
  });
});

describe("two-digit years", () => {
  it("are what the field can mean: done, made, filled, or due", () => {
    expect(readColumn("Hydro", ["08/94", "6/01", "10/26"], US, register).map(said)).toEqual([
      "1994-08", "2001-06", "2026-10",
    ]); // prettier-ignore
    expect(readColumn("Made", ["08/64", "6/01"], US, register).map(said)).toEqual(["1964-08", "2001-06"]);
    expect(readColumn("Hydro due", ["05/31", "10/27"], US, register).map(said)).toEqual([
      "2031-05",
      "2027-10",
    ]);
    expect(readColumn("Date", ["10/15/99", "10/15/26"], US).map(said)).toEqual(["1999-10-15", "2026-10-15"]);
  });
});

describe("the last test, or the next one due", () => {
  const means = (readings: readonly Reading<unknown>[]) =>
    readings.map((reading) =>
      reading.kind === "value" ? (reading.value as { means: string }).means : reading.kind,
    );

  it("is told by the heading, whatever the country", () => {
    const [last, next] = ["Letzte Druckprüfung", "Nächste Prüfung"].map(
      (heading) => readColumn(heading, ["2022-08"], GERMANY, register)[0]!.stamp,
    );
    expect(last).toMatchObject({ means: "test" });
    expect(next).toMatchObject({ means: "due" });
    expect(readColumn("Hydro due", ["8/27"], US, register)[0]!.stamp).toMatchObject({ means: "due" });
  });

  it("in Germany, where stamps show the next test, is due where the dates lie ahead", () => {
    expect(means(hydros(["27/08", "28/03", "29/11"], GERMANY))).toEqual(["due", "due", "due"]);
  });

  it("in Germany is asked where all dates lie behind, as done tests would", () => {
    const behind = ["2022/08", "2023/03", "2021/11"];
    expect(doubts(hydros(behind, GERMANY))).toEqual(["stamp means", "stamp means", "stamp means"]);
    expect(understood("Hydro", behind, GERMANY, register).question).toMatchObject({
      about: "stamp means",
      choices: ["last test", "next due"],
    });
  });

  it("elsewhere is the last test, but for columns whose dates lie ahead", () => {
    expect(means(hydros(["8/22", "3/24", "7/23"]))).toEqual(["test", "test", "test"]);
    expect(means(hydros(["8/27", "3/29", "7/28"]))).toEqual(["due", "due", "due"]);
  });

  it("is asked of a due date that says nothing of which test", () => {
    expect(understood("Exp", ["8/27"], US, register).question).toMatchObject({
      about: "field",
      choices: ["hydro", "visual", "oxygen cleaning"],
    });
  });
});
