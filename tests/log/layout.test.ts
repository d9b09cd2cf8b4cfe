import { describe, expect, it } from "vitest";
import { describeLog } from "../../src/log/describeLog";
import { readLog } from "../../src/log/readLog";
import { sheetOf, type FixtureCell } from "./sheets";

/** How rows are laid out on a sheet: what is a heading, a title, a total, a fill. */
const HEADINGS: readonly FixtureCell[] = ["Date", "Serial", "Start psi", "End psi", "Mix", "Price"];
const FILL: readonly FixtureCell[] = ["2026-08-03", "A10001", 500, 3000, "EAN32", 12];
const OTHER: readonly FixtureCell[] = ["2026-08-04", "A10002", 700, 2900, "EAN36", 14];

function kinds(rows: readonly (readonly FixtureCell[])[]): readonly string[] {
  return readLog([sheetOf(rows)]).sheets[0]!.rowKinds;
}

function headings(rows: readonly (readonly FixtureCell[])[], merges: readonly string[] = []) {
  const { columns, rowKinds } = readLog([sheetOf(rows, { merges })]).sheets[0]!;
  return {
    headings: columns.map(({ heading }) => heading),
    fields: columns.map(({ field }) => field),
    rowKinds,
  };
}

describe("headings over two rows of which some are merged", () => {
  const upper = ["Date", "Serial", "Initial", null, "Final", null, "MOD", null, null];
  const lower = [null, null, "psi", "mix", "psi", "mix", "ft", "Tech", "Notes"];
  const row = ["2026-08-03", "A10001", 500, "air", 3000, 31.8, 111, "R.", "slow fill"];

  it("leave what is beside an unmerged group alone", () => {
    const read = headings([upper, lower, row], ["C1:D1", "E1:F1"]);
    expect(read.headings.slice(2)).toEqual([
      "Initial psi", "Initial mix", "Final psi", "Final mix", "MOD ft", "Tech", "Notes",
    ]); // prettier-ignore
    expect(read.fields.slice(6)).toEqual(["modOnLabelM", "filledBy", "remarks"]);
  });

  it("are the lower ones where the group has said what the two would say together", () => {
    const read = headings([upper, lower, row]);
    expect(read.headings.slice(6)).toEqual(["MOD ft", "Tech", "Notes"]);
    expect(read.fields.slice(2)).toEqual([
      "startPressure", "startMix", "endPressure", "analysedMix", "modOnLabelM", "filledBy", "remarks",
    ]); // prettier-ignore
  });

  it("keep the tests of a group together, of which there may be several", () => {
    const read = headings([
      ["Serial", "Alloy", "Hydro", null],
      [null, null, "last", "due date"],
      ["A10001", "6061", "2023/08", "2028/08"],
    ]);
    expect(read.headings).toEqual(["Serial", "Alloy", "Hydro last", "Hydro due date"]);
    expect(read.fields.slice(2)).toEqual(["hydro", "hydro"]);
  });
});

describe("headings over two rows", () => {
  const upper = ["Date", "Serial", "Initial", null, "Final", null, "Method"];
  const lower = ["", null, "psi", "mix", "psi", "mix", null];
  const row = ["2026-08-03", "A10001", 500, "air", 3000, 31.8, "PP"];
  const wanted = ["Date", "Serial", "Initial psi", "Initial mix", "Final psi", "Final mix", "Method"];

  it("are joined column by column, merged or not", () => {
    for (const merges of [[], ["A1:A2", "B1:B2", "C1:D1", "E1:F1", "G1:G2"]]) {
      const read = headings([upper, lower, row], merges);
      expect(read.headings).toEqual(wanted);
      expect(read.fields).toEqual([
        "date", "serial", "startPressure", "startMix", "endPressure", "analysedMix", "method",
      ]); // prettier-ignore
      expect(read.rowKinds).toEqual(["heading", "heading", "fill"]);
    }
  });

  it("that say the same twice say it once", () => {
    const twice = ["Date", "Serial", "psi", "mix", "psi", "mix", "Method"];
    const group = ["Date", "Serial", "Initial", "Initial", "Final", "Final", "Method"];
    expect(headings([group, twice, row]).headings).toEqual(wanted);
  });

  it("are not made of headings and the first row of text", () => {
    const text = ["2026-08-03", "A10001", "500", "3000", "EAN32", "12"];
    expect(headings([HEADINGS, text, text])).toMatchObject({
      headings: HEADINGS,
      rowKinds: ["heading", "fill", "fill"],
    });
  });

  it("may come again further down, one row or both", () => {
    expect(kinds([upper, lower, row, upper, lower, row, lower, row])).toEqual([
      "heading", "heading", "fill", "heading", "heading", "fill", "heading", "fill",
    ]); // prettier-ignore
  });
});

