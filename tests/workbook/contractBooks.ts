import type { Area, CellValue, Sheet, SheetRow } from "../../src/sheet/sheet";

type Formatted = { readonly value: CellValue; readonly format: string };
type Written = CellValue | Formatted;

/** Writes a cell with a number format. */
const as = (format: string, value: CellValue): Written => ({ value, format });
const error = (name: string): CellValue => ({ error: name });

function row(...cells: readonly Written[]): SheetRow {
  const values = cells.map((cell): CellValue => (isFormatted(cell) ? cell.value : cell));
  const formats = cells.map((cell) => (isFormatted(cell) ? cell.format : undefined));
  return formats.some((format) => format !== undefined) ? { values, formats } : { values };
}

function isFormatted(cell: Written): cell is Formatted {
  return typeof cell === "object" && cell !== null && "format" in cell;
}

const hiddenRow = (...cells: readonly Written[]): SheetRow => ({ ...row(...cells), hidden: true });

interface Extras {
  readonly hidden?: boolean;
  readonly merges?: readonly Area[];
  readonly dateSystem?: 1900 | 1904;
}

const sheet = (name: string, rows: readonly SheetRow[], extras: Extras = {}): Sheet => ({
  name,
  hidden: extras.hidden ?? false,
  dateSystem: extras.dateSystem ?? 1900,
  rows,
  merges: extras.merges ?? [],
});

const fillLog = sheet(
  "Fill log",
  [
    row("Gannet Point Dive Works"),
    row(),
    row("Cylinder", null, "Fill", null, null),
    row("Serial", "Owner", "Date", "End psi", "Mix", "Settled", "Visual"),
    row(
      "007",
      "C-014",
      as("m/d/yyyy", 46_296),
      3000,
      as("0%", 0.32),
      as("h:mm AM/PM", 0.5625),
      as("mmm-yy", 46_023),
    ),
    row(as("@", "0042"), "C-003", as("yyyy-mm-dd", 46_297), as("#,##0", 2950), "TX 21/35"),
    row(),
    hiddenRow("GP-118", "C-021", as("m/d/yyyy", 46_298), 0, as("0.0", 31.97)),
    row("GP-119", null, "10/19", as("0.00", 3442.5), as("0%", 0.209)),
  ],
  {
    merges: [
      { firstRow: 0, firstColumn: 0, lastRow: 0, lastColumn: 6 },
      { firstRow: 2, firstColumn: 0, lastRow: 2, lastColumn: 1 },
      { firstRow: 2, firstColumn: 2, lastRow: 2, lastColumn: 4 },
    ],
  },
);

const oddities = sheet("Odd cells", [
  row("number-like text", "007", "3,000", "1.20", "+5", "1e3", "10/50", "2026-01-02"),
  row("formula-like text", "=A1+1", "+31", "-", "@air", "'06"),
  row("word-like text", "TRUE", "false", "null"),
  row("truth", true, false),
  row("numbers", 0, -12.5, 1e-7, 123_456_789_012, 0.1, 1e21),
  row("spaces", " EAN32 ", "two\nlines", "tab\there", "a  b"),
  row("letters", "Größe 12 L", "é", "水深", "🌊", "<b>&amp;</b>", 'say "ah"'),
  row("errors", error("#N/A"), error("#VALUE!"), error("#REF!"), error("#DIV/0!")),
  row("errors", error("#NUM!"), error("#NAME?"), error("#NULL!")),
  row("long text", "x".repeat(8000)),
]);

/** The first entry stands in D6, and formats reach further than the last entry. */
const island = sheet("Island", [
  row(),
  row(),
  row(),
  row(),
  row(),
  row(null, null, null, "Serial", null, "Hydro"),
  row(null, null, null, "GP-200", null, as("mmm-yy", 45_597)),
  row(),
  row(null, null, null, false),
  row(as("m/d/yyyy", null), as("m/d/yyyy", null)),
  row(as("m/d/yyyy", null)),
]);

const wide = sheet("Wide", [
  row("A", ...Array.from({ length: 59 }, () => null), "BI"),
  row("A", ...Array.from({ length: 29 }, () => null), "AE"),
]);

const LONG_ROWS = 3000;
const long = sheet("Long", [
  row("Number", "Serial", "Date", "Start", "End", "Mix", "By"),
  ...Array.from({ length: LONG_ROWS - 1 }, (_, index) =>
    row(
      index + 1,
      `GP-${String(index % 140).padStart(3, "0")}`,
      as("m/d/yyyy", 46_000 + (index % 300)),
      (index * 7) % 900,
      index % 11 === 0 ? null : 3000,
      as("0%", 0.21 + (index % 20) / 100),
      index % 2 === 0 ? "R." : "T.",
    ),
  ),
]);

/** A workbook with everything that hosts like to read differently. */
export const usualBook: readonly Sheet[] = [
  sheet("Read me", [row("How we keep the log")]),
  fillLog,
  oddities,
  sheet("Old register", [row("Serial", "Hydro"), row("GP-001", as("mmm-yy", 43_800))], { hidden: true }),
  sheet("Nothing", []),
  island,
  sheet(`O'Dive's "best" – log & <co>`, [row("Serial"), row("GP-300")]),
  sheet("Log '24 x", [row("Serial"), row("GP-301")]),
  wide,
  long,
];

/** The same day is 1462 less in a workbook that counts from 1904. */
export const book1904: readonly Sheet[] = [
  sheet(
    "Log",
    [row("Date", "End bar"), row(as("yyyy-mm-dd", 44_834), 230), row(as("yyyy-mm-dd", 44_835), 1462)],
    { dateSystem: 1904 },
  ),
];
