import type { SheetDraft } from "../../src/sheet/draft/draft";
import {
  BLANK_ROW,
  type CellAddress,
  type CellValue,
  type Sheet,
  type SheetRow,
} from "../../src/sheet/sheet";
import {
  WorkbookProblem,
  type SelectedRows,
  type Workbook,
  type WorkbookChange,
} from "../../src/workbook/workbook";

/** A sheet from its cells. Text that looks like an ISO date becomes a date cell. */
export function sheet(name: string, rows: readonly (readonly CellValue[])[], hidden = false): Sheet {
  return {
    name,
    hidden,
    dateSystem: 1900,
    merges: [],
    rows: rows.map((row) => ({
      values: row.map((value) => serialOf(value) ?? value),
      formats: row.map((value) => (serialOf(value) === undefined ? undefined : "yyyy-mm-dd")),
    })),
  };
}

function serialOf(value: CellValue): number | undefined {
  if (typeof value !== "string" || !/^\d{4}-\d{2}-\d{2}$/.test(value)) return undefined;
  return Date.parse(`${value}T00:00:00Z`) / 86_400_000 + 25_569;
}

/** A workbook in memory that remembers what was asked of it. */
export class FakeWorkbook implements Workbook {
  readonly capabilities = { select: true, settings: true, charts: false };
  readonly selected: CellAddress[] = [];
  readonly added: SheetDraft[] = [];
  readonly settings = new Map<string, unknown>();
  sheets: Sheet[];
  /** Set to make every reading of this sheet fail. */
  broken: string | undefined;
  /** Set to hold back every reading of a sheet until it resolves. */
  gate: Promise<void> | undefined;
  readings = 0;

  constructor(sheets: Sheet[], settings?: unknown) {
    this.sheets = sheets;
    if (settings !== undefined) this.settings.set("brimbook", settings);
  }

  listSheets() {
    return Promise.resolve(this.sheets.map(({ name, hidden }) => ({ name, hidden })));
  }

  async readSheet(name: string, progress?: (share: number) => void, signal?: AbortSignal): Promise<Sheet> {
    this.readings += 1;
    await this.gate;
    signal?.throwIfAborted();
    const found = this.sheets.find((each) => each.name === name);
    if (!found || name === this.broken)
      throw new WorkbookProblem(`The sheet ${name} is protected. Unprotect it and try again.`);
    progress?.(1);
    return found;
  }

  readCell({ sheet: name, row, column }: CellAddress): Promise<CellValue | undefined> {
    const found = this.sheets.find((each) => each.name === name);
    return Promise.resolve(found && (found.rows[row]?.values[column] ?? null));
  }

  /** What is selected in the sheet. */
  selection: SelectedRows = { sheet: "", rows: [], outOfSight: 0 };
  readSelection(): Promise<SelectedRows> {
    return Promise.resolve(this.selection);
  }

  selectCell(address: CellAddress): Promise<void> {
    this.selected.push(address);
    return Promise.resolve();
  }

  addSheets(drafts: readonly SheetDraft[]): Promise<readonly string[]> {
    this.added.push(...drafts);
    return Promise.resolve(drafts.map(({ name }) => name));
  }

  readSetting(key: string): Promise<unknown> {
    return Promise.resolve(this.settings.get(key) ?? null);
  }

  writeSetting(key: string, value: unknown): Promise<void> {
    this.settings.set(key, value);
    return Promise.resolve();
  }
}

/** One that tells of changes, as Excel and the grid do. */
export class LiveWorkbook extends FakeWorkbook {
  private readonly listeners = new Set<(changes: readonly WorkbookChange[]) => void>();

  async readRows(name: string, firstRow: number, lastRow: number): Promise<readonly SheetRow[]> {
    const { rows } = await this.readSheet(name);
    return Array.from({ length: lastRow + 1 - firstRow }, (_, at) => rows[firstRow + at] ?? BLANK_ROW);
  }

  watch(onChange: (changes: readonly WorkbookChange[]) => void): () => void {
    this.listeners.add(onChange);
    return () => this.listeners.delete(onChange);
  }

  /** Makes a sheet another one, and tells what changed in it. */
  edit(name: string, next: (sheet: Sheet) => Sheet, ...changes: readonly WorkbookChange[]): void {
    this.sheets = this.sheets.map((each) => (each.name === name ? next(each) : each));
    this.tell(...changes);
  }

  tell(...changes: readonly WorkbookChange[]): void {
    for (const listener of this.listeners) listener(changes);
  }

  /** Writes into one cell. */
  type(name: string, row: number, column: number, value: CellValue): void {
    const put = (cells: readonly CellValue[]) => {
      const next = [...cells];
      while (next.length < column) next.push(null);
      next[column] = value;
      return next;
    };
    this.edit(
      name,
      (sheet) => ({
        ...sheet,
        rows: Array.from({ length: Math.max(sheet.rows.length, row + 1) }, (_, at) => {
          const before = sheet.rows[at] ?? BLANK_ROW;
          return at === row ? { ...before, values: put(before.values) } : before;
        }),
      }),
      { kind: "rows", sheet: name, firstRow: row, lastRow: row },
    );
  }
}

export const US_SHOP = { version: 1, country: "US", units: "us", sheets: [] };

const LOG_HEADINGS = ["Date", "Serial", "Start psi", "End psi", "Mix", "Analysed O2", "Method", "Filled by"];
const REGISTER_HEADINGS = ["Serial", "Size", "Hydro", "Visual", "Oxygen rating"];

/** Four fills and three cylinders: one fill past hydro, one past visual, the rest in order. */
export function smallLog(): Sheet[] {
  return [
    sheet("October", [
      LOG_HEADINGS,
      ["2026-10-02", "GP1001", 500, 3000, "EAN32", 31.9, "premix", "R."],
      ["2026-10-05", "GP1002", 500, 3000, "air", 20.9, "air", "T."],
      ["2026-10-06", "GP1003", 500, 3000, "air", 20.9, "air", "T."],
      [null],
      ["2026-10-09", "GP1001", 800, 3000, "EAN32", 32.1, "premix", "R."],
    ]),
    sheet("Cylinders", [
      REGISTER_HEADINGS,
      ["GP1001", "AL80", "2024-03-14", "2026-03-20", "O2 clean"],
      ["GP1002", "AL80", "2019-06-15", "2026-03-20", "O2 clean"],
      ["GP1003", "AL80", "2023-02-15", "2024-05-16", "O2 clean"],
    ]),
    sheet("Prices", [["Air", 8]]),
  ];
}
