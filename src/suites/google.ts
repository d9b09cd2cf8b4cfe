import { answerIn } from "./answerIn";

/** As much of Apps Script as is needed to read a date. */
declare const SpreadsheetApp: { getActive(): { getSpreadsheetTimeZone(): string } };
declare const Utilities: { formatDate(date: Date, timeZone: string, format: string): string };

/** 30 December 1899, from which Google Sheets counts its days. */
const DAY_ZERO_MS = Date.UTC(1899, 11, 30);
const DAY_MS = 86_400_000;

/** Sheets hands dates over as moments; the day they stand for is that of the spreadsheet's own time zone. */
function serialOf(date: Date): number {
  const zone = SpreadsheetApp.getActive().getSpreadsheetTimeZone();
  const shown = Utilities.formatDate(date, zone, "yyyy-MM-dd'T'HH:mm:ss");
  return (Date.parse(`${shown}Z`) - DAY_ZERO_MS) / DAY_MS;
}

/** What the functions of the Apps Script call. */
export const answer = (id: string, given: readonly unknown[]) => answerIn({ serialOf }, id, given);
