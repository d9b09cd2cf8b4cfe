import type { CellStyle } from "../cellStyle";
import { ownLine, type OwnSheet } from "../ownSheet";
import type { Area, CellValue } from "../sheet";
import { allAtOnce, inSteps, part, type Steps } from "../steps";
import type { Block, FactsBlock, TableBlock, TableChart, TableColumn, TextBlock } from "./blocks";
import {
  styledCell,
  type ChartDraft,
  type DraftCell,
  type DraftRow,
  type PageDraft,
  type SheetDraft,
  type StyledCell,
  type TableDraft,
} from "./draft";
import { heightFor, ONE_LINE_PT, shownLength, widthFor } from "./fit";
import { LOOKS } from "./looks";

const MOST_CHARACTERS = 40;
/** What a sheet without a table is wide, so that sentences are no longer than a page. */
const LEAST_WIDTH = 90;
/** What stands to the right would touch the column after it. */
const AWAY_FROM_NEXT: CellStyle = { indent: 1 };
/** What stands behind a column of wrapped text would touch it. */
const AWAY_FROM_LAST: CellStyle = { horizontal: "left", indent: 1 };
/** Room that an indent takes, in characters. */
const INDENT = 1.5;
const HEIGHTS: Partial<Record<TextBlock["kind"], number>> = { title: 30, section: 24 };

/** How a report sheet prints, and what of ours it is: absent where the shop goes on with it. */
export interface ReportPage extends Omit<PageDraft, "titleRows"> {
  readonly own?: OwnSheet;
}

/** A report sheet of these blocks. The headings of its table stay in sight, and are printed on every page. */
export function sheetOf(name: string, blocks: readonly Block[], page: ReportPage): SheetDraft {
  return allAtOnce(sheetSteps(name, blocks, page));
}

/** The same, a few rows at a time. */
export function* sheetSteps(
  name: string,
  blocks: readonly Block[],
  { own, ...page }: ReportPage,
): Steps<SheetDraft> {
  const foot: readonly Block[] = own === undefined ? [] : [{ kind: "quiet", lines: [ownLine(own)] }];
  const layout = yield* laidOut([...blocks, ...foot]);
  return layout.sheet(name, page);
}

/** How many rows these blocks take at the top of a sheet. */
export function rowsTaken(blocks: readonly Block[]): number {
  return allAtOnce(laidOut(blocks)).rows.length;
}

/** The share of the work after which all columns are measured. */
const MEASURED_SHARE = 0.2;

function* laidOut(blocks: readonly Block[]): Steps<Layout> {
  const layout = new Layout(yield* part(0, MEASURED_SHARE, widthsOf(blocks)));
  const shareOf = (at: number) => MEASURED_SHARE + ((1 - MEASURED_SHARE) * at) / blocks.length;
  for (const [at, block] of blocks.entries()) {
    if (block.kind === "table") yield* part(shareOf(at), shareOf(at + 1), layout.addTable(block));
    else layout.add(block);
  }
  return layout;
}

class Layout {
  readonly rows: DraftRow[] = [];
  private readonly merges: Area[] = [];
  private readonly tables: TableDraft[] = [];
  private readonly charts: ChartDraft[] = [];
  private readonly looks = new CombinedLooks();
  /** The rows of headings that differ. */
  private readonly headings = new Set<string>();

  constructor(private readonly widths: readonly number[]) {}

  add(block: FactsBlock | TextBlock): void {
    if (block.kind === "facts") this.addFacts(block);
    else this.addText(block);
  }

  sheet(name: string, page: Omit<ReportPage, "own">): SheetDraft {
    const heading = this.tables[0]?.area.firstRow;
    const alike = this.headings.size === 1;
    const alone = this.tables.length === 1 && this.charts.length === 0;
    return {
      name,
      rows: this.rows,
      widths: this.widths,
      merges: this.merges,
      tables: this.tables,
      charts: this.charts,
      frozenRows: alone && heading !== undefined ? heading + 1 : 0,
      page: {
        ...page,
        ...(alike && heading !== undefined && { titleRows: { first: heading, last: heading } }),
      },
    };
  }

