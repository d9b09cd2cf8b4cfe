import {
  BooleanNumber,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook as EngineWorkbook,
} from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/preset-sheets-core";
import type { SheetDraft } from "../../sheet/draft/draft";
import type { CellAddress, CellValue, CellWrite, Sheet, SheetRow } from "../../sheet/sheet";
import type { ReportContent, SheetContent, WorkbookContent } from "../file/content";
import { Pace } from "../file/pace";
import { reportContent } from "../file/reportContent";
import { rowsOf } from "../selectedRows";
import {
  WorkbookProblem,
  type Capabilities,
  type CellMarks,
  type SelectedRows,
  type SheetInfo,
  type Workbook,
  type WorkbookChange,
} from "../workbook";
import type { Engine } from "./engine";
import { makeRoom, written } from "./appendRow";
import { watchCells } from "./changes";
import { SheetReader } from "./fromGrid";
import { targetOf } from "./links";
import { clearMarks, markCells } from "./marks";
import { ownDataOf } from "./ownCellData";
import { showCell } from "./showCell";
import { gridData, gridSheet } from "./toGrid";

const GONE = "This workbook is no longer open here: another one was opened in its place.";

export interface GridWorkbookListener {
  /** It is about to be shown in place of another. */
  readonly onOpen?: () => void;
  /** A cell was asked to be shown. */
  readonly onShow?: () => void;
  /** A setting or a mark of ours was changed: a saved file would keep it. */
  readonly onOwnChange?: () => void;
}

/** A workbook shown in the grid of the local page. */
export class GridWorkbook implements Workbook {
  readonly capabilities: Capabilities = { select: true, settings: true, charts: false };
  private readonly settings: Map<string, unknown>;
  /** Of sheets that were added here, by the engine's id: what it cannot show, for the saved copy. */
  private readonly reports = new Map<string, ReportContent>();

  private constructor(
    private readonly engine: Engine,
    readonly id: string,
    private readonly opened: WorkbookContent,
    private readonly listener: GridWorkbookListener,
  ) {
    this.settings = new Map(opened.settings);
  }

  /** Shows a workbook in the grid, in place of the present one. */
  static async open(
    engine: Engine,
    content: WorkbookContent,
    listener: GridWorkbookListener = {},
    signal?: AbortSignal,
  ): Promise<GridWorkbook> {
    const { api } = engine;
    const id = `workbook-${crypto.randomUUID()}`;
    const pace = new Pace({ ...(signal && { signal }) });
    const data = await pace.through(gridData(content, id));
    await pace.pause();
    const before = api.getActiveWorkbook();
    listener.onOpen?.();
    api.createWorkbook(data);
    if (before) {
      api.disposeUnit(before.getId());
      api.getFormula().executeCalculation();
    }
    return new GridWorkbook(engine, id, content, listener);
  }

  /** All of it, as a saved file keeps it. `progress` hears shares from 0 to 1. */
  async content(progress?: (share: number) => void, signal?: AbortSignal): Promise<WorkbookContent> {
    const infos = await this.listSheets();
    const sheets: SheetContent[] = [];
    for (const { name } of infos) {
      const done = sheets.length;
      const ofAll = (share: number) => progress?.((done + share) / infos.length);
      const reader = this.reader(name);
      const report = this.reports.get(reader.sheetId);
      const content = await reader.content({ progress: ofAll, ...(signal && { signal }) });
      sheets.push(report ? { ...content, report } : content);
    }
    return { sheets, settings: new Map(this.settings), leftOut: this.opened.leftOut };
  }

  async listSheets(): Promise<readonly SheetInfo[]> {
    return this.engineWorkbook()
      .getSheets()
      .map((sheet) => ({ name: sheet.getName(), hidden: sheet.isSheetHidden() === BooleanNumber.TRUE }));
  }

  async readSheet(name: string, progress?: (share: number) => void, signal?: AbortSignal): Promise<Sheet> {
    return this.reader(name).read({ ...(progress && { progress }), ...(signal && { signal }) });
  }

  async readRows(name: string, firstRow: number, lastRow: number): Promise<readonly SheetRow[]> {
    return this.reader(name).span(firstRow, lastRow);
  }

  /** Tells of every change at once, before anything else can be asked of the grid. */
  watch(onChange: (changes: readonly WorkbookChange[]) => void): () => void {
    // The engine still tells of a workbook that it has just let go.
    const nameOf = (id: string) => this.inEngine()?.getSheetBySheetId(id)?.getName();
    return watchCells(this.engine, this.id, nameOf, onChange);
  }

  async readCell({ sheet, row, column }: CellAddress): Promise<CellValue | undefined> {
    return this.engineWorkbook().getSheetBySheetName(sheet)
      ? this.reader(sheet).value(row, column)
      : undefined;
  }

