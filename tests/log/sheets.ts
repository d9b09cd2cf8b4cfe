import type { Area, CellValue, Sheet, SheetRow } from "../../src/sheet/sheet";

/** A cell in a fixture: a plain value, one with a number format, or an error. */
export type FixtureCell =
  | string
  | number
  | boolean
  | null
  | undefined
  | { readonly v: string | number; readonly f: string }
  | { readonly e: string };

export interface FixtureSheet {
  readonly name: string;
  readonly dateSystem?: number;
  readonly merges?: readonly string[];
  readonly rows: readonly (readonly FixtureCell[])[];
}

/** A sheet from rows of cells as fixtures write them. */
export function sheetOf(rows: readonly (readonly FixtureCell[])[], more: Partial<FixtureSheet> = {}): Sheet {
  return {
    name: more.name ?? "Fills",
    hidden: false,
    dateSystem: more.dateSystem === 1904 ? 1904 : 1900,
    merges: (more.merges ?? []).map(areaOf),
    rows: rows.map(rowOf),
  };
}

export function sheetFrom(fixture: FixtureSheet): Sheet {
  return sheetOf(fixture.rows, fixture);
}

function rowOf(cells: readonly FixtureCell[]): SheetRow {
  const formats = cells.map((cell) =>
    typeof cell === "object" && cell !== null && "f" in cell ? cell.f : undefined,
  );
  return {
    values: cells.map(valueOf),
    ...(formats.some((format) => format !== undefined) ? { formats } : {}),
  };
}

function valueOf(cell: FixtureCell): CellValue {
  if (cell === undefined || cell === null) return null;
  if (typeof cell !== "object") return cell;
  return "e" in cell ? { error: cell.e } : cell.v;
}

export function areaOf(range: string): Area {
  const [, left = "A", top = "1", right = "A", bottom = "1"] =
    /^([A-Z]+)(\d+):([A-Z]+)(\d+)$/.exec(range) ?? [];
  return {
    firstColumn: columnOf(left),
    firstRow: Number(top) - 1,
    lastColumn: columnOf(right),
    lastRow: Number(bottom) - 1,
  };
}

export function columnOf(letters: string): number {
  return [...letters].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}
