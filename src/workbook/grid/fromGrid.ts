import {
  BooleanNumber,
  type ICellData,
  type IRange,
  type Nullable,
  type Workbook as EngineWorkbook,
  type Worksheet,
} from "@univerjs/core";
import type { FormulaDataModel } from "@univerjs/preset-sheets-core";
import { type Area, BLANK_ROW, type CellValue, isBlank, type Sheet, type SheetRow } from "../../sheet/sheet";
import type { CellStyle } from "../../sheet/cellStyle";
import type { CellOrigin, ColumnContent, LinkedCell, RowContent, SheetContent } from "../file/content";
import { Pace, type PaceOptions } from "../file/pace";
import type { EndRow } from "../newRow";
import { cellValue } from "./cells";
import { ownDataOf } from "./ownCellData";
import { columnCharacters, rowPoints } from "./sizes";
import { cellStyle } from "./styles";

/** Rows between two looks at the clock. */
const ROWS_A_STEP = 50;

type CellRow = Record<number, Nullable<ICellData>>;

/** Reads the engine's sheets: in bulk, from its own cell matrix, with the spilled values it keeps elsewhere. */
export class SheetReader {
  private readonly cells: Record<number, CellRow>;
  private readonly spilled: Record<number, CellRow>;
  private readonly spills: Record<number, Record<number, Nullable<IRange>>>;

  constructor(
    private readonly workbook: EngineWorkbook,
    private readonly sheet: Worksheet,
    private readonly formulas: FormulaDataModel,
  ) {
    const unit = workbook.getUnitId();
    const id = sheet.getSheetId();
    this.cells = sheet.getCellMatrix().getMatrix() as Record<number, CellRow>;
    this.spilled = (formulas.getArrayFormulaCellData()[unit]?.[id] ?? {}) as Record<number, CellRow>;
    this.spills = (formulas.getArrayFormulaRange()[unit]?.[id] ?? {}) as SheetReader["spills"];
  }

  /** The sheet as the log and the audit read it. */
  async read(options?: PaceOptions): Promise<Sheet> {
    return { ...this.head(), rows: await this.rows((row) => this.row(row), options) };
  }

  /** Some of its rows, the last included; many of them a few at a time. */
  async span(firstRow: number, lastRow: number): Promise<SheetRow[]> {
    const pace = new Pace();
    const rows: SheetRow[] = [];
    for (let row = firstRow; row <= lastRow; row++) {
      rows.push(this.row(row));
      if (rows.length % ROWS_A_STEP === 0) await pace.step(ROWS_A_STEP);
    }
    return rows;
  }

  /** The sheet with all that a saved file keeps. */
  async content(options?: PaceOptions): Promise<SheetContent> {
    const { xSplit, ySplit } = this.sheet.getFreeze();
    const links: LinkedCell[] = [];
    const marks: Area[] = [];
    const rows = await this.rows((row) => {
      this.noteOwnData(row, links, marks);
      return this.rowContent(row);
    }, options);
    return {
      ...this.head(),
      rows,
      ...(links.length > 0 && { links }),
      ...(marks.length > 0 && { marks }),
      columns: this.columns(),
      frozenRows: ySplit,
      frozenColumns: xSplit,
    };
  }

  get sheetId(): string {
    return this.sheet.getSheetId();
  }

  value(row: number, column: number): CellValue {
    const own = cellValue(this.cells[row]?.[column]);
    return own === null ? cellValue(this.spilled[row]?.[column]) : own;
  }

  /** The formula in a cell, without the equals sign. */
  formula(row: number, column: number): string | undefined {
    const cell = this.cells[row]?.[column];
    if (!cell?.f && !cell?.si) return undefined;
    const text = this.formulas.getFormulaStringByCell(
      row,
      column,
      this.sheet.getSheetId(),
      this.workbook.getUnitId(),
    );
    return (text ?? cell.f)?.replace(/^=/, "");
  }

  /** The cell whose formula fills this one, where that is another cell. */
  spillOwner(row: number, column: number): { row: number; column: number } | undefined {
    if (!this.spilled[row]?.[column]) return undefined;
    for (const [ownerRow, columns] of Object.entries(this.spills)) {
      for (const [ownerColumn, range] of Object.entries(columns)) {
        if (
          range &&
          row >= range.startRow &&
          row <= range.endRow &&
          column >= range.startColumn &&
          column <= range.endColumn
        ) {
          return { row: Number(ownerRow), column: Number(ownerColumn) };
        }
      }
    }
    return undefined;
  }

  private head(): Omit<Sheet, "rows"> {
    return {
      name: this.sheet.getName(),
      hidden: this.sheet.isSheetHidden() === BooleanNumber.TRUE,
      dateSystem: 1900,
      merges: this.sheet.getMergeData().map(area),
    };
  }