  private addText({ kind, lines }: TextBlock): void {
    const style = LOOKS[kind];
    for (const line of lines) {
      const height = HEIGHTS[kind] ?? heightFor(line, this.width(0));
      this.across(0);
      this.rows.push({ cells: [{ value: line, style }], heightPt: height });
    }
  }

  private addFacts({ facts }: FactsBlock): void {
    for (const [label, fact] of facts) {
      const cell = styledCell(fact);
      const style = { ...LOOKS.text, horizontal: "left" as const, ...cell.style };
      this.across(1);
      this.rows.push({
        cells: [
          { value: label, style: LOOKS.label },
          { ...cell, style },
          // The look of merged cells is that of each of them: the line below runs on to the end.
          ...this.widths.slice(2).map(() => ({ value: null, style })),
        ],
        heightPt: heightFor(typeof cell.value === "string" ? cell.value : "", this.width(1)),
      });
    }
    this.gap();
  }

  *addTable({ name, columns, rows, empty, below = [], chart }: TableBlock): Steps<void> {
    if (rows.length === 0) {
      this.addText({ kind: "text", lines: [empty] });
      return this.gap();
    }
    if (chart) this.addChart(chart, rows.length);
    const firstRow = this.rows.length;
    const lastRow = firstRow + rows.length;
    this.tables.push({ name, area: { firstRow, firstColumn: 0, lastRow, lastColumn: columns.length - 1 } });
    this.headings.add(columns.map(({ heading }) => heading).join("\n"));
    const behind = columns.map((_, index) => index > 0 && isWrapped(columns[index - 1]!, index - 1, rows));
    this.rows.push(this.asHighAsItsText(columns.map((column, index) => headingCell(column, behind[index]!))));
    yield* inSteps(rows, rows.length, (row) =>
      this.rows.push(this.bodyRow(row, columns, behind, LOOKS.body)),
    );
    for (const row of below) this.rows.push(this.bodyRow(row, columns, behind, LOOKS.sum));
    this.gap();
  }

  private bodyRow(
    given: readonly DraftCell[],
    columns: readonly TableColumn[],
    behind: readonly boolean[],
    look: CellStyle,
  ): DraftRow {
    const cells = columns.map((column, index): StyledCell => {
      const cell = styledCell(given[index]);
      const format = cell.format ?? column.format;
      const wraps = isLong(cell.value, column);
      const isRight = (cell.style?.horizontal ?? column.style?.horizontal) === "right";
      const isLeft = typeof cell.value === "string" || cell.style?.horizontal === "left";
      return {
        ...cell,
        ...(format !== undefined && typeof cell.value !== "string" && { format }),
        style: this.looks.of(
          look,
          wraps ? LOOKS.text : undefined,
          isRight ? AWAY_FROM_NEXT : undefined,
          behind[index] && isLeft ? AWAY_FROM_LAST : undefined,
          column.style,
          cell.link && LOOKS.link,
          cell.style,
        ),
      };
    });
    return this.asHighAsItsText(cells);
  }

  private asHighAsItsText(cells: readonly StyledCell[]): DraftRow {
    const heights = cells.map(({ value, style }, index) =>
      typeof value === "string" && style?.wrap
        ? heightFor(value, this.widths[index]! - (style.indent ?? 0) * INDENT)
        : 0,
    );
    const height = Math.max(...heights);
    return height > ONE_LINE_PT ? { cells, heightPt: height } : { cells };
  }

