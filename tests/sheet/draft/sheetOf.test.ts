import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { styledAreas } from "../../../src/sheet/draft/areas";
import { draftValue, storedValue, styledCell, type SheetDraft } from "../../../src/sheet/draft/draft";
import { heightFor, shownLength, widthFor } from "../../../src/sheet/draft/fit";
import { FORMATS, LOOKS } from "../../../src/sheet/draft/looks";
import { sheetOf } from "../../../src/sheet/draft/sheetOf";
import { tabNames } from "../../../src/sheet/tabNames";
import type { Block, TableBlock } from "../../../src/sheet/draft/blocks";

const PAGE = { paper: "A4", landscape: false, footer: "Gannet Point" } as const;
const table: TableBlock = {
  kind: "table",
  name: "Fills",
  columns: [{ heading: "Mix" }, { heading: "Fills", format: FORMATS.whole, style: { horizontal: "right" } }],
  rows: [
    ["air", 12],
    ["EAN32", 30],
  ],
  below: [["All", 42]],
  empty: "No fills.",
};
const sheet = (...blocks: Block[]) => sheetOf("Report", blocks, PAGE);
const valuesOf = ({ rows }: SheetDraft) => rows.map(({ cells }) => cells.map(draftValue));

describe("a sheet of blocks", () => {
  test("has its table below its title, headings frozen and printed on every page, sums below", () => {
    const draft = sheet({ kind: "title", lines: ["Fills of October"] }, table);
    expect(valuesOf(draft)).toEqual([
      ["Fills of October"],
      ["Mix", "Fills"],
      ["air", 12],
      ["EAN32", 30],
      ["All", 42],
      [],
    ]);
    expect(draft.tables).toEqual([
      { name: "Fills", area: { firstRow: 1, firstColumn: 0, lastRow: 3, lastColumn: 1 } },
    ]);
    expect(draft.frozenRows).toBe(2);
    expect(draft.page.titleRows).toEqual({ first: 1, last: 1 });
  });

  test("says so in place of a table without rows", () => {
    const draft = sheet({ ...table, rows: [] });
    expect(draft.tables).toEqual([]);
    expect(valuesOf(draft)[0]).toEqual(["No fills."]);
  });

  test("has a chart above the table whose figures it shows", () => {
    const chart = {
      kind: "columns",
      title: "Fills",
      axes: ["Mix", "Fills"],
      says: "Two columns.",
      rowsHigh: 10,
    } as const;
    const series = [{ name: "Fills", categories: 0, values: 1, colour: "#0D5A71" }];
    const draft = sheet({ ...table, chart: { ...chart, series } });
    const [
      {
        place,
        series: [drawn],
      },
    ] = draft.charts as [SheetDraft["charts"][number]];
    expect(place.lastRow).toBeLessThan(draft.tables[0]!.area.firstRow);
    const figures = (area: { firstRow: number; lastRow: number; firstColumn: number }) =>
      valuesOf(draft)
        .slice(area.firstRow, area.lastRow + 1)
        .map((row) => row[area.firstColumn]);
    expect(figures(drawn!.categories)).toEqual(["air", "EAN32"]);
    expect(figures(drawn!.values)).toEqual([12, 30]);
  });

  test("repeats headings only where all its tables have the same", () => {
    expect(sheet(table, { ...table, name: "More" }).page.titleRows).toEqual({ first: 0, last: 0 });
    const other = { ...table, columns: [{ heading: "Method" }, { heading: "Fills" }] };
    expect(sheet(table, other).page.titleRows).toBeUndefined();
    expect(sheet(table, other).frozenRows).toBe(0);
  });

  test("gives a column's format to figures, and leaves texts in it as they are", () => {
    const draft = sheet({ ...table, rows: [["air", "not known"]] });
    expect(styledCell(draft.rows[1]!.cells[1])).not.toHaveProperty("format");
    expect(styledCell(sheet(table).rows[1]!.cells[1]).format).toBe(FORMATS.whole);
  });

  test("looks like a link where a cell leads somewhere", () => {
    const link = { cell: { sheet: "Log", row: 3, column: 1 } };
    const draft = sheet({ ...table, rows: [[{ value: "Log!B4", link }, 1]] });
    expect(styledCell(draft.rows[1]!.cells[0])).toMatchObject({ link, style: LOOKS.link });
  });

  test("keeps what stands behind a column of wrapped text away from it, texts, days and headings alike", () => {
    const draft = sheet({
      ...table,
      columns: [{ heading: "Why", mostCharacters: 10 }, { heading: "What" }, { heading: "Fills" }],
      rows: [["longer than ten characters", "air", 12]],
    });
    const indents = draft.rows
      .slice(0, 2)
      .map(({ cells }) => cells.map((cell) => styledCell(cell).style?.indent));
    expect(indents).toEqual([
      [undefined, 1, undefined],
      [undefined, 1, undefined],
    ]);
    expect(draft.widths[1]).toBeGreaterThan(sheet(table).widths[0]!);
    const short = sheet({ ...table, columns: [{ heading: "Why" }, { heading: "What" }], rows: [["a", "b"]] });
    expect(short.rows[1]!.cells.map((cell) => styledCell(cell).style?.indent)).toEqual([
      undefined,
      undefined,
    ]);
  });

  test("is as high as its text needs, whatever the text", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ maxLength: 300 }), { minLength: 1, maxLength: 6 }), (texts) => {
        const draft = sheet({ kind: "text", lines: texts });
        const width = draft.widths.reduce<number>((sum, each) => sum + (each ?? 0), 0);
        draft.rows.forEach(({ heightPt }, row) => {
          expect(heightPt! * width).toBeGreaterThanOrEqual(texts[row]!.length * 10);
        });
      }),
    );
  });
});

