/** A cell to write: a value and, for numbers, how it shows. */
export interface SampleCell {
  readonly value: string | number | null;
  readonly format?: string;
}

export type Written = string | number | null | SampleCell;

export function asCell(written: Written): SampleCell {
  return typeof written === "object" && written !== null ? written : { value: written };
}

/** A day as spreadsheets count it, from 30 December 1899. */
export function serialOf(isoDate: string): number {
  return Date.parse(`${isoDate}T00:00:00Z`) / 86_400_000 + 25_569;
}

export function isoOf(serial: number): string {
  return new Date((serial - 25_569) * 86_400_000).toISOString().slice(0, 10);
}

/** A cell with a date in it. */
export function dateCell(isoDate: string, format = "m/d/yyyy"): SampleCell {
  return { value: serialOf(isoDate), format };
}

export const MONTHS = [
  "January", "February", "March", "April", "May", "June",
  "July", "August", "September", "October", "November", "December",
]; // prettier-ignore