  /** Above a table of so many rows, which begins right below it. */
  private addChart({ rowsHigh, series, ...chart }: TableChart, tableRows: number): void {
    const firstRow = this.rows.length;
    const heading = firstRow + rowsHigh + 1;
    const column = (index: number): Area => ({
      firstRow: heading + 1,
      firstColumn: index,
      lastRow: heading + tableRows,
      lastColumn: index,
    });
    this.charts.push({
      ...chart,
      series: series.map(({ categories, values, ...rest }) => ({
        ...rest,
        categories: column(categories),
        values: column(values),
      })),
      place: {
        firstRow,
        firstColumn: 0,
        lastRow: firstRow + rowsHigh - 1,
        lastColumn: this.widths.length - 1,
      },
    });
    for (let n = 0; n <= rowsHigh; n++) this.gap();
  }

  private gap(): void {
    this.rows.push({ cells: [] });
  }

  /** The next row is one cell from this column to the last. */
  private across(firstColumn: number): void {
    const lastColumn = this.widths.length - 1;
    const row = this.rows.length;
    if (firstColumn < lastColumn) this.merges.push({ firstRow: row, firstColumn, lastRow: row, lastColumn });
  }

  private width(firstColumn: number): number {
    return this.widths.slice(firstColumn).reduce((sum, width) => sum + width, 0);
  }
}

function headingCell({ heading, style }: TableColumn, isBehind: boolean): StyledCell {
  const { horizontal } = style ?? {};
  const away = horizontal === "right" ? AWAY_FROM_NEXT : isBehind ? AWAY_FROM_LAST : undefined;
  const look = away ? { ...LOOKS.heading, ...away } : LOOKS.heading;
  return { value: heading, style: horizontal ? { ...look, horizontal } : look };
}

/** A text that takes more lines than one. */
function isLong(value: CellValue, column: TableColumn): boolean {
  return typeof value === "string" && (value.length > most(column) || value.includes("\n"));
}

function isWrapped(column: TableColumn, index: number, rows: TableBlock["rows"]): boolean {
  return rows.some((row) => isLong(styledCell(row[index]).value, column));
}

function* widthsOf(blocks: readonly Block[]): Steps<readonly number[]> {
  const widths: number[] = [];
  const widen = (index: number, width: number) => (widths[index] = Math.max(widths[index] ?? 0, width));
  for (const block of blocks) {
    if (block.kind === "facts") {
      for (const [label] of block.facts) widen(0, widthFor("", shownLength(label, undefined) + 1, 30));
    } else if (block.kind === "table" && block.rows.length > 0) {
      for (const [index, column] of block.columns.entries()) {
        yield index / block.columns.length;
        widen(index, columnWidth(column, index, block));
      }
    }
  }
  const missing = LEAST_WIDTH - widths.reduce((sum, width) => sum + width, 0);
  // What is missing stands beside the tables, not in them.
  return missing > 0 ? [...widths, missing] : widths;
}

function columnWidth(column: TableColumn, index: number, { columns, rows, below = [] }: TableBlock): number {
  let longest = column.leastCharacters ?? 0;
  for (const row of [...rows, ...below]) {
    const { value, format } = styledCell(row[index]);
    longest = Math.max(longest, shownLength(value, format ?? column.format));
  }
  const away = index > 0 && isWrapped(columns[index - 1]!, index - 1, rows) ? INDENT : 0;
  return widthFor(column.heading, longest, most(column)) + away;
}

function most({ mostCharacters = MOST_CHARACTERS }: TableColumn): number {
  return mostCharacters;
}

/** One object for each combination of looks: a report has few of them and many cells. */
class CombinedLooks {
  private readonly known = new Map<string, CellStyle>();
  private readonly numbers = new Map<CellStyle, number>();

  of(...looks: readonly (CellStyle | undefined)[]): CellStyle {
    const key = looks.map((look) => (look ? this.numberOf(look) : "")).join();
    const known = this.known.get(key);
    if (known) return known;
    const combined = Object.assign({}, ...looks) as CellStyle;
    this.known.set(key, combined);
    return combined;
  }

  private numberOf(look: CellStyle): number {
    const number = this.numbers.get(look) ?? this.numbers.size;
    this.numbers.set(look, number);
    return number;
  }
}
