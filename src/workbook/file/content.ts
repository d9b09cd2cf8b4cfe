import type { CellStyle } from "../../sheet/cellStyle";
import type {
  CellLink,
  ChartDraft,
  ConditionDraft,
  ListDraft,
  PageDraft,
  TableDraft,
} from "../../sheet/draft/draft";
import type { Area, Sheet, SheetRow } from "../../sheet/sheet";

/** A cell whose value is the answer of a formula; the value beside it is the last answer. */
export interface FormulaOrigin {
  /** As typed, in the form of en-US, without the equals sign. */
  readonly formula: string;
  /** The cells its answer fills, itself included, where the answer is an array. */
  readonly fills?: Area;
}

/**
 * Where a value comes from: a formula, or the spill of a formula in another cell. A grid that calculates
 * must leave spilled cells empty, or the formula finds its way blocked.
 */
export type CellOrigin = FormulaOrigin | "spill";

/** A row with all that a grid shows. The arrays run beside `values`; `styles` may be longer. */
export interface RowContent extends SheetRow {
  readonly origins?: readonly (CellOrigin | undefined)[];
  readonly styles?: readonly (CellStyle | undefined)[];
  readonly heightPt?: number;
}

export interface ColumnContent {
  /** In characters of the standard font, as spreadsheets count it. */
  readonly widthCharacters?: number;
  readonly hidden?: boolean;
}

/** A sheet with all that a grid shows; it is a `Sheet` as it stands. */
export interface SheetContent extends Sheet {
  readonly rows: readonly RowContent[];
  readonly columns: readonly (ColumnContent | undefined)[];
  readonly frozenRows: number;
  readonly frozenColumns: number;
  readonly links?: readonly LinkedCell[];
  /** Cells that Brimbook has marked, over whatever look they have. */
  readonly marks?: readonly Area[];
  /** Of sheets that Brimbook has written. */
  readonly report?: ReportContent;
}

/** What a written sheet has besides cells. A grid keeps it for the saved copy, where it cannot show it. */
export interface ReportContent {
  readonly tables: readonly TableDraft[];
  readonly charts: readonly ChartDraft[];
  readonly lists: readonly ListDraft[];
  readonly conditions: readonly ConditionDraft[];
  readonly page: PageDraft;
}

export interface LinkedCell {
  readonly row: number;
  readonly column: number;
  readonly link: CellLink;
}

/** A whole workbook, as a file keeps it and a grid shows it. */
export interface WorkbookContent {
  readonly sheets: readonly SheetContent[];
  /** Our own settings by key, unchecked. */
  readonly settings: ReadonlyMap<string, unknown>;
  /** What the opened file holds besides, and a saved copy will not: "charts", "comments". */
  readonly leftOut: readonly string[];
}
