import type { SheetDraft } from "../../sheet/draft/draft";
import { cellName, type CellAddress, type CellValue, type Sheet } from "../../sheet/sheet";
import { WorkbookProblem, type Capabilities, type SheetInfo, type Workbook } from "../workbook";
import type { WorkbookContent } from "./content";
import { reportContent } from "./reportContent";

/** A workbook that was opened from a file. The file itself is never written: save a copy. */
export class FileWorkbook implements Workbook {
  readonly capabilities: Capabilities = { select: false, settings: true, charts: true };

  constructor(private held: WorkbookContent) {}

  /** All of it, the settings as they now are: what `writeXlsx` saves. */
  get content(): WorkbookContent {
    return this.held;
  }

  async listSheets(): Promise<readonly SheetInfo[]> {
    return this.held.sheets.map(({ name, hidden }) => ({ name, hidden }));
  }

  async readSheet(name: string, progress?: (share: number) => void, signal?: AbortSignal): Promise<Sheet> {
    signal?.throwIfAborted();
    const sheet = this.held.sheets.find((each) => each.name === name);
    if (!sheet) {
      throw new WorkbookProblem(`There is no sheet “${name}” in this file: choose one that is there.`);
    }
    progress?.(1);
    return sheet;
  }

  async readCell({ sheet, row, column }: CellAddress): Promise<CellValue | undefined> {
    const holder = this.held.sheets.find(({ name }) => name === sheet);
    return holder && (holder.rows[row]?.values[column] ?? null);
  }

  async selectCell(address: CellAddress): Promise<void> {
    throw new WorkbookProblem(
      `A file has no window to show a cell in: open it in a spreadsheet and go to ${cellName(address)} of “${address.sheet}”.`,
    );
  }

  async addSheets(
    drafts: readonly SheetDraft[],
    progress?: (share: number) => void,
    signal?: AbortSignal,
  ): Promise<readonly string[]> {
    signal?.throwIfAborted();
    const { sheets } = this.held;
    const added = reportContent(drafts, sheets);
    this.held = { ...this.held, sheets: [...sheets, ...added] };
    progress?.(1);
    return added.map(({ name }) => name);
  }

  async readSetting(key: string): Promise<unknown> {
    return this.held.settings.get(key) ?? null;
  }

  async writeSetting(key: string, value: unknown): Promise<void> {
    const settings = new Map(this.held.settings);
    if (value === null) settings.delete(key);
    else settings.set(key, value);
    this.held = { ...this.held, settings };
  }
}
