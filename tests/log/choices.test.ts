import { describe, expect, it } from "vitest";
import type { ColumnChoice, LogContext } from "../../src/log/context";
import { readLog } from "../../src/log/readLog";
import { sheetOf } from "./sheets";

/** What the shop once said of its columns, kept by heading, and by order where a heading comes twice. */
const HEADINGS = ["Date", "Bottle", "In", "Out", "Check", "Check"];
const ROW = ["03/04/2026", "A10001", 50, 200, 31.8, "R."];

const said = (heading: string, more: Partial<ColumnChoice>, nth = 0): ColumnChoice => ({
  heading,
  nth,
  answers: {},
  ...more,
});

function read(columns: readonly ColumnChoice[], headings = HEADINGS, sheet = "Fills", use?: boolean) {
  const context: LogContext = { choices: [{ sheet, columns, use }] };
  return readLog([sheetOf([headings, ROW], { name: "Fills" })], context);
}

describe("choices that were remembered", () => {
  it("say what a column is, one of two with the same heading", () => {
    const [one, other] = [said("Check", { field: "analysedMix" }), said("Check", { field: "analysedBy" }, 1)];
    const { columns } = read([one, other]).sheets[0]!;
    expect(columns.slice(4)).toMatchObject([
      { field: "analysedMix", confidence: 1 },
      { field: "analysedBy", confidence: 1 },
    ]);
  });

  it("say that a column is not to be read", () => {
    const { columns } = read([said("Date", { field: null })]).sheets[0]!;
    expect(columns[0]).toMatchObject({ confidence: 1 });
    expect(columns[0]!.field).toBeUndefined();
  });

  it("answer what was asked of a column, and the question is gone", () => {
    const open = read([]);
    expect(open.sheets[0]!.columns.map(({ question }) => question?.about)).toEqual([
      "date order", undefined, "unit", "unit", undefined, undefined,
    ]); // prettier-ignore
    const answered = read([
      said("Date", { answers: { "date order": "day first" } }),
      said("In", { answers: { unit: "bar" } }),
      said("Out", { answers: { unit: "bar" } }),
    ]);
    expect(answered.sheets[0]!.columns.every(({ question }) => question === undefined)).toBe(true);
    const { date, endPressure } = answered.fills[0]!.fields;
    expect(date.kind === "value" && date.value.toString()).toBe("2026-04-03");
    expect(endPressure).toMatchObject({ value: { written: { value: 200, unit: "bar" } } });
  });

  it("answers that are none of the choices change nothing", () => {
    const answers = { unit: "furlong", "date order": "__proto__", toString: "x" };
    expect(read([said("Date", { answers })])).toEqual(read([]));
  });

  it("hold for the next sheet with the same headings", () => {
    const log = read([said("In", { answers: { unit: "bar" } })], HEADINGS, "Last month");
    expect(log.sheets[0]!.columns[2]).toMatchObject({ unit: "bar" });
    expect(log.sheets[0]!.headingsChanged).toBe(false);
  });

  it("are offered again when the headings change, and the rest still holds", () => {
    const columns = [said("In", { answers: { unit: "bar" } }), said("Out", { answers: { unit: "bar" } })];
    const { headingsChanged, columns: now } = read(columns, [
      "Date",
      "Bottle",
      "Start",
      "Out",
      "Check",
      "Check",
    ]).sheets[0]!;
    expect(headingsChanged).toBe(true);
    expect(now[3]).toMatchObject({ heading: "Out", unit: "bar" });
    expect(read(columns).sheets[0]!.headingsChanged).toBe(false);
  });

  it("leave a sheet out, or take one in that looks like something else", () => {
    expect(read([], HEADINGS, "Fills", false)).toMatchObject({ sheets: [], rows: { total: 0 } });
    const sheets = [
      sheetOf([HEADINGS, ROW]),
      sheetOf(
        [
          ["Item", "Price"],
          ["O-ring", 1.5],
        ],
        { name: "Shop" },
      ),
    ];
    const notes = (use?: boolean) => readLog(sheets, { choices: [{ sheet: "Shop", use, columns: [] }] });
    expect(notes().sheets[1]).toMatchObject({ kind: "neither", leftOut: true });
    expect(notes().rows.total).toBe(2);
    expect(notes(true).sheets[1]!.leftOut).toBeUndefined();
    expect(notes(true).rows).toMatchObject({ total: 4, unreadable: 1 });
  });
});

describe("what is said for one reading", () => {
  const columnsOf = (context: LogContext) => readLog([sheetOf([HEADINGS, ROW])], context).sheets[0]!.columns;

  it("holds for every column with that heading, in any case, before what was remembered", () => {
    const choices = [
      {
        sheet: "Fills",
        columns: [said("In", { answers: { unit: "psi" } }), said("Out", { answers: { unit: "psi" } })],
      },
    ];
    const columns = columnsOf({ choices, said: [{ heading: "in", answers: { unit: "bar" } }] });
    expect(columns.slice(2, 4)).toMatchObject([{ unit: "bar" }, { unit: "psi" }]);
  });

  it("names a column without a heading by its letter", () => {
    const sheet = sheetOf([
      ["Date", "Bottle", "In", "Out", null],
      [...ROW.slice(0, 4), 31.8],
    ]);
    const { columns } = readLog([sheet], { said: [{ heading: "e", field: "analysedMix", answers: {} }] })
      .sheets[0]!;
    expect(columns[4]).toMatchObject({ heading: "", field: "analysedMix" });
  });

  it("settles the order of all dates, whatever the cells or the country suggest", () => {
    const days = (context: LogContext) =>
      readLog([sheetOf([HEADINGS, ROW, ["13/04/2026", ...ROW.slice(1)]])], context).fills.map(
        ({ fields: { date } }) => date.kind === "value" && date.value.toString(),
      );
    expect(days({ dateOrder: "month first" })).toEqual(["2026-04-03", "2026-04-13"]);
    expect(days({ datesAre: "month first" })).toEqual(["2026-03-04", "2026-04-13"]);
  });
});

describe("what is taken as usual where the rules hold", () => {
  const assumed = (context: LogContext, rows = [ROW]) =>
    readLog([sheetOf([HEADINGS, ...rows])], context).sheets[0]!.columns[0]!.assumed;

  it("is said, with the cell that could be read either way", () => {
    expect(assumed({ dateOrder: "month first" })).toBe(
      "“03/04/2026” under “Date”, and the like, was read month first, as is usual where the rules hold.",
    );
  });

  it("is not said where the log or somebody settles it", () => {
    expect(assumed({ dateOrder: "month first" }, [ROW, ["13/04/2026", ...ROW.slice(1)]])).toBeUndefined();
    expect(assumed({ dateOrder: "month first", datesAre: "day first" })).toBeUndefined();
    expect(assumed({})).toBeUndefined();
    expect(assumed({ dateOrder: "day first" }, [["2026-04-03", ...ROW.slice(1)]])).toBeUndefined();
  });

  it("is said of stamps too: of their order, and that they show the next test", () => {
    const register = (context: LogContext) =>
      readLog(
        [
          sheetOf([
            ["Serial", "Alloy", "Hydro"],
            ["A10001", "6061", "06/09"],
          ]),
        ],
        context,
      ).sheets[0]!.columns[2]!.assumed;
    expect(register({ stampOrder: "month first" })).toContain(
      "“06/09” under “Hydro”, and the like, was read month first",
    );
    expect(register({ stampOrder: "year first", stampMeans: "due" })).toContain(
      "What stands under “Hydro” was taken for the next test due",
    );
  });
});
