import type { CellValue, Sheet, SheetRow } from "../../sheet/sheet";

/** A sheet in which cells hold what others above them say for them too. */
export interface FilledSheet {
  readonly sheet: Sheet;
  readonly original: Sheet;
  /** Where a cell has what it holds from, for the reading to say so; undefined for a cell as it stands. */
  readonly filledFrom: (row: number, column: number) => string | undefined;
}

/** A cell that holds what another one shows. */
export interface Filling {
  readonly row: number;
  readonly column: number;
  readonly of: { readonly row: number; readonly column: number };
}

/** A sheet as it stands. */
export function asItStands(sheet: Sheet): FilledSheet {
  return { sheet, original: sheet, filledFrom: () => undefined };
}

/** A sheet with these cells filled in. `from` says where from: `from the merged cell above`. */
export function withFilled(given: FilledSheet, fillings: readonly Filling[], from: string): FilledSheet {
  if (fillings.length === 0) return given;
  const { sheet, original } = given;
  const rows = new Map<number, { values: CellValue[]; formats: (string | undefined)[] }>();
  const filled = new Map<number, Set<number>>();
  for (const { row: at, column, of } of fillings) {
    const row = sheet.rows[at]!;
    const copy = rows.get(at) ?? { values: [...row.values], formats: [...(row.formats ?? [])] };
    while (copy.values.length <= column) copy.values.push(null);
    copy.values[column] = sheet.rows[of.row]!.values[of.column] ?? null;
    copy.formats[column] = sheet.rows[of.row]!.formats?.[of.column];
    rows.set(at, copy);
    filled.set(at, (filled.get(at) ?? new Set()).add(column));
  }
  return {
    sheet: {
      ...sheet,
      rows: sheet.rows.map((row, at): SheetRow => {
        const copy = rows.get(at);
        return copy ? { ...row, ...copy } : row;
      }),
    },
    original,
    filledFrom: (row, column) =>
      filled.get(row)?.has(column) === true ? from : given.filledFrom(row, column),
  };
}