describe("units in a row of their own", () => {
  const named = ["Date", "Serial", "Start", "End", "O2", "Temp"];
  const units = ["dd/mm/yyyy", null, "bar", "bar", "(%)", "°C"];
  const row = ["2026-08-03", "A10001", 50, 200, 31.8, 25];
  const unitsOf = (rows: readonly (readonly FixtureCell[])[]) =>
    readLog([sheetOf(rows)]).sheets[0]!.columns.map(({ field, unit }) => unit ?? field);
  const wanted = ["date", "serial", "bar", "bar", "analysedMix", "°C"];

  it("belong to the headings above, of one row or two, also where they are repeated", () => {
    expect(unitsOf([named, units, row])).toEqual(wanted);
    expect(kinds([named, units, row, named, units, row])).toEqual([
      "heading", "heading", "fill", "heading", "heading", "fill",
    ]); // prettier-ignore
    const groups = ["", "", "Pressure", null, "Analysis", null];
    expect(unitsOf([groups, named, units, row])).toEqual(wanted);
    expect(kinds([groups, named, units, row])).toEqual(["heading", "heading", "heading", "fill"]);
  });

  it("are no units where anything else stands among them", () => {
    expect(kinds([named, [null, "A10000", "bar", "bar"], row])).toEqual(["heading", "unreadable", "fill"]);
  });
});

describe("headings further down that say something else", () => {
  const headings = ["Date", "Serial", "Start psi", "End psi", "O2 added psi", "Analysed O2 %"];
  const fill = ["2026-08-03", "A10001", 500, 3000, 400, 32];
  /** How each fill's end pressure is written, and what the heading of its oxygen says it is. */
  const readUnder = (rows: readonly (readonly FixtureCell[])[]) => {
    const log = readLog([sheetOf(rows)]);
    return log.fills.map(({ row, fields: { endPressure } }) => {
      const column = log.sheets[0]!.columns.find(
        ({ field, rows }) =>
          field === "oxygenAdded" && (!rows || (row >= rows.first && row <= rows.last)),
      );
      return [endPressure.kind === "value" ? endPressure.value.written.unit : endPressure.kind, column?.adds];
    });
  };

  it("are no repeat: what stands below is read by the new ones", () => {
    const inBar = ["Date", "Serial", "Start bar", "End bar", "O2 added bar", "Analysed O2 %"];
    const metric = ["2026-08-04", "A10001", 40, 200, 30, 32];
    expect(readUnder([headings, fill, inBar, metric])).toEqual([["psi", "increment"], ["bar", "increment"]]);
    const stops = headings.with(4, "O2 stop psi");
    expect(readUnder([headings, fill, stops, fill.with(4, 900)])).toEqual([["psi", "increment"], ["psi", "stop"]]);
  });

  it("also where only the units below them change", () => {
    const named = ["Date", "Serial", "Start", "End", "O2"];
    const [psi, bar] = [[null, null, "psi", "psi", "%"], [null, null, "bar", "bar", "%"]];
    const rows = [named, psi, fill.slice(0, 4), named, bar, ["2026-08-04", "A10001", 40, 200]];
    expect(readUnder(rows).map(([unit]) => unit)).toEqual(["psi", "bar"]);
  });

  it("are a repeat where nothing but a page or a month is another", () => {
    const page = (name: string) => [...headings, name];
    const rows = [page("Page 1"), fill, page("Page 2"), fill, page("August"), fill];
    expect(readUnder(rows)).toEqual([0, 1, 2].map(() => ["psi", "increment"]));
    expect(readLog([sheetOf(rows)]).sheets[0]!.columns.every(({ rows }) => rows === undefined)).toBe(true);
  });
}); // prettier-ignore

