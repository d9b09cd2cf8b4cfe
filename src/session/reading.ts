import type { LogColumn, LogSheet, RowCounts, RowKind, SheetKind, UnreadableRow } from "../log/log";

/** How one sheet was understood, without its rows: small enough to hand about. */
export interface SheetReading {
  readonly name: string;
  readonly kind: SheetKind;
  /** Why it is neither a log nor a register, in a sentence. */
  readonly why: string | undefined;
  readonly columns: readonly LogColumn[];
  readonly rows: RowCounts;
  readonly hiddenRows: number;
  /** Choices were remembered for this sheet, but its headings have changed since. */
  readonly headingsChanged: boolean;
}

/** How the sheets were understood. */
export interface LogReading {
  readonly sheets: readonly SheetReading[];
  readonly unreadable: readonly UnreadableRow[];
}

const COUNTED_AS: Readonly<Record<RowKind, Exclude<keyof RowCounts, "total">>> = {
  fill: "fills",
  cylinder: "cylinders",
  "not filled": "notFilled",
  "struck out": "struckOut",
  blank: "blank",
  heading: "headings",
  totals: "totals",
  unreadable: "unreadable",
};

export function sheetReading(sheet: LogSheet): SheetReading {
  const { name, kind, why, columns, rowKinds, hiddenRows, headingsChanged } = sheet;
  const rows = {
    total: rowKinds.length,
    fills: 0,
    cylinders: 0,
    notFilled: 0,
    struckOut: 0,
    blank: 0,
    headings: 0,
    totals: 0,
    unreadable: 0,
  };
  for (const rowKind of rowKinds) rows[COUNTED_AS[rowKind]] += 1;
  return { name, kind, why, columns, rows, hiddenRows, headingsChanged };
}
