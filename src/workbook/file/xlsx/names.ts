import { cellName, columnLetters, type Area } from "../../../sheet/sheet";

export const SPREADSHEET = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** `A1:C3`, or `A1` for a single cell. */
export function areaName({ firstRow, firstColumn, lastRow, lastColumn }: Area): string {
  const first = cellName({ row: firstRow, column: firstColumn });
  const last = cellName({ row: lastRow, column: lastColumn });
  return first === last ? first : `${first}:${last}`;
}

/** A sheet's name as formulas write it. */
export function quotedSheet(name: string): string {
  return `'${name.replaceAll("'", "''")}'`;
}

/** `'Fill log'!$1:$3` */
export function fixedRows(sheet: string, { first, last }: { first: number; last: number }): string {
  return `${quotedSheet(sheet)}!$${first + 1}:$${last + 1}`;
}

/** `'Fill log'!$A$2:$A$9`, as charts and defined names refer to cells. */
export function fixedArea(sheet: string, { firstRow, firstColumn, lastRow, lastColumn }: Area): string {
  const corner = (row: number, column: number) => `$${columnLetters(column)}$${row + 1}`;
  return `${quotedSheet(sheet)}!${corner(firstRow, firstColumn)}:${corner(lastRow, lastColumn)}`;
}
