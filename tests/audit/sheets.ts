import { audit } from "../../src/audit/audit";
import type { AuditResult } from "../../src/audit/finding";
import { countryRules } from "../../src/cylinders/countryRules";
import type { Log } from "../../src/log/log";
import { readLog } from "../../src/log/readLog";
import type { CellValue, Sheet } from "../../src/sheet/sheet";

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
export function logOf(fills: readonly TestRow[], register: readonly TestRow[] = []): Log {
  const sheets = [sheetOf("Fills", fills), ...(register.length > 0 ? [sheetOf("Cylinders", register)] : [])];
  return readLog(sheets, { units: "us", stampOrder: "month first", dateOrder: "month first" });
}

export function auditOf(
  fills: readonly TestRow[],
  register: readonly TestRow[] = [],
  country = "US",
): AuditResult {
  return audit(logOf(fills, register), countryRules(country));
}

function isDate(cell: TestCell): cell is DateCell {
  return typeof cell === "object" && cell !== null && "date" in cell;
}

/** Days since 30 December 1899. */
function serialOf(date: string): number {
  return Math.round(Date.parse(`${date}T00:00:00Z`) / 86_400_000) + 25_569;
}
