import type { CellStyle } from "../cellStyle";
import { showsDate } from "../numberFormat";
import type { Area, CellAddress, CellValue } from "../sheet";

/**
 * A sheet to be written, whichever host writes it: Excel, the grid, a file. Texts are written as text whatever they
 * begin with; only `formula` makes a formula.
 */
export interface SheetDraft {
  /** As wanted; where it is in use, the host writes a number behind it. */
  readonly name: string;
  readonly rows: readonly DraftRow[];
  /** By column, in characters of the standard font; absent for the usual width. */
  readonly widths: readonly (number | undefined)[];
  readonly merges: readonly Area[];
  readonly tables: readonly TableDraft[];
  readonly charts: readonly ChartDraft[];
  /** Drop-downs; absent for none. */
  readonly lists?: readonly ListDraft[];
  /** Looks that depend on what a cell holds; absent for none. */
  readonly conditions?: readonly ConditionDraft[];
  /** Rows that stay in sight at the top. */
  readonly frozenRows: number;
  readonly page: PageDraft;
}

export interface DraftRow {
  readonly cells: readonly DraftCell[];
  /** Absent where the row is to be as high as its text. */
  readonly heightPt?: number;
}

/** A value in its usual look, or a value with all that belongs to it. */
export type DraftCell = CellValue | StyledCell;

export interface StyledCell {
  /** With a formula: its answer as far as it is known; `null` leaves it to be calculated. */
  readonly value: CellValue;
  /** As typed, in the form of en-US, without the equals sign. */
  readonly formula?: string;
  /** Number format, in the form of en-US. */
  readonly format?: string;
  readonly style?: CellStyle;
  readonly link?: CellLink;
}

/** Where a cell leads to. */
export interface CellLink {
  readonly cell: CellAddress;
  /** The file that holds the cell, beside this one; absent for the workbook itself. */
  readonly file?: string;
}

/**
 * A table in the sense of spreadsheets, with filters on its headings. Its first row holds the headings: texts, none
 * twice; at least one row follows.
 */
export interface TableDraft {
  /** Letters and digits; where it is in use, the host writes a number behind it. */
  readonly name: string;
  readonly area: Area;
}

/** A drop-down on cells: its words stand in cells, so that a shop can add its own. Other words are warned of, not refused. */
export interface ListDraft {
  readonly area: Area;
  /** One column of cells of this or another sheet; blank ones are no words. */
  readonly words: { readonly sheet: string; readonly area: Area };
  /** What the warning says. */
  readonly says: string;
}

/** A look of cells whose text begins with these words. */
export interface ConditionDraft {
  readonly area: Area;
  readonly begins: string;
  readonly look: { readonly fontColour: string; readonly fill: string };
}

/** A chart of figures that stand on the same sheet, so that there is a table behind it. */
export interface ChartDraft {
  /** `stacked`: columns on top of one another; `dots`: x against y. */
  readonly kind: "columns" | "stacked" | "bars" | "dots";
  readonly title: string;
  /** What stands along each axis, with its unit: of bars too, the first is that of the categories. */
  readonly axes: readonly [string, string];
  /** How far the marks of the value axis lie apart; absent for what the spreadsheet thinks fit. */
  readonly step?: number;
  readonly series: readonly SeriesDraft[];
  /** The cells that it lies over. */
  readonly place: Area;
  /** What it shows, for whoever cannot see it. */
  readonly says: string;
}

/** Figures of one kind; areas are one column wide. */
export interface SeriesDraft {
  readonly name: string;
  /** The categories; of `dots`, the x values. */
  readonly categories: Area;
  readonly values: Area;
  /** `#RRGGBB` */
  readonly colour: string;
  /** A line through the points instead of marks; of `dots` only. */
  readonly line?: true;
}

export type Paper = "A4" | "Letter";

/** How the sheet prints: as wide as the page, as many pages as it takes, with page numbers. */
export interface PageDraft {
  readonly paper: Paper;
  readonly landscape: boolean;
  /** Rows printed on top of every page. */
  readonly titleRows?: { readonly first: number; readonly last: number };
  /** Made small enough for a single page. */
  readonly onePage?: true;
  /** For paper that is cut or printed already: these margins, none right and below, and nothing at the foot. */
  readonly stock?: { readonly leftMm: number; readonly topMm: number };
  /** What stands at the foot, left of the page number. */
  readonly footer: string;
}

/** A cell with all that belongs to it. */
export function styledCell(cell: DraftCell | undefined): StyledCell {
  return typeof cell === "object" && cell !== null && "value" in cell ? cell : { value: cell ?? null };
}

/** How far the day counts of the two date systems lie apart. */
const DAYS_BETWEEN_SYSTEMS = 1462;

/** A cell's value as a workbook of this date system stores it: dates in drafts count from 1900. */
export function storedValue({ value, format }: StyledCell, dateSystem: 1900 | 1904): CellValue {
  return dateSystem === 1904 && typeof value === "number" && showsDate(format)
    ? value - DAYS_BETWEEN_SYSTEMS
    : value;
}

/** What a cell of a draft holds, formulas as their last answer. */
export function draftValue(cell: DraftCell | undefined): CellValue {
  return styledCell(cell).value;
}