describe("rows that are no fills", () => {
  it("titles above the headings and between the fills are headings, also a month that became a date", () => {
    const rows = [["Gannet Point fills"], [], HEADINGS, ["Week of August 3"], FILL, ["Week of August 10"], OTHER,
      [{ v: 46266, f: "mmm-yy" }], FILL, HEADINGS, OTHER]; // prettier-ignore
    expect(kinds(rows)).toEqual([
      "heading", "blank", "heading", "heading", "fill", "heading", "fill", "heading", "fill", "heading", "fill",
    ]); // prettier-ignore
  });

  it.each([
    ["named", ["Total", null, null, null, null, 26]],
    ["named at the end", [null, null, null, null, "Summe", 26]],
    [
      "named in Spanish",
      ["Totales", null, null, null, null, 26].map((cell) => (cell === "Totales" ? "Suma" : cell)),
    ],
    ["a count", ["2 fills"]],
    ["without a name", [null, null, null, null, null, 26]],
    ["without a name, as text", [null, null, null, null, null, "$26.00"]],
    ["an average without a name", [null, null, null, 2950, null, null]],
  ])("totals: %s", (_, totals) => {
    expect(kinds([HEADINGS, FILL, OTHER, totals])).toEqual(["heading", "fill", "fill", "totals"]);
  });

  it("a number alone that is no sum is not read, and said where", () => {
    for (const alone of [41, "41"]) {
      const log = readLog([sheetOf([HEADINGS, FILL, OTHER, [null, null, null, null, null, alone]])]);
      expect(log.rows.unreadable).toBe(1);
      expect(log.unreadable).toEqual([
        {
          sheet: "Fills",
          row: 3,
          column: expect.any(Number) as number,
          why: expect.stringMatching(/\.$/) as string,
        },
      ]);
    }
  });

  it("a half-written fill whose pressure is that of all others is no average", () => {
    expect(kinds([HEADINGS, FILL, FILL, [null, null, null, 3000]])).toEqual([
      "heading", "fill", "fill", "unreadable",
    ]); // prettier-ignore
  });

  it("a row that says it was not filled is no fill, and not lost", () => {
    const log = readLog([
      sheetOf([
        [...HEADINGS, "Remarks"],
        [...FILL, "ok"],
        ["2026-08-04", "A10002", 500, null, "EAN32", null, "hydro out - not filled"],
        ["2026-08-04", "A10003", null, null, null, null, "Refused: no visual"],
        ["2026-08-04", null, null, null, null, null, "NO FILL"],
        ["2026-08-05", "A10004", 500, "not filled", "EAN32"],
        ["2026-08-05", "A10005", null, null, "nicht gefüllt"],
      ]),
    ]);
    expect(log.rows).toMatchObject({ total: 7, fills: 1, notFilled: 5, unreadable: 0 });
  });

  it("a row that only speaks of it is a fill where gas went in, and else is asked about", () => {
    const kind = (end: number | null, remarks: string) =>
      kinds([
        [...HEADINGS, "Remarks"],
        ["2026-08-04", "A10002", 500, end, "EAN32", null, remarks],
      ])[1];
    for (const remarks of ["not filled", "Refused: hot", "void", "refused to sign"])
      expect(kind(3000, remarks)).toBe("fill");
    for (const remarks of ["refused to sign", "customer declined visual", "no fill whip free"])
      expect(kind(null, remarks)).toBe("unreadable");
    for (const remarks of ["not filled to the top", "call before filling"])
      expect(kind(null, remarks)).toBe("fill");
  });

  it("rows numbered in advance are blank", () => {
    expect(kinds([["No.", ...HEADINGS], [1, ...FILL], [2, ...OTHER], [3], [4]])).toEqual([
      "heading", "fill", "fill", "blank", "blank",
    ]); // prettier-ignore
  });
});

