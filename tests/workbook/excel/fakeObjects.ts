import type { Area, CellValue, SheetRow } from "../../../src/sheet/sheet";
import { columnIndex, isBlank } from "../../../src/sheet/sheet";

/** An error with the code that Excel would give. */
export class HostError extends Error {
  constructor(
    readonly code: string,
    /** What it is about, where that is not plain from the request. */
    readonly about = "",
  ) {
    super(`Excel says so, in a language of its own: ${code}.`);
  }
}

/** A workbook's state behind the objects that office.js reaches. */
export interface FakeBook {
  readonly sheets: FakeSheet[];
  readonly parts: Map<string, string>;
  /** Formulas by sheet and cell ("Log!0,3"), each with how many rows down its answer spills. */
  readonly formulas: Map<string, { readonly formula: string; readonly rows: number }>;
  /** What was written and is never read: charts, formats, page setup; as paths with what they were given. */
  readonly looks: string[];
  readonly tables: { name: string; readonly sheet: FakeSheet; readonly area: Area }[];
  readonly marks: FakeMark[];
  readonly dateSystem: 1900 | 1904;
  activeSheet: FakeSheet;
  selected: { row: number; column: number };
  /** Areas selected besides the active cell. */
  further: readonly Area[];
  /** Beyond so many cells a range has no values, but no error either. */
  cellLimit: number;
  /** Beyond so many merged areas Excel does not tell any. */
  mergeLimit: number;
  /** How a date is shown; hosts do it in the user's language. */
  showDate: (serialFrom1900: number, format: string) => string;
  /** How often, and how thoroughly, it was asked to calculate everything. */
  readonly calculated: string[];
  /** What a formula that is written answers. */
  calculate: (formula: string) => CellValue;
  /** What the worksheet function DATE gives through office.js. */
  dateFunction: (book: FakeBook, year: number, month: number, day: number) => number;
}

/** A conditional format. */
export interface FakeMark {
  readonly id: string;
  readonly sheet: FakeSheet;
  readonly areas: readonly Area[];
  formula: string;
}

export class FakeSheet {
  visibility: "Visible" | "Hidden" | "VeryHidden";
  /** Refuses changes. */
  protected = false;
  constructor(
    readonly id: string,
    public name: string,
    hidden: boolean,
    readonly rows: SheetRow[],
    readonly merges: readonly Area[],
  ) {
    this.visibility = hidden ? "Hidden" : "Visible";
  }

  /** The rectangle of cells that hold something, or, with formats, that look different. */
  used(valuesOnly: boolean): Area | null {
    let used: Area | null = null;
    this.rows.forEach((row, index) => {
      const width = Math.max(row.values.length, row.formats?.length ?? 0);
      for (let column = 0; column < width; column += 1) {
        const counts = !isBlank(row.values[column]) || (!valuesOnly && row.formats?.[column] !== undefined);
        if (!counts) continue;
        used = {
          firstRow: used?.firstRow ?? index,
          lastRow: index,
          firstColumn: Math.min(used?.firstColumn ?? column, column),
          lastColumn: Math.max(used?.lastColumn ?? column, column),
        };
      }
    });
    return used;
  }
}

/* The objects below have the members that office.js asks for, by their names there. */

export class WorkbookObject {
  constructor(private readonly book: FakeBook) {}
  get worksheets() {
    return new WorksheetsObject(this.book);
  }
  get customXmlParts() {
    return new PartsObject(this.book.parts, () => true);
  }
  get functions() {
    return new FunctionsObject(this.book);
  }
  get application() {
    return { calculate: (kind: string) => void this.book.calculated.push(kind) };
  }
  get tables() {
    return { items: this.book.tables.map(({ name }) => ({ id: name, name })) };
  }
  getActiveCell() {
    const { activeSheet, selected } = this.book;
    const area = {
      firstRow: selected.row,
      firstColumn: selected.column,
      lastRow: selected.row,
      lastColumn: selected.column,
    };
    return new RangeObject(this.book, activeSheet, area);
  }
  getSelectedRanges() {
    const { activeSheet, selected, further } = this.book;
    const { row, column } = selected;
    const cell = { firstRow: row, firstColumn: column, lastRow: row, lastColumn: column };
    return new RangeAreasObject(this.book, activeSheet, [cell, ...further]);
  }
}

