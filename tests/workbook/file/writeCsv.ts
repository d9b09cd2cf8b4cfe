import type { CellValue } from "../../../src/sheet/sheet";

/**
 * Rows as comma-separated text (RFC 4180, with a byte-order mark, as spreadsheets expect of UTF-8). Text that a
 * spreadsheet would take for a formula gets an apostrophe in front, so that nothing runs when it is opened.
 */
export function writeCsv(rows: readonly (readonly CellValue[])[]): string {
  return `\uFEFF${rows.map((row) => `${row.map(cellText).join(",")}\r\n`).join("")}`;
}

function cellText(value: CellValue): string {
  if (value === null) return "";
  if (typeof value === "object") return value.error;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "number") return String(value);
  const safe = /^[=+\-@\t\r\n]/.test(value) ? `'${value}` : value;
  return /[",\r\n\t]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
