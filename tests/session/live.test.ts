import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Sheet } from "../../src/sheet/sheet";
import { LiveWorkbook, sheet, smallLog, US_SHOP } from "../pane/fakeWorkbook";
import { answerOf, openSession } from "./openSession";

const SETTINGS = US_SHOP;
const NAMES = ["October", "Cylinders", "Prices", "Spare"] as const;

/** What a fresh session finds in the same workbook, without what came and went. */
async function fresh(sheets: readonly Sheet[]): Promise<unknown> {
  const session = openSession(new LiveWorkbook([...sheets], SETTINGS), undefined, SETTINGS);
  const report = await answerOf(session, "check", undefined);
  session.close();
  return { ...report, came: [], went: [] };
}

const VALUES = fc.constantFrom(
  null,
  3000,
  4500,
  36,
  20.9,
  "GP1001",
  "GP1002",
  "EAN32",
  "air",
  "2026-10-07",
  "Date",
  "?",
);

const EDITS = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      kind: fc.constant("type" as const),
      sheet: fc.constantFrom(...NAMES),
      row: fc.nat(7),
      column: fc.nat(7),
      value: VALUES,
    }),
  },
  fc.record({ kind: fc.constant("insert row" as const), sheet: fc.constantFrom(...NAMES), at: fc.nat(6) }),
  fc.record({ kind: fc.constant("delete row" as const), sheet: fc.constantFrom(...NAMES), at: fc.nat(6) }),
  fc.record({ kind: fc.constant("insert column" as const), sheet: fc.constantFrom(...NAMES), at: fc.nat(6) }),
  fc.record({ kind: fc.constant("delete column" as const), sheet: fc.constantFrom(...NAMES), at: fc.nat(6) }),
  fc.record({
    kind: fc.constant("rename" as const),
    sheet: fc.constantFrom(...NAMES),
    to: fc.constantFrom(...NAMES, "Log"),
  }),
  fc.record({ kind: fc.constant("delete" as const), sheet: fc.constantFrom(...NAMES) }),
  fc.record({ kind: fc.constant("hide" as const), sheet: fc.constantFrom(...NAMES) }),
  fc.record({ kind: fc.constant("paste" as const), sheet: fc.constantFrom(...NAMES) }),
  fc.record({ kind: fc.constant("undo" as const) }),
);
type Edit = typeof EDITS extends fc.Arbitrary<infer E> ? E : never;

function spliced<T>(list: readonly T[], at: number, remove: number, ...put: readonly T[]): T[] {
  return [...list.slice(0, at), ...put, ...list.slice(at + remove)];
}

/** Does to the workbook what a person would, and tells of it as a host does. */
function play(workbook: LiveWorkbook, edit: Edit, before: Sheet[][]): void {
  if (edit.kind !== "undo") before.push(workbook.sheets);
  if (edit.kind === "undo") {
    const sheets = before.pop();
    if (!sheets) return;
    workbook.sheets = sheets;
    workbook.tell({ kind: "sheets" }, ...sheets.map(({ name }) => ({ kind: "sheet" as const, sheet: name })));
    return;
  }
  const { sheet: name } = edit;
  const whole = { kind: "sheet", sheet: name } as const;
  if (!workbook.sheets.some((each) => each.name === name)) {
    workbook.sheets = [
      ...workbook.sheets,
      sheet(name, [
        ["Serial", "Hydro"],
        ["GP1002", "2026-01-05"],
      ]),
    ];
    workbook.tell({ kind: "sheets" }, whole);
    return;
  }
  switch (edit.kind) {
    case "type":
      workbook.type(name, edit.row, edit.column, sheet("", [[edit.value]]).rows[0]!.values[0]!);
      return;
    case "insert row":
      workbook.edit(
        name,
        (each) => ({
          ...each,
          rows: spliced(each.rows, Math.min(edit.at, each.rows.length), 0, { values: [] }),
        }),
        whole,
      );
      return;
    case "delete row":
      workbook.edit(
        name,
        (each) => ({ ...each, rows: spliced(each.rows, Math.min(edit.at, each.rows.length), 1) }),
        whole,
      );
      return;
    case "insert column":
    case "delete column": {
      const isInsert = edit.kind === "insert column";
      const shift = <T>(cells: readonly T[], blank: T) =>
        edit.at >= cells.length
          ? cells
          : isInsert
            ? spliced(cells, edit.at, 0, blank)
            : spliced(cells, edit.at, 1);
      workbook.edit(
        name,
        (each) => ({
          ...each,
          rows: each.rows.map((row) => ({
            ...row,
            values: shift(row.values, null),
            ...(row.formats && { formats: shift(row.formats, undefined) }),
          })),
        }),
        whole,
      );
      return;
    }
    case "rename":
      if (workbook.sheets.some((each) => each.name === edit.to)) return;
      workbook.edit(
        name,
        (each) => ({ ...each, name: edit.to }),
        { kind: "sheets" },
        { kind: "sheet", sheet: edit.to },
      );
      return;
    case "delete":
      workbook.sheets = workbook.sheets.filter((each) => each.name !== name);
      workbook.tell({ kind: "sheets" });
      return;
    case "hide":
      workbook.edit(name, (each) => ({ ...each, hidden: !each.hidden }), { kind: "sheets" });
      return;
    case "paste": {
      const rows = Array.from({ length: 5000 }, () => [
        "2026-10-11",
        "GP1003",
        500,
        3000,
        "EAN32",
        32,
        "premix",
        "T.",
      ]);
      const pasted = sheet("", rows).rows;
      const firstRow = Math.min(6, workbook.sheets.find((each) => each.name === name)?.rows.length ?? 0);
      workbook.edit(name, (each) => ({ ...each, rows: [...each.rows.slice(0, firstRow), ...pasted] }), {
        kind: "rows",
        sheet: name,
        firstRow,
        lastRow: firstRow + 4999,
      });
    }
  }
}

describe("live", () => {
  it("finds after any edits what a fresh reading finds, and says what came and what went", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(EDITS, fc.boolean()), { minLength: 1, maxLength: 8 }),
        async (edits) => {
          const workbook = new LiveWorkbook(smallLog(), SETTINGS);
          const session = openSession(workbook, undefined, SETTINGS);
          const undo: Sheet[][] = [];
          let last = (await answerOf(session, "check", undefined)).findings.length;
          let seen = session.state.version;
          for (const [edit, isAsked] of edits) {
            play(workbook, edit, undo);
            if (!isAsked) continue;
            const report = await answerOf(session, "check", undefined);
            expect({ ...report, came: [], went: [] }).toEqual(await fresh(workbook.sheets));
            const { version } = session.state;
            if (version > seen)
              expect(report.findings.length).toBe(last + report.came.length - report.went.length);
            seen = version;
            last = report.findings.length;
          }
          const report = await answerOf(session, "check", undefined);
          expect({ ...report, came: [], went: [] }).toEqual(await fresh(workbook.sheets));
          session.close();
        },
      ),
      { numRuns: 60 },
    );
  }, 120_000);
});
