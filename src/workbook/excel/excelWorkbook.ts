import type { SheetDraft } from "../../sheet/draft/draft";
import type { Area, CellAddress, CellValue, CellWrite, Sheet, SheetRow } from "../../sheet/sheet";
import { cellName } from "../../sheet/sheet";
import type {
  Capabilities,
  CellInHand,
  CellMarks,
  FormulaHost,
  SelectedRows,
  SheetInfo,
  Workbook,
  WorkbookChange,
} from "../workbook";
import { WorkbookProblem } from "../workbook";
import { addSheets } from "./addSheets";
import { appendRow } from "./appendRow";
import { watchWorkbook } from "./changes";
import { readArea, readCellInHand } from "./cellInHand";
import { calculateAgain, dateSystemByFunction, dateSystemOf } from "./dateSystem";
import { listen } from "./events";
import { clearMarks, markCells } from "./marks";
import { readMerges } from "./merges";
import { PaneInSight } from "./paneInSight";
import { findSheet, listTabs, readOutline, sheetNamed } from "./outline";
import { readSelection } from "./readSelection";
import { findBroken, repairFormulas, type BrokenFormula, type Repair } from "./repair";
import { cellValue, readRows, readSpan } from "./rows";
import type { OfficeGlobals } from "./session";
import { Session } from "./session";
import { SettingsStore } from "./settingsStore";

/** The workbook that is open in Excel. Make one after `Office.onReady`; it keeps nothing of what it reads. */
export class ExcelWorkbook implements Workbook, FormulaHost {
  readonly capabilities: Capabilities = { select: true, settings: true, charts: true };
  /** Whether the user sees the pane: what is only for the eye waits until then. */
  readonly inSight: PaneInSight;
  private readonly session: Session;
  private readonly settings: SettingsStore;

  constructor(private readonly globals: OfficeGlobals = { Excel, Office }) {
    this.inSight = new PaneInSight(globals);
    this.session = new Session(globals);
    this.settings = new SettingsStore(this.session);
  }

  async listSheets(): Promise<readonly SheetInfo[]> {
    const tabs = await listTabs(this.session);
    return tabs.map(({ name, visibility }) => ({ name, hidden: visibility !== "Visible" }));
  }

  readSheet(name: string, progress?: (share: number) => void, signal?: AbortSignal): Promise<Sheet> {
    return untilAborted(signal, () => this.readWholeSheet(name, progress ?? (() => undefined), signal));
  }

  private async readWholeSheet(
    name: string,
    progress: (share: number) => void,
    signal: AbortSignal | undefined,
  ): Promise<Sheet> {
    const outline = await readOutline(this.session, name);
    signal?.throwIfAborted();
    const rows = await readRows(this.session, outline, progress, signal);
    const merges = await readMerges(this.session, outline);
    signal?.throwIfAborted();
    const dateSystem = await dateSystemOf(this.session, outline.name, rows);
    signal?.throwIfAborted();
    progress(1);
    return { name: outline.name, hidden: outline.hidden, dateSystem, rows, merges };
  }

  async readRows(name: string, firstRow: number, lastRow: number): Promise<readonly SheetRow[]> {
    return readSpan(this.session, await readOutline(this.session, name), { firstRow, lastRow });
  }

  readCell(address: CellAddress): Promise<CellValue | undefined> {
    return this.session.read(sheetNamed(address.sheet), async (context) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject(address.sheet);
      await context.sync();
      if (sheet.isNullObject) return undefined;
      const cell = sheet.getRangeByIndexes(address.row, address.column, 1, 1);
      cell.load("values,valueTypes");
      await context.sync();
      return cellValue(cell.values[0]![0], cell.valueTypes[0]![0]);
    });
  }

  readSelection(): Promise<SelectedRows> {
    return readSelection(this.session);
  }

  selectCell(address: CellAddress): Promise<void> {
    return this.session.act(sheetNamed(address.sheet), async (context) => {
      const sheet = await findSheet(context, address.sheet);
      if (sheet.visibility !== "Visible") {
        throw new WorkbookProblem(
          `The sheet "${address.sheet}" is hidden. Unhide it in Excel to see cell ${cellName(address)}.`,
        );
      }
      sheet.activate();
      sheet.getRangeByIndexes(address.row, address.column, 1, 1).select();
      await context.sync();
    });
  }

  async addSheets(
    drafts: readonly SheetDraft[],
    progress: (share: number) => void = () => undefined,
    signal?: AbortSignal,
  ): Promise<readonly string[]> {
    const dateSystem = (await dateSystemByFunction(this.session)) ?? 1900;
    return addSheets(this.session, drafts, dateSystem, progress, signal);
  }

  async appendRow(
    sheet: string,
    cells: readonly CellWrite[],
    isTotals?: (row: SheetRow) => boolean,
  ): Promise<CellAddress> {
    const dateSystem = (await dateSystemByFunction(this.session)) ?? 1900;
    return appendRow(this.session, sheet, cells, dateSystem, isTotals);
  }

  readonly marks: CellMarks = {
    mark: (cells) => markCells(this.session, cells),
    clear: () => clearMarks(this.session),
  };

  /** What the workbook counts its dates from; undefined where Excel does not say. */
  dateSystem(): Promise<1900 | 1904 | undefined> {
    return dateSystemByFunction(this.session);
  }

  /** Has every formula calculated again. */
  calculateAgain(): Promise<void> {
    return calculateAgain(this.session);
  }

  /** The formulas of ours that Excel did not know when it opened the workbook. */
  findBrokenFormulas(): Promise<readonly BrokenFormula[]> {
    return findBroken(this.session);
  }

  /** Writes them again as they should read. */
  repairFormulas(broken: readonly BrokenFormula[]): Promise<Repair> {
    return repairFormulas(this.session, broken);
  }

  readSetting(key: string): Promise<unknown> {
    return this.settings.read(key);
  }

  writeSetting(key: string, value: unknown): Promise<void> {
    return this.settings.write(key, value);
  }

  readCellInHand(): Promise<CellInHand> {
    return readCellInHand(this.session);
  }

  readArea(sheet: string, area: Area): Promise<CellValue[][]> {
    return readArea(this.session, sheet, area);
  }

  readonly watch = (onChange: (changes: readonly WorkbookChange[]) => void): (() => void) =>
    watchWorkbook(this.globals, this.session, this.inSight, onChange);

  /** Tells of every edit in the workbook, until the function it returns is called. */
  readonly watchChanges = (onChange: () => void): (() => void) => this.watch(() => onChange());

  /** Tells when the user goes to another cell or edits one, until the function it returns is called. */
  readonly watchCellInHand = (onLook: () => void): (() => void) => {
    const { stir, stop } = this.inSight.gather(onLook);
    const stops = [
      listen(this.globals, ({ workbook }) => workbook.worksheets.onSelectionChanged, stir),
      listen(this.globals, ({ workbook }) => workbook.worksheets.onChanged, stir),
      stop,
    ];
    return () => {
      for (const each of stops) each();
    };
  };
}

/** Gives up as soon as the signal says so, even while Excel keeps us waiting for a cell that is being edited. */
function untilAborted<T>(signal: AbortSignal | undefined, work: () => Promise<T>): Promise<T> {
  if (!signal) return work();
  return new Promise<T>((resolve, reject) => {
    const giveUp = () => reject(signal.reason as Error);
    if (signal.aborted) return giveUp();
    signal.addEventListener("abort", giveUp, { once: true });
    work()
      .then(resolve, reject)
      .finally(() => signal.removeEventListener("abort", giveUp));
  });
}
