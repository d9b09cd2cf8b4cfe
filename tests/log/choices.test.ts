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
