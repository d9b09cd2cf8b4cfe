import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import type { LogContext } from "../../src/log/context";
import { MEANINGS } from "../../src/log/headings/headings";
import type { CellValue, Sheet, SheetRow } from "../../src/sheet/sheet";
import messy from "./fixtures/messy-inputs.json" with { type: "json" };
import { areaOf } from "./sheets";

/*
 * Sheets as nobody keeps them and everybody might: headings of the trade and headings of nothing, cells of the messy
 * inputs and cells mutated from them, titles, totals and repeated headings in between.
 */

const headingsSeen = messy.header_groups.flatMap((group) => [
  ...group.seen.map(({ header }) => header),
  ...group.variants_from_memory,
]);
const cellsSeen = messy.cells.map(({ raw }) => raw) as readonly (string | number)[];

const FORMATS = [
  undefined,
  "General",
  "m/d/yyyy",
  "mmm-yy",
  "d-mmm",
  "0.00",
  "0%",
  "h:mm",
  "yyyy-mm-dd hh:mm",
  "00000",
  "@",
];
/** Texts that trip up careless patterns. */
const NASTY = [
  "1".repeat(3000),
  "1 ".repeat(1500),
  "1/".repeat(1500),
  "1,".repeat(1500),
  " ".repeat(3000),
  "a ".repeat(1500),
  "+".repeat(3000),
  "EAN".repeat(1000),
  "10 A119 ".repeat(300),
  "__proto__",
  "constructor",
  "\u0000",
  "\ud800",
  "=1+1",
  "NaN",
  "Infinity",
  "1e999",
  "-0",
  "٣٠٠٠",
  "３０００",
];

const mutated = fc
  .tuple(
    fc.constantFrom(...cellsSeen.map(String)),
    fc.nat(30),
    fc.constantFrom("", " ", "/", "-", ".", ",", "+", "0", "9", "x", "psi", "bar", "%", "\n", "\u00a0", "?"),
  )
  .map(([text, at, piece]) => text.slice(0, at) + piece + text.slice(at));

const text: fc.Arbitrary<string> = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom(...cellsSeen.map(String)) },
  { weight: 3, arbitrary: mutated },
  { weight: 1, arbitrary: fc.string({ unit: "grapheme", maxLength: 20 }) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '"',
      "ditto",
      "Total",
      "Sum",
      "Week 32",
      "not filled",
      "Written by Brimbook: findings, not a log.",
      "2026-08-03",
      "",
      "   ",
      "-",
      "N/A",
    ),
  },
);

const cell: fc.Arbitrary<CellValue> = fc.oneof(
  { weight: 5, arbitrary: text },
  { weight: 2, arbitrary: fc.constant(null) },
  { weight: 2, arbitrary: fc.integer({ min: -10, max: 60000 }) },
  { weight: 1, arbitrary: fc.double({ min: 0, max: 5000, noNaN: true }) },
  {
    weight: 1,
    arbitrary: fc.constantFrom<CellValue>(
      true,
      false,
      { error: "#N/A" },
      { error: "#REF!" },
      NaN,
      Infinity,
      -1e308,
      1e308,
    ),
  },
);
const nastyCell = fc.oneof(
  { weight: 20, arbitrary: cell },
  { weight: 1, arbitrary: fc.constantFrom(...NASTY) },
);

const heading = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...headingsSeen) },
  { weight: 3, arbitrary: fc.constantFrom(...MEANINGS.keys()) },
  {
    weight: 1,
    arbitrary: fc.constantFrom("", "Colour", "Invoice", "__proto__", "Press", "Mix", "O2", "psi"),
  },
);

const row = (width: number): fc.Arbitrary<SheetRow> =>
  fc.record({
    values: fc.array(nastyCell, { maxLength: width + 1 }),
    formats: fc.array(fc.constantFrom(...FORMATS), { maxLength: width }),
    hidden: fc.boolean(),
  });

/** A sheet with headings somewhere, or nowhere. */
export const anySheet: fc.Arbitrary<Sheet> = fc
  .record({
    headings: fc.array(heading, { minLength: 1, maxLength: 14 }),
    above: fc.nat(4),
    repeatAt: fc.option(fc.nat(20)),
    hasHeadings: fc.integer({ min: 0, max: 5 }).map((number) => number > 0),
    dateSystem: fc.constantFrom(1900 as const, 1904 as const),
    merges: fc.array(fc.constantFrom("A1:C1", "A2:A5", "B3:C9", "A1:A40", "C2:D2"), { maxLength: 2 }),
    name: fc.constantFrom("Fills", "Register", "Sheet1", "__proto__", "Ütf 8"),
  })
  .chain(({ headings, above, repeatAt, hasHeadings, dateSystem, merges, name }) =>
    fc.array(row(headings.length), { maxLength: 25 }).map((body): Sheet => {
      const head: SheetRow[] = hasHeadings ? [{ values: headings }] : [];
      const rows = [...body.slice(0, above), ...head, ...body.slice(above)];
      if (repeatAt !== null) rows.splice(above + 1 + repeatAt, 0, ...head);
      return { name, hidden: false, dateSystem, merges: merges.map(areaOf), rows };
    }),
  );

/** A table with one row of headings and rows that do not refer to one another, each told apart by its remark. */
const anyTable: fc.Arbitrary<Sheet> = fc.array(heading, { minLength: 2, maxLength: 10 }).chain((headings) =>
  fc
    .array(
      fc.array(cell.filter(saysNothingOfOtherRows), {
        minLength: headings.length,
        maxLength: headings.length,
      }),
      { maxLength: 20 },
    )
    .map((rows): Sheet => ({
      name: "Fills",
      hidden: false,
      dateSystem: 1900,
      merges: [],
      rows: [
        { values: ["Remarks", "Serial number", ...headings] },
        ...rows.map((values, at) => ({ values: [`row ${at}`, `A1000${at}`, ...values] })),
      ],
    })),
);

/** Such a table, and an order for its rows. */
export const anyTableInAnyOrder: fc.Arbitrary<[Sheet, number[]]> = anyTable.chain((table) => {
  const all = Array.from({ length: table.rows.length - 1 }, (_, at) => at);
  return fc.tuple(
    fc.constant(table),
    fc.shuffledSubarray(all, { minLength: all.length, maxLength: all.length }),
  );
});

/** What may be known of the shop. */
export const anyContext: fc.Arbitrary<LogContext> = fc.constantFrom<LogContext>(
  {},
  {
    units: "us",
    dateOrder: "month first",
    stampOrder: "month first",
    asOf: Temporal.PlainDate.from("2026-10-31"),
  },
  { units: "metric", dateOrder: "day first", stampMeans: "due" },
);

/** Ditto marks and totals are read by the rows above, and are the only cells that may be. */
function saysNothingOfOtherRows(value: CellValue): boolean {
  return typeof value !== "string" || !/^\s*(?:"|''|,,|〃|do\.?|ditto|=|total|sum|id)/i.test(value);
}