describe("a day alone in its row", () => {
  const HEADED = [
    HEADINGS,
    ["2026-08-03"],
    [null, ...FILL.slice(1)],
    [null, ...OTHER.slice(1)],
    [],
    [{ v: 46238, f: "d-mmm-yy" }], // 4 August 2026
    [null, ...FILL.slice(1)],
    ["Total", null, null, null, null, 12],
    ["Wednesday, 5 August 2026"],
    [null, ...OTHER.slice(1)],
    ["2026-08-06", ...FILL.slice(1)],
    [null, ...OTHER.slice(1)],
  ];
  const days = (rows: readonly (readonly FixtureCell[])[]) =>
    readLog([sheetOf(rows)]).fills.map(({ fields: { date } }) =>
      date.kind === "value" ? `${date.value.toString()} ${date.note ?? ""}`.trim() : date.kind,
    );

  it("holds for the fills below it that have none, until a day of their own; and the reading says so", () => {
    expect(days(HEADED)).toEqual([
      "2026-08-03 from the day above",
      "2026-08-03 from the day above",
      "2026-08-04 from the day above",
      "2026-08-05 from the day above",
      "2026-08-06",
      "blank",
    ]);
    expect(kinds(HEADED)).toEqual([
      "heading", "heading", "fill", "fill", "blank", "heading", "fill", "totals", "heading", "fill", "fill", "fill",
    ]); // prettier-ignore
  });

  it("is read in the order of the other dates, and is asked about with them", () => {
    const rows = [HEADINGS, ["03/08/2026"], [null, ...FILL.slice(1)]];
    expect(days(rows)).toEqual(["ambiguous"]);
    expect(days([...rows, ["13/08/2026", ...OTHER.slice(1)]])).toEqual([
      "2026-08-03 from the day above",
      "2026-08-13",
    ]);
  });

  it("gives fills their day where the log has no date column", () => {
    const headings = ["Time", "Serial", "Start psi", "End psi", "Mix"];
    const fill = ["08:10", "A10001", 500, 3000, "EAN32"];
    const rows = [headings, ["Saturday 3 October 2026"], fill, fill, ["Sunday 4 October 2026"], fill];
    expect(days(rows)).toEqual([
      "2026-10-03 from the day above",
      "2026-10-03 from the day above",
      "2026-10-04 from the day above",
    ]);
    expect(kinds(rows)).toEqual(["heading", "heading", "fill", "fill", "heading", "fill"]);
    expect(readLog([sheetOf(rows)]).sheets[0]!.columns.at(-1)).toMatchObject({
      column: 5,
      heading: "Day above the fills",
      field: "date",
    });
  });

  it("is no day of the fills above the headings, where it may be that of printing", () => {
    expect(days([["2026-10-31"], HEADINGS, [null, ...FILL.slice(1)]])).toEqual(["blank"]);
  });

  it("heads nothing where every fill has a day, or where no cylinder is named below it", () => {
    expect(kinds([HEADINGS, ["2026-08-03"], FILL, OTHER])).toEqual(["heading", "unreadable", "fill", "fill"]);
    expect(days([HEADINGS, ["2026-08-03"], [null, null, 500, 3000, "EAN32"]])).toEqual(["blank"]);
    expect(days([HEADINGS, ["2026-08-03"], ["Total", null, null, 26], [null, ...FILL.slice(1)]])).toEqual([
      "blank",
    ]);
  });
});

describe("what holds for the row below", () => {
  it("a ditto mark repeats the row above, and says so", () => {
    const { rows } = describeLog(
      readLog([sheetOf([HEADINGS, FILL, ['"', "same", 500, 3000, "ditto", "do."]])]),
    ).sheets[0]!;
    expect(rows[2]!.fields).toMatchObject({
      serial: { value: "A10001" },
      date: { value: "2026-08-03", note: expect.stringContaining("above") as string },
      orderedMix: { value: { oxygen: 32, helium: 0 } },
      price: { value: 12 },
    });
  });

  it("a ditto mark below nothing cannot be read", () => {
    const { rows } = describeLog(readLog([sheetOf([HEADINGS, ['"', "A10002", 500, 3000, "air"]])]))
      .sheets[0]!;
    expect(rows[1]!.fields.date?.unreadable).toContain("nothing above");
  });

  it("a date in a tall merged cell holds for every row beside it", () => {
    const sheet = sheetOf([HEADINGS, FILL, [null, ...OTHER.slice(1)]], { merges: ["A2:A3"] });
    const { rows } = describeLog(readLog([sheet])).sheets[0]!;
    expect(rows[2]!.fields.date).toMatchObject({
      value: "2026-08-03",
      note: expect.stringContaining("merged") as string,
    });
  });
});

describe("two tables on one sheet", () => {
  it("are each read under their own headings", () => {
    const sheet = sheetOf([
      ["Serial", "Hydro", "Visual", "Size"],
      ["A10001", "2023-10", "2026-04", "AL80"],
      [],
      HEADINGS,
      FILL,
    ]);
    const log = readLog([sheet]);
    expect(log.rows).toMatchObject({ cylinders: 1, fills: 1, headings: 2, blank: 1, unreadable: 0 });
  });
});