describe("widths", () => {
  test("go by what is shown: dates by their format, money with its commas, text by its longest line", () => {
    expect(shownLength(46_296, FORMATS.date)).toBe(10);
    expect(shownLength(1234567.891, FORMATS.money)).toBe("1,234,567.89".length);
    expect(shownLength(-0.0312, FORMATS.percent)).toBe("-3.1%".length);
    expect(shownLength("one\nthree", undefined)).toBeCloseTo(5 * 0.95);
  });

  test("hold the longest word of the heading, and no more than the most", () => {
    expect(widthFor("Hydro good until", 4, 40)).toBeGreaterThan("good until".length - 2);
    expect(widthFor("X", 400, 40)).toBeLessThan(43);
  });

  test("a sentence of narrow letters needs fewer lines than as many wide ones", () => {
    // 40 letters each, in a column that holds 38 digits
    expect(heightFor("it is still in it, till it is filled. it", 40)).toBe(18);
    expect(heightFor("MMMM WWWW MMMM WWWW MMMM WWWW MMMM WWWW.", 40)).toBe(33);
    expect(heightFor("0000000000000000000000000000000000000000", 40)).toBe(33);
  });

  test("a longer text is never shown lower than a shorter one", () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), fc.integer({ min: 5, max: 120 }), (text, more, width) => {
        expect(heightFor(text + more, width)).toBeGreaterThanOrEqual(heightFor(text, width));
      }),
    );
  });
});

test("the looks of a sheet as rectangles cover every cell that has one, and only once", () => {
  const style = fc.constantFrom(undefined, LOOKS.body, LOOKS.heading, LOOKS.stop);
  const rows = fc.array(fc.array(style, { maxLength: 6 }), { maxLength: 12 });
  fc.assert(
    fc.property(rows, (styles) => {
      const areas = styledAreas({
        rows: styles.map((row) => ({
          cells: row.map((each) => ({ value: 1, ...(each && { style: each }) })),
        })),
      });
      const found = styles.map((row) => row.map((): unknown => undefined));
      for (const { style: look, area } of areas) {
        for (let row = area.firstRow; row <= area.lastRow; row++) {
          for (let column = area.firstColumn; column <= area.lastColumn; column++) {
            expect(found[row]![column]).toBeUndefined();
            found[row]![column] = look;
          }
        }
      }
      expect(found).toEqual(styles);
    }),
  );
});

test("names of new tabs are free, short and allowed, whatever is wanted and taken", () => {
  fc.assert(
    fc.property(
      fc.array(fc.string({ maxLength: 40 })),
      fc.array(fc.string({ maxLength: 40 })),
      (wanted, taken) => {
        const names = tabNames(wanted, taken);
        const all = [...names, ...taken].map((name) => name.toLowerCase());
        expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
        for (const name of names) {
          expect(all.filter((each) => each === name.toLowerCase())).toHaveLength(1);
          expect(name).toMatch(/^[^[\]:*?/\\]{1,31}$/s);
        }
      },
    ),
  );
});

test("dates are counted from the workbook's own first day, other figures are not", () => {
  expect(storedValue({ value: 46_296, format: FORMATS.date }, 1904)).toBe(46_296 - 1462);
  expect(storedValue({ value: 46_296, format: FORMATS.whole }, 1904)).toBe(46_296);
  expect(storedValue({ value: 46_296, format: FORMATS.date }, 1900)).toBe(46_296);
});