  private async rows<Row extends SheetRow>(
    read: (row: number) => Row,
    options?: PaceOptions,
  ): Promise<Row[]> {
    options?.signal?.throwIfAborted();
    const count = this.lastRow() + 1;
    const pace = new Pace(options);
    pace.total = count;
    const rows: Row[] = [];
    let filled = 0;
    while (rows.length < count) {
      const row = read(rows.length);
      rows.push(row);
      if (row.values.some((value) => value !== null)) filled = rows.length;
      if (rows.length % ROWS_A_STEP === 0) await pace.step(ROWS_A_STEP);
    }
    pace.finish();
    return rows.slice(0, filled);
  }

  /** The last row that the sheet ever touched; -1 for none. */
  lastRow(): number {
    const last = (rows: object) => Object.keys(rows).reduce((most, row) => Math.max(most, Number(row)), -1);
    return Math.max(last(this.cells), last(this.spilled));
  }

  /** The last row that holds anything; -1 for none. */
  lastFilledRow(): number {
    let row = this.lastRow();
    while (row >= 0 && this.row(row).values.every(isBlank)) row--;
    return row;
  }

  /** A row with the formulas in it. */
  endRow(row: number): EndRow {
    const columns = Object.keys(this.cells[row] ?? {}).map(Number);
    const formulas: (string | undefined)[] = [];
    for (const column of columns) formulas[column] = this.formula(row, column);
    return { ...this.row(row), formulas: Array.from(formulas) };
  }

  private row(row: number): SheetRow {
    const cells = this.cells[row];
    const spilled = this.spilled[row];
    const hidden = this.sheet.getRowManager().getRow(row)?.hd === BooleanNumber.TRUE;
    if (!cells && !spilled) return hidden ? { ...BLANK_ROW, hidden } : BLANK_ROW;
    const values: CellValue[] = [];
    const formats: (string | undefined)[] = [];
    let struckOut = true;
    for (const column of columnsOf(cells, spilled)) {
      const value = this.value(row, column);
      if (value === null) continue;
      struckOut &&= this.style(cells?.[column])?.st?.s === BooleanNumber.TRUE;
      while (values.length < column) values.push(null);
      values.push(value);
      const format = this.style(cells?.[column] ?? spilled?.[column])?.n?.pattern;
      if (format && format !== "General") formats[column] = format;
    }
    return {
      values,
      ...(formats.length > 0 && { formats: Array.from(formats) }),
      ...(hidden && { hidden }),
      ...(struckOut && values.length > 0 && { struckOut }),
    };
  }

  private rowContent(row: number): RowContent {
    const cells = this.cells[row] ?? {};
    const plain = this.row(row);
    const origins: CellOrigin[] = [];
    const styles: CellStyle[] = [];
    for (const column of columnsOf(cells, this.spilled[row])) {
      const origin = this.origin(row, column);
      if (origin) origins[column] = origin;
      const style = cellStyle(this.style(cells[column]));
      if (style) styles[column] = style;
    }
    const { h: height, ia: automatic } = this.sheet.getRowManager().getRow(row) ?? {};
    return {
      ...plain,
      ...(origins.length > 0 && { origins: Array.from(origins) }),
      ...(styles.length > 0 && { styles: Array.from(styles) }),
      ...(height !== undefined && automatic === BooleanNumber.FALSE && { heightPt: rowPoints(height) }),
    };
  }

  private origin(row: number, column: number): CellOrigin | undefined {
    const formula = this.formula(row, column);
    if (formula !== undefined) {
      const range = this.spills[row]?.[column];
      return range ? { formula, fills: area(range) } : { formula };
    }
    const blank = cellValue(this.cells[row]?.[column]) === null;
    return blank && this.spilled[row]?.[column] ? "spill" : undefined;
  }

  private style(cell: Nullable<ICellData>) {
    return cell ? this.workbook.getStyles().getStyleByCell(cell) : undefined;
  }

  private noteOwnData(row: number, links: LinkedCell[], marks: Area[]): void {
    for (const [at, cell] of Object.entries(this.cells[row] ?? {})) {
      if (!cell?.custom) continue;
      const column = Number(at);
      const { link, marked } = ownDataOf(cell);
      if (link) links.push({ row, column, link });
      if (marked) marks.push({ firstRow: row, lastRow: row, firstColumn: column, lastColumn: column });
    }
  }

  private columns(): ColumnContent[] {
    const columns: ColumnContent[] = [];
    for (const [column, data] of Object.entries(this.sheet.getColumnManager().getColumnData())) {
      if (!data || (data.w === undefined && data.hd !== BooleanNumber.TRUE)) continue;
      columns[Number(column)] = {
        ...(data.w !== undefined && { widthCharacters: columnCharacters(data.w) }),
        ...(data.hd === BooleanNumber.TRUE && { hidden: true }),
      };
    }
    return Array.from(columns);
  }
}

/** The columns that either row knows, from left to right. */
function columnsOf(cells: CellRow | undefined, spilled: CellRow | undefined): number[] {
  if (!spilled) return Object.keys(cells ?? {}).map(Number);
  return [...new Set([...Object.keys(cells ?? {}), ...Object.keys(spilled)].map(Number))].sort(
    (a, b) => a - b,
  );
}

function area(range: IRange): Area {
  return {
    firstRow: range.startRow,
    firstColumn: range.startColumn,
    lastRow: range.endRow,
    lastColumn: range.endColumn,
  };
}
