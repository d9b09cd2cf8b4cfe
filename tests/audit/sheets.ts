import { audit } from "../../src/audit/audit";
import type { AuditResult } from "../../src/audit/judge/finding";
import type { AuditOptions } from "../../src/audit/shop/shop";
import { countryRules } from "../../src/cylinders/countryRules";
import type { LogContext } from "../../src/log/context";
import type { Log } from "../../src/log/log";
import { readLog } from "../../src/log/readLog";
import type { CellValue, Sheet } from "../../src/sheet/sheet";
import { expectWellMade } from "./wellMade";

/** A cell with a date, as a spreadsheet keeps it: a number in a date format. */
export interface DateCell {
  readonly date: string;
}

export type TestCell = CellValue | DateCell;

/** Cells by heading; the headings are those of the first row. */
export type TestRow = Readonly<Record<string, TestCell>>;

/** A cell that holds this day, not a text. */
export function onDay(date: string): DateCell {
  return { date };
}

/** A sheet with the headings of all its rows. */
export function sheetOf(name: string, rows: readonly TestRow[]): Sheet {
  const headings = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const cells = rows.map((row) => headings.map((heading) => row[heading] ?? null));
  return {
    name,
    hidden: false,
    dateSystem: 1900,
    merges: [],
    rows: [
      { values: headings },
      ...cells.map((row) => ({
        values: row.map((cell) => (isDate(cell) ? serialOf(cell.date) : cell)),
        formats: row.map((cell) => (isDate(cell) ? "yyyy-mm-dd" : undefined)),
      })),
    ],
  };
}

/** A log as read from real sheets: fills, and a register where there is one. */
export function logOf(
  fills: readonly TestRow[],
  register: readonly TestRow[] = [],
  context: LogContext = { units: "us", stampOrder: "month first", dateOrder: "month first" },
): Log {
  const sheets = [sheetOf("Fills", fills), ...(register.length > 0 ? [sheetOf("Cylinders", register)] : [])];
  return readLog(sheets, context);
}

export function auditOf(
  fills: readonly TestRow[],
  register: readonly TestRow[] = [],
  country = "US",
  options: AuditOptions = {},
): AuditResult {
  const log = logOf(fills, register);
  const result = audit(log, countryRules(country), options);
  expectWellMade(log, result);
  return result;
}

/** A fill against which nothing can be said, in a log that says everything rules ask for. */
export const FULL: TestRow = {
  "Fill no.": "4711",
  Date: { date: "2026-11-12" },
  Serial: "AB1234",
  Owner: "C-014",
  "External check": "ok",
  Consent: "yes",
  "Start psi": 500,
  "Start mix": "EAN32",
  "Ordered mix": "EAN32",
  Method: "partial pressure",
  Source: "Bank A",
  "O2 added psi": 345,
  "End psi": 3000,
  "Gas temp F": 70,
  "Analysed O2 %": 32,
  "Analysed He %": null,
  "Analysed by": "R.",
  "MOD (ft)": 111,
  "Planned depth (ft)": 90,
  "Filled by": "T.",
  Signature: "signed",
  Certification: "1234",
  Class: "3AL",
  Material: "aluminium",
  Alloy: "6061",
  Made: "2014/03",
  "Service psi": 3000,
  Hydro: "2024/10",
  Visual: "2026/05",
  "Eddy current": null,
  "O2 cleaned": "2026/05",
  "O2 rating": "O2 clean",
  Status: "in service",
  "Neck thread": "3/4 NPSM",
  "Valve thread": "3/4 NPSM",
};

/** An air test of that autumn, and what the shop's sources are. */
export const SHOP: AuditOptions = {
  asOf: "2026-11-30",
  airTests: [{ date: "2026-09-01", passed: true }],
  sources: [{ name: "Bank A", oxygenCompatible: true, mix: { oxygen: 0.209535, helium: 0 } }],
};

/** What the audit says of one rule for a fill: its severity, "not checked: why", or "nothing". */
export function verdictOf(
  rule: string,
  change: TestRow,
  { country = "US", options = SHOP, row = FULL }: Setting = {},
): string {
  // A second fill, as it should be, shows what the columns hold.
  const rows = [
    { ...row, ...change },
    { ...row, Serial: "ZZ9999" },
  ];
  const { findings, notChecked } = auditOf(rows, [], country, options);
  const severities = findings
    .filter((finding) => finding.rule === rule && finding.cell.row === 1)
    .map(({ severity }) => severity);
  const lacks = notChecked
    .filter(
      ({ rule: id, cells }) => id === rule && (cells.length === 0 || cells.some((cell) => cell.row === 1)),
    )
    .map(({ why }) => `not checked: ${why}`);
  return [...severities, ...lacks].join(", ") || "nothing";
}

export interface Setting {
  readonly country?: string;
  readonly options?: AuditOptions;
  readonly row?: TestRow;
}

/** The row without some of its columns. */
export function without(row: TestRow, ...headings: readonly string[]): TestRow {
  return Object.fromEntries(Object.entries(row).filter(([heading]) => !headings.includes(heading)));
}

function isDate(cell: TestCell): cell is DateCell {
  return typeof cell === "object" && cell !== null && "date" in cell;
}

/** Days since 30 December 1899. */
function serialOf(date: string): number {
  return Math.round(Date.parse(`${date}T00:00:00Z`) / 86_400_000) + 25_569;
}
