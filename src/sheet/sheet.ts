/** An error a spreadsheet shows in a cell, such as #N/A. */
export interface CellError {
  readonly error: string;
}

/** The error of a formula whose answer the file does not hold: it was written by a program that calculates nothing. */
export const NEVER_CALCULATED = "not calculated";

/** What a cell holds. A date is a number; only its format says that it is one. */
export type CellValue = string | number | boolean | CellError | null;

/** A place in a workbook; row and column count from 0. */
export interface CellAddress {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** A rectangle of cells, corners included; counts from 0. */
export interface Area {
  readonly firstRow: number;
  readonly firstColumn: number;
  readonly lastRow: number;
  readonly lastColumn: number;
}

/** A row as it stands. What lies beyond the arrays is blank. */
export interface SheetRow {
  readonly values: readonly CellValue[];
  /** Number formats in the form of en-US, where a cell has one that is not General. */
  readonly formats?: readonly (string | undefined)[];
  /** Hidden or filtered away: read all the same, and counted. */
  readonly hidden?: boolean;
  /** Everything that stands in it is struck out: the log's own way to take a row back. Read as such, and counted. */
  readonly struckOut?: boolean;
}

/** A sheet as far as its last row that holds anything. */
export interface Sheet {
  readonly name: string;
  readonly hidden: boolean;
  /** The day that serial 0 stands for: 1900 (usual) or 1904 (old Mac workbooks). */
  readonly dateSystem: 1900 | 1904;
  readonly rows: readonly SheetRow[];
  readonly merges: readonly Area[];
}

/** A row that holds nothing; share it, a sheet may have a million. */
export const BLANK_ROW: SheetRow = Object.freeze({ values: Object.freeze([]) as readonly CellValue[] });

export function isBlank(value: CellValue | undefined): boolean {
  return value === null || value === undefined || (typeof value === "string" && value.trim() === "");
}

/** Column letters from a column's number: 0 is A, 27 is AB. */
export function columnLetters(column: number): string {
  let letters = "";
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

/** A column's number from its letters, in either case: A is 0, AB is 27. */
export function columnIndex(letters: string): number {
  return (
    [...letters.toUpperCase()].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0) - 1
  );
}

/** `B7`, as a spreadsheet names the cell. */
export function cellName(address: { row: number; column: number }): string {
  return `${columnLetters(address.column)}${address.row + 1}`;
}

/** A cell of a row to be written, and its number format where it needs one. */
export interface CellWrite {
  readonly column: number;
  readonly value: CellValue;
  readonly format?: string;
}