  async readSelection(): Promise<SelectedRows> {
    const shown = this.engine.api.getUniverSheet(this.id)?.getActiveSheet();
    if (!shown) throw new WorkbookProblem(GONE);
    const sheet = shown.getSheetName();
    const areas = (shown.getSelection()?.getActiveRangeList() ?? []).map((range) => ({
      firstRow: range.getRow(),
      lastRow: range.getLastRow(),
    }));
    const { rows: held } = await this.readSheet(sheet);
    const rows = rowsOf(areas, held.length - 1);
    const inSight = rows.filter((row) => this.engineSheet(sheet).getRowVisible(row));
    return { sheet, rows: inSight, outOfSight: rows.length - inSight.length };
  }

  /** The cell that a cell leads to, where it is a link within this workbook. */
  leadsTo({ sheet, row, column }: CellAddress): CellAddress | undefined {
    return targetOf(ownDataOf(this.engineSheet(sheet).getCellRaw(row, column)).link);
  }

  async selectCell({ sheet: name, row, column }: CellAddress): Promise<void> {
    const sheet = this.engineSheet(name);
    if (sheet.isSheetHidden() === BooleanNumber.TRUE) {
      throw new WorkbookProblem(`The sheet "${name}" is hidden: show it first, then try again.`);
    }
    this.listener.onShow?.();
    const shown = this.engine.api.getUniverSheet(this.id)!;
    await showCell(this.engine, shown, sheet.getSheetId(), row, column);
  }

  async addSheets(
    drafts: readonly SheetDraft[],
    progress?: (share: number) => void,
    signal?: AbortSignal,
  ): Promise<readonly string[]> {
    signal?.throwIfAborted();
    const shown = this.engine.api.getUniverSheet(this.id);
    if (!shown) throw new WorkbookProblem(GONE);
    const pace = new Pace({ ...(progress && { progress }), ...(signal && { signal }) });
    pace.total = drafts.reduce((sum, { rows }) => sum + rows.length, 1);
    const beside = (await this.listSheets()).map(({ name }) => ({ name, dateSystem: 1900 as const }));
    const sheets = reportContent(drafts, beside);
    const added: string[] = [];
    try {
      for (const sheet of sheets) {
        const data = await pace.through(gridSheet(sheet));
        await pace.pause();
        const id = shown.insertSheet(sheet.name, { sheet: data }).getSheetId();
        added.push(id);
        if (sheet.report) this.reports.set(id, sheet.report);
      }
      pace.finish();
    } catch (error) {
      for (const id of added) shown.deleteSheet(id);
      throw error;
    }
    if (added[0] !== undefined) shown.setActiveSheet(added[0]);
    this.listener.onShow?.();
    return sheets.map(({ name }) => name);
  }

  async appendRow(
    name: string,
    cells: readonly CellWrite[],
    isTotals: (row: SheetRow) => boolean = () => false,
  ): Promise<CellAddress> {
    const shown = this.engine.api.getUniverSheet(this.id)?.getSheetByName(name);
    if (!shown) throw new WorkbookProblem(GONE);
    const row = makeRoom(shown, this.reader(name), isTotals);
    for (const { column, value, format } of cells) {
      const cell = shown.getRange(row, column);
      cell.setValue(written(value));
      if (format !== undefined) cell.setNumberFormat(format);
    }
    const first = { sheet: name, row, column: Math.min(...cells.map(({ column }) => column)) };
    await this.selectCell(first);
    return first;
  }

  readonly marks: CellMarks = {
    mark: async (cells) => {
      await clearMarks(this.engineWorkbook());
      const holds = ({ sheet, row, column }: CellAddress) => this.reader(sheet).value(row, column);
      const leftOut = markCells(this.engineWorkbook(), cells, holds);
      this.marksChanged();
      return leftOut;
    },
    clear: async () => {
      const cleared = await clearMarks(this.engineWorkbook());
      if (cleared > 0) this.marksChanged();
      return cleared;
    },
  };

  private marksChanged(): void {
    this.engine.api.getUniverSheet(this.id)?.getActiveSheet().refreshCanvas();
    this.listener.onOwnChange?.();
  }

  async readSetting(key: string): Promise<unknown> {
    return this.settings.get(key) ?? null;
  }

  async writeSetting(key: string, value: unknown): Promise<void> {
    if (value === null) this.settings.delete(key);
    else this.settings.set(key, structuredClone(value));
    this.listener.onOwnChange?.();
  }

  /** Looks closer at one sheet than the port does: formulas and what they spill. */
  reader(name: string): SheetReader {
    return new SheetReader(
      this.engineWorkbook(),
      this.engineSheet(name),
      this.engine.univer.__getInjector().get(FormulaDataModel),
    );
  }

  private engineSheet(name: string) {
    const sheet = this.engineWorkbook().getSheetBySheetName(name);
    if (!sheet) {
      throw new WorkbookProblem(
        `There is no sheet named "${name}" in this workbook: choose one that is there.`,
      );
    }
    return sheet;
  }

  private engineWorkbook(): EngineWorkbook {
    const workbook = this.inEngine();
    if (!workbook) {
      throw new WorkbookProblem(GONE);
    }
    return workbook;
  }

  private inEngine(): EngineWorkbook | undefined {
    const units = this.engine.univer.__getInjector().get(IUniverInstanceService);
    return units.getUnit<EngineWorkbook>(this.id, UniverInstanceType.UNIVER_SHEET) || undefined;
  }
}