class WorksheetsObject {
  constructor(private readonly book: FakeBook) {}
  get items() {
    return this.book.sheets.map((sheet) => new WorksheetObject(this.book, sheet));
  }
  getItemOrNullObject(key: string) {
    const name = key.toLowerCase();
    return this.items.find((sheet) => sheet.name.toLowerCase() === name || sheet.id === key) ?? null;
  }
  getActiveWorksheet() {
    return new WorksheetObject(this.book, this.book.activeSheet);
  }
  add(name: string) {
    const { sheets } = this.book;
    if (this.getItemOrNullObject(name) || name.length > 31) throw new HostError("InvalidArgument");
    const sheet = new FakeSheet(`{new-${sheets.length}-${name}}`, name, false, [], []);
    sheets.push(sheet);
    return new WorksheetObject(this.book, sheet);
  }
  getItem(key: string) {
    const sheet = this.getItemOrNullObject(key);
    if (!sheet) throw new HostError("ItemNotFound");
    return sheet;
  }
}

class WorksheetObject {
  constructor(
    private readonly book: FakeBook,
    private readonly sheet: FakeSheet,
  ) {}
  get id() {
    return this.sheet.id;
  }
  get name() {
    return this.sheet.name;
  }
  get visibility() {
    return this.sheet.visibility;
  }
  activate() {
    if (this.sheet.visibility !== "Visible") throw new HostError("GeneralException");
    this.book.activeSheet = this.sheet;
  }
  delete() {
    this.book.sheets.splice(this.book.sheets.indexOf(this.sheet), 1);
  }
  gridlines = true;
  get protection() {
    return { protected: this.sheet.protected };
  }
  get charts() {
    return looks(this.book, `${this.sheet.name}.charts`);
  }
  get freezePanes() {
    return looks(this.book, `${this.sheet.name}.freezePanes`);
  }
  get pageLayout() {
    return looks(this.book, `${this.sheet.name}.pageLayout`);
  }
  get tables() {
    return { add: () => new NewTableObject(this.book, this.sheet) };
  }
  getRange() {
    return this.getRangeByIndexes(0, 0, 1_048_576, 16_384);
  }
  getRanges(addresses: string) {
    return new RangeAreasObject(this.book, this.sheet, addresses.split(",").map(areaNamed));
  }
  getUsedRangeOrNullObject(valuesOnly: boolean) {
    const used = this.sheet.used(valuesOnly);
    return used && new RangeObject(this.book, this.sheet, used);
  }
  getRangeByIndexes(firstRow: number, firstColumn: number, rowCount: number, columnCount: number) {
    const [lastRow, lastColumn] = [firstRow + rowCount - 1, firstColumn + columnCount - 1];
    const fits = firstRow >= 0 && firstColumn >= 0 && lastRow < 1_048_576 && lastColumn < 16_384;
    if (!fits || rowCount < 1 || columnCount < 1) throw new HostError("InvalidArgument");
    return new RangeObject(this.book, this.sheet, { firstRow, firstColumn, lastRow, lastColumn });
  }
}

