import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import type { LogContext } from "../../src/log/context";
import { describeLog, type ReadingDescription } from "../../src/log/describeLog";
import { readLog } from "../../src/log/readLog";
import { cylindersOf, joinRegister } from "../../src/log/register";
import { columnOf, sheetFrom, type FixtureSheet } from "./sheets";
import germanFlat from "./fixtures/hand-german-flat.json";
import club1904 from "./fixtures/hand-club-1904.json";
import twoRowUs from "./fixtures/hand-two-row-us.json";

interface ExpectedCell {
  readonly value?: unknown;
  readonly choices?: readonly unknown[];
  readonly unit?: string;
  readonly stamp?: unknown;
  readonly unknownWord?: string;
  /** True, or a part of the sentence. */
  readonly unreadable?: true | string;
  /** A part of the note. */
  readonly note?: string;
}

interface HandWritten {
  readonly about: string;
  readonly context: Record<string, string>;
  readonly sheets: readonly FixtureSheet[];
  readonly expect: {
    readonly counts: Record<string, number>;
    readonly kinds: Record<string, readonly string[]>;
    readonly columns: Record<string, readonly (string | null)[]>;
    readonly cells: Record<string, ExpectedCell>;
    readonly suggestions: Record<string, string>;
    readonly furtherTests?: Record<string, readonly string[]>;
    readonly matches?: Record<string, string>;
  };
}

const LOGS = { twoRowUs, germanFlat, club1904 } as unknown as Record<string, HandWritten>;

describe.each(Object.entries(LOGS))("a log written by hand: %s", (_, fixture) => {
  const { asOf, ...rest } = fixture.context;
  const context = { ...rest, asOf: Temporal.PlainDate.from(asOf!) } as LogContext;
  const log = readLog(fixture.sheets.map(sheetFrom), context);
  const description = describeLog(log);
  const expected = fixture.expect;
  const sheetNamed = (name: string) => description.sheets.find((sheet) => sheet.name === name)!;

  it("gives every row its kind", () => {
    const kinds = Object.fromEntries(log.sheets.map((sheet) => [sheet.name, sheet.rowKinds]));
    expect(kinds).toEqual(expected.kinds);
    expect(log.rows).toEqual(expected.counts);
  });

  it.each(Object.entries(expected.columns))("takes the columns of %s for what they are", (name, fields) => {
    expect(sheetNamed(name).columns.map((column) => column.field)).toEqual(fields);
  });

  it.each(Object.entries(expected.cells))("reads %s", (cell, wanted) => {
    const [, sheet = "", letters = "", row = ""] = /^(.*)!([A-Z]+)(\d+)$/.exec(cell) ?? [];
    const { columns, rows } = sheetNamed(sheet);
    const field = columns.find((column) => columnOf(column.column) === columnOf(letters))?.field;
    const found: Partial<ReadingDescription> = rows[Number(row) - 1]?.fields[field!] ?? {};
    const { unreadable, note, ...exact } = wanted;
    expect(found).toMatchObject(exact);
    if (unreadable === undefined) expect(found.unreadable).toBeUndefined();
    else expect(found.unreadable).toContain(unreadable === true ? "" : unreadable);
    if (note !== undefined) expect(found.note).toContain(note);
    if (wanted.value === undefined) expect(found.value).toBeUndefined();
  });

  const index = joinRegister(log);
  const matchesAt = (place: string) => {
    const [, sheet = "", row = ""] = /^(.*)!(\d+)$/.exec(place) ?? [];
    return cylindersOf(
      log.fills.find((fill) => fill.sheet === sheet && fill.row === Number(row) - 1)!,
      index,
    );
  };

  it.each(Object.entries(expected.suggestions))("suggests a serial for %s", (place, serial) => {
    expect(matchesAt(place)).toMatchObject([{ by: "nothing", suggestion: serial }]);
  });

  it.each(Object.entries(expected.matches ?? {}))(
    "finds the cylinder of %s by its number",
    (place, serial) => {
      expect(matchesAt(place)).toMatchObject([
        { by: "shop number", serial, note: expect.stringContaining("shop number") },
      ]);
    },
  );

  it.each(Object.entries(expected.furtherTests ?? {}))("keeps the further tests of %s", (place, tests) => {
    const [, sheet = "", row = ""] = /^(.*)!(\d+)$/.exec(place) ?? [];
    const cylinder = log.cylinders.find((each) => each.sheet === sheet && each.row === Number(row) - 1)!;
    const found = (cylinder.furtherTests ?? []).map(({ reading }) =>
      reading.kind === "value" ? `${reading.value.month.toString()} ${reading.value.means}` : reading.kind,
    );
    expect(found).toEqual(tests);
  });
});
