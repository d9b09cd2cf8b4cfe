import { BLANK_ROW, type CellValue } from "../../sheet/sheet";
import type { CellStyle } from "../../sheet/cellStyle";
import type { CellOrigin, RowContent } from "./content";
import { FileFault, tooLarge } from "./fault";
import { LIMITS } from "./limits";

/** How a cell shows its value. */
export interface Look {
  readonly format: string | undefined;
  readonly style: CellStyle | undefined;
}

type Looks = Pick<RowContent, "formats" | "styles">;

/**
 * Gathers a sheet's rows as they are read, up to the last that holds anything. Formatted rows without content,
 * of which a sheet may have a million, share one row; rows that look alike share their looks.
 */
export class RowGatherer {
  private readonly rows: RowContent[] = [];
  private filled = 0;

  private hidden = false;
  private heightPt: number | undefined;
  private readonly columns: number[] = [];
  private readonly values: CellValue[] = [];
  private readonly origins: (CellOrigin | undefined)[] = [];
  private readonly looks: (Look | undefined)[] = [];
  private hasOrigin = false;
  private width = 0;

  private lastLooks: Looks = {};
  private lastLookColumns: readonly number[] = [];
  private lastLookList: readonly (Look | undefined)[] = [];
  private lastBlank: RowContent = BLANK_ROW;

  /** @param budget how many cells may still be held, over all sheets of the file */
  constructor(private readonly budget: { cells: number }) {}

  beginRow(row: number, hidden: boolean, heightPt: number | undefined): void {
    if (!(Number.isInteger(row) && row >= this.rows.length)) {
      throw new FileFault("its rows are not in their order");
    }
    if (row >= LIMITS.rows) throw tooLarge(`more than ${LIMITS.rows.toLocaleString("en-US")} rows`);
    while (this.rows.length < row) this.rows.push(BLANK_ROW);
    this.hidden = hidden;
    this.heightPt = heightPt;
    this.columns.length = this.values.length = this.origins.length = this.looks.length = 0;
    this.hasOrigin = false;
    this.width = 0;
  }

  addCell(column: number, value: CellValue, origin: CellOrigin | undefined, look: Look | undefined): void {
    if (column >= LIMITS.columns || column <= (this.columns.at(-1) ?? -1)) {
      throw new FileFault("its cells are not in their order");
    }
    this.columns.push(column);
    this.values.push(value);
    this.origins.push(origin);
    this.looks.push(look);
    if (origin) this.hasOrigin = true;
    if (origin || value !== null) this.width = column + 1;
  }

  endRow(): void {
    const looks = this.rowLooks();
    if (this.width === 0) {
      this.rows.push(this.blankRow(looks));
      return;
    }
    this.spend(this.width);
    this.rows.push({
      values: this.spread(this.values, this.width, null),
      ...looks,
      ...(this.hasOrigin && { origins: this.spread(this.origins, this.width, undefined) }),
      ...this.measures(),
      ...(this.isStruckOut() && { struckOut: true }),
    });
    this.filled = this.rows.length;
  }

  finish(): readonly RowContent[] {
    this.rows.length = this.filled;
    return this.rows;
  }

  private spread<T>(cells: readonly T[], width: number, blank: T): T[] {
    const line = new Array<T>(width).fill(blank);
    for (let n = 0; n < cells.length && this.columns[n]! < width; n++) line[this.columns[n]!] = cells[n]!;
    return line;
  }

  private isStruckOut(): boolean {
    return this.looks.every((look, at) => this.values[at] === null || look?.style?.strike === true);
  }

  private measures(): Pick<RowContent, "hidden" | "heightPt"> {
    return {
      ...(this.hidden && { hidden: true }),
      ...(this.heightPt !== undefined && { heightPt: this.heightPt }),
    };
  }

  private blankRow(looks: Looks): RowContent {
    const { hidden = false, heightPt, styles, formats } = this.lastBlank;
    const same =
      hidden === this.hidden &&
      heightPt === this.heightPt &&
      styles === looks.styles &&
      formats === looks.formats;
    if (!same) this.lastBlank = { values: BLANK_ROW.values, ...looks, ...this.measures() };
    return this.lastBlank;
  }

  private rowLooks(): Looks {
    if (sameList(this.columns, this.lastLookColumns) && sameList(this.looks, this.lastLookList)) {
      return this.lastLooks;
    }
    this.lastLookColumns = [...this.columns];
    this.lastLookList = [...this.looks];
    const formats = this.sparse((look) => look?.format);
    const styles = this.sparse((look) => look?.style);
    this.lastLooks = { ...(formats && { formats }), ...(styles && { styles }) };
    return this.lastLooks;
  }

  private sparse<T extends string | CellStyle>(
    pick: (look: Look | undefined) => T | undefined,
  ): T[] | undefined {
    const picked = this.looks.map(pick);
    const last = picked.findLastIndex((each) => each !== undefined);
    if (last < 0) return undefined;
    const width = this.columns[last]! + 1;
    this.spend(width);
    return this.spread(picked, width, undefined) as T[];
  }

  private spend(cells: number): void {
    this.budget.cells -= cells;
    if (this.budget.cells < 0) throw tooLarge(`more than ${LIMITS.cells.toLocaleString("en-US")} cells`);
  }
}

function sameList(list: readonly unknown[], other: readonly unknown[]): boolean {
  return list.length === other.length && list.every((each, index) => each === other[index]);
}