class RangeObject {
  constructor(
    private readonly book: FakeBook,
    private readonly sheet: FakeSheet,
    private readonly area: Area,
  ) {}
  get rowIndex() {
    return this.area.firstRow;
  }
  get columnIndex() {
    return this.area.firstColumn;
  }
  get rowCount() {
    return this.area.lastRow + 1 - this.area.firstRow;
  }
  get columnCount() {
    return this.area.lastColumn + 1 - this.area.firstColumn;
  }
  get values() {
    return this.cells((value) => (isError(value) ? value.error : (value ?? "")));
  }
  get valueTypes() {
    return this.cells(typeOf);
  }
  get numberFormat() {
    return this.cells((_, format) => format ?? "General");
  }
  get text() {
    const shift = this.book.dateSystem === 1904 ? 1462 : 0;
    return this.cells((value, format) => {
      const isDate = typeof value === "number" && format !== undefined && /[dy]/.test(format);
      if (isDate) return this.book.showDate(value + shift, format);
      return isError(value) ? value.error : String(value ?? "");
    });
  }
  get rowHidden() {
    const states = new Set(this.rows.map((row) => row?.hidden ?? false));
    return states.size > 1 ? null : states.has(true);
  }
  getRowProperties(options: { rowHidden?: boolean }) {
    return this.rows.map((row) => (options.rowHidden ? { rowHidden: row?.hidden ?? false } : {}));
  }
  getMergedAreasOrNullObject() {
    const merges = this.sheet.merges.filter((merge) => merge.firstRow <= this.area.lastRow);
    if (merges.length > this.book.mergeLimit) throw new HostError("GeneralException");
    if (merges.length === 0) return null;
    const items = merges.map((merge) => new RangeObject(this.book, this.sheet, merge));
    return { areaCount: items.length, areas: { items } };
  }
  get formulas() {
    const shown = this.cells((value) => (isError(value) ? value.error : (value ?? "")))!;
    return shown.map((row, at) =>
      row.map((value, column) => this.formulaAt(this.area.firstRow + at, column)?.formula ?? value),
    );
  }
  set formulas(typed: unknown[][]) {
    this.write(typed, (old, entry, row, column) => {
      const key = `${this.sheet.name}!${row},${column}`;
      this.book.formulas.delete(key);
      if (typeof entry !== "string") return { ...old, value: entry as CellValue };
      if (entry.startsWith("=")) this.book.formulas.set(key, { formula: entry, rows: 1 });
      const value = entry.startsWith("=") ? this.book.calculate(entry) : entry.replace(/^'/, "");
      return { ...old, value: entry === "" ? null : value };
    });
  }
  set numberFormat(formats: string[][] | null) {
    this.write(formats ?? [], (old, format) => ({
      ...old,
      format: format === "General" ? undefined : (format as string),
    }));
  }
  hyperlink: unknown = null;
  merge() {}
  get format() {
    return looks(this.book, `${this.sheet.name}.format`);
  }
  get conditionalFormats() {
    return new ConditionalFormatsObject(this.book, this.sheet, [this.area]);
  }
  getSpecialCellsOrNullObject(type: string, values: string) {
    if (type !== "Formulas" || values !== "Errors") throw new HostError("InvalidArgument");
    const found: Area[] = [];
    for (let row = this.area.firstRow; row <= this.area.lastRow; row += 1) {
      for (let column = this.area.firstColumn; column <= this.area.lastColumn; column += 1) {
        const value = this.sheet.rows[row]?.values[column] ?? null;
        if (!isError(value) || !this.book.formulas.has(`${this.sheet.name}!${row},${column}`)) continue;
        found.push({ firstRow: row, lastRow: row, firstColumn: column, lastColumn: column });
      }
    }
    return found.length === 0 ? null : new RangeAreasObject(this.book, this.sheet, found);
  }
  getSpillParentOrNullObject() {
    const { firstRow: row, firstColumn } = this.area;
    for (let above = 1; above <= row; above += 1) {
      const found = this.formulaAt(row - above, 0);
      if (found && found.rows > above) {
        const parent = { firstRow: row - above, lastRow: row - above, firstColumn, lastColumn: firstColumn };
        return new RangeObject(this.book, this.sheet, parent);
      }
    }
    return null;
  }
  getEntireRow() {
    return new RangeObject(this.book, this.sheet, { ...this.area, firstColumn: 0, lastColumn: 16_383 });
  }
  /** Whole rows only. What stands there moves down with its formulas, which look at where they looked. */
  insert(shift: string) {
    const { firstRow, lastColumn } = this.area;
    if (shift !== "Down" || lastColumn < 16_383) throw new HostError("InvalidArgument");
    if (this.sheet.protected) throw new HostError("AccessDenied");
    this.sheet.rows.splice(firstRow, 0, { values: [] });
    const formulas = [...this.book.formulas];
    this.book.formulas.clear();
    for (const [key, formula] of formulas) {
      const [, name, row, column] = /^(.*)!(\d+),(\d+)$/.exec(key)!;
      const moved = name === this.sheet.name && Number(row) >= firstRow ? Number(row) + 1 : row;
      this.book.formulas.set(`${name}!${moved},${column}`, formula);
    }
  }
  select() {
    if (this.book.activeSheet !== this.sheet) throw new HostError("InvalidSelection");
    this.book.selected = { row: this.area.firstRow, column: this.area.firstColumn };
    this.book.further = [];
  }

  private write(
    matrix: unknown[][],
    change: (old: Cell, entry: unknown, row: number, column: number) => Cell,
  ) {
    if (this.sheet.protected) throw new HostError("AccessDenied");
    if (matrix.length !== this.rowCount || matrix.some((row) => row.length !== this.columnCount)) {
      throw new HostError("InvalidArgument");
    }
    const { rows } = this.sheet;
    matrix.forEach((entries, down) => {
      const at = this.area.firstRow + down;
      while (rows.length <= at) rows.push({ values: [] });
      const values = [...rows[at]!.values];
      const formats = [...(rows[at]!.formats ?? [])];
      entries.forEach((entry, across) => {
        const column = this.area.firstColumn + across;
        while (values.length <= column) values.push(null);
        while (formats.length <= column) formats.push(undefined);
        const cell = change({ value: values[column]!, format: formats[column] }, entry, at, column);
        values[column] = cell.value;
        formats[column] = cell.format;
      });
      rows[at] = { ...rows[at]!, values, formats };
    });
  }
  private formulaAt(row: number, column: number) {
    return this.book.formulas.get(`${this.sheet.name}!${row},${this.area.firstColumn + column}`);
  }
  private get rows(): (SheetRow | undefined)[] {
    return Array.from({ length: this.rowCount }, (_, index) => this.sheet.rows[this.area.firstRow + index]);
  }
  private cells<T>(show: (value: CellValue, format: string | undefined) => T): T[][] | null {
    if (this.rowCount * this.columnCount > this.book.cellLimit) return null;
    return this.rows.map((row) =>
      Array.from({ length: this.columnCount }, (_, index) => {
        const column = this.area.firstColumn + index;
        return show(row?.values[column] ?? null, row?.formats?.[column]);
      }),
    );
  }
}

interface Cell {
  readonly value: CellValue;
  readonly format: string | undefined;
}

/** Takes whatever it is given, and keeps a note of it. */
function looks(book: FakeBook, path: string): unknown {
  return new Proxy(() => undefined, {
    has: () => true,
    get: (_, name) => {
      if (name === "toJSON") return () => null;
      return typeof name === "symbol" ? undefined : looks(book, `${path}.${name}`);
    },
    set: (_, name, value) => {
      book.looks.push(`${path}.${String(name)} = ${JSON.stringify(value)}`);
      return true;
    },
    apply: (_, __, given: unknown[]) => {
      book.looks.push(`${path}(${given.length})`);
      return looks(book, `${path}()`);
    },
  });
}

/** `A1` or `A1:B7`. */
function areaNamed(address: string): Area {
  const [first, last = first] = address.split(":").map((cell) => {
    const [, letters, number] = /^([A-Z]+)(\d+)$/.exec(cell)!;
    return { row: Number(number) - 1, column: columnIndex(letters!) };
  });
  return { firstRow: first!.row, firstColumn: first!.column, lastRow: last!.row, lastColumn: last!.column };
}

class RangeAreasObject {
  constructor(
    private readonly book: FakeBook,
    private readonly sheet: FakeSheet,
    private readonly list: readonly Area[],
  ) {}
  get areaCount() {
    return this.list.length;
  }
  get areas() {
    return { items: this.list.map((area) => new RangeObject(this.book, this.sheet, area)) };
  }
  get conditionalFormats() {
    return new ConditionalFormatsObject(this.book, this.sheet, this.list);
  }
}

class NewTableObject {
  style = "";
  showBandedRows = true;
  constructor(
    private readonly book: FakeBook,
    private readonly sheet: FakeSheet,
  ) {}
  set name(name: string) {
    if (this.book.tables.some((table) => table.name.toLowerCase() === name.toLowerCase())) {
      throw new HostError("InvalidArgument");
    }
    this.book.tables.push({ name, sheet: this.sheet, area: this.sheet.used(true)! });
  }
  get name() {
    return "";
  }
}

class ConditionalFormatsObject {
  constructor(
    private readonly book: FakeBook,
    private readonly sheet: FakeSheet,
    private readonly areas: readonly Area[],
  ) {}
  get items() {
    return this.book.marks
      .filter(({ sheet }) => sheet === this.sheet)
      .map((mark) => new ConditionalFormatObject(this.book, mark));
  }
  add(type: string) {
    if (type !== "Custom") throw new HostError("InvalidArgument");
    if (this.sheet.protected) throw new HostError("AccessDenied");
    const id = `{mark-${this.book.marks.length}}`;
    const mark = { id, sheet: this.sheet, areas: this.areas, formula: "" };
    this.book.marks.push(mark);
    return new ConditionalFormatObject(this.book, mark);
  }
  getItem(id: string) {
    const item = this.items.find((each) => each.id === id);
    if (!item) throw new HostError("ItemNotFound");
    return item;
  }
}

class ConditionalFormatObject {
  readonly type = "Custom";
  constructor(
    private readonly book: FakeBook,
    private readonly mark: FakeMark,
  ) {}
  get id() {
    return this.mark.id;
  }
  get custom() {
    return { rule: this.mark, format: looks(this.book, `${this.mark.sheet.name}.mark`) };
  }
  delete() {
    if (this.mark.sheet.protected) throw new HostError("AccessDenied");
    this.book.marks.splice(this.book.marks.indexOf(this.mark), 1);
  }
}

const isError = (value: CellValue) => typeof value === "object" && value !== null;

function typeOf(value: CellValue): string {
  if (value === null) return "Empty";
  if (isError(value)) return "Error";
  if (typeof value === "number") return Number.isInteger(value) ? "Integer" : "Double";
  return typeof value === "boolean" ? "Boolean" : "String";
}

class PartsObject {
  constructor(
    private readonly parts: Map<string, string>,
    private readonly accepts: (xml: string) => boolean,
  ) {}
  get items() {
    return [...this.parts]
      .filter(([, xml]) => this.accepts(xml))
      .map(([id]) => new PartObject(this.parts, id));
  }
  getByNamespace(namespace: string) {
    return new PartsObject(this.parts, (xml) => xml.includes(`xmlns="${namespace}"`));
  }
  getItem(id: string) {
    if (!this.parts.has(id)) throw new HostError("ItemNotFound");
    return new PartObject(this.parts, id);
  }
  add(xml: string) {
    const id = `{${this.parts.size + 1}-${xml.length}}`;
    this.parts.set(id, xml);
    return new PartObject(this.parts, id);
  }
}

class PartObject {
  constructor(
    private readonly parts: Map<string, string>,
    readonly id: string,
  ) {}
  getXml() {
    return this.parts.get(this.id);
  }
  setXml(xml: string) {
    this.parts.set(this.id, xml);
  }
  delete() {
    this.parts.delete(this.id);
  }
}

class FunctionsObject {
  constructor(private readonly book: FakeBook) {}
  date(year: number, month: number, day: number) {
    return { value: this.book.dateFunction(this.book, year, month, day), error: "" };
  }
  year(day: number) {
    return { value: day === 0 ? this.book.dateSystem : Number.NaN, error: "" };
  }
}
