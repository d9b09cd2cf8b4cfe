import type { SheetDraft } from "../sheet/draft/draft";
import type { Area, CellAddress, CellValue, Sheet } from "../sheet/sheet";

/** A sheet's name and whether it is hidden. */
export interface SheetInfo {
  readonly name: string;
  readonly hidden: boolean;
}

/** The cell the user is on. */
export interface CellInHand {
  readonly address: CellAddress;
  readonly value: CellValue;
  /** Without the equals sign; of the cell itself or of the one that spills into it. */
  readonly formula?: string;
  /** How many rows it lies below the cell with the formula. */
  readonly down: number;
}

/** A host whose own screen has no place for what our formulas have to say: the pane shows it in its stead. */
export interface FormulaHost {
  /** Calls `onLook` when the user goes to another cell or edits one. Returns the way to stop listening. */
  readonly watchCellInHand: (onLook: () => void) => () => void;
  readCellInHand(): Promise<CellInHand>;
  /** The values of an area, row by row. */
  readArea(sheet: string, area: Area): Promise<CellValue[][]>;
}

/** What this host cannot do is said, not tried. */
export interface Capabilities {
  readonly select: boolean;
  readonly settings: boolean;
  /** Whether charts and tables are shown here; without, they are kept for the saved copy. */
  readonly charts: boolean;
}

/**
 * The one narrow interface to a workbook. Hosts: Excel, the grid in the browser, a file.
 * Every method may reject with a `WorkbookProblem`, whose message is a sentence for the user.
 */
export interface Workbook {
  readonly capabilities: Capabilities;
  /** The sheets in the order of their tabs. */
  listSheets(): Promise<readonly SheetInfo[]>;
  /**
   * All of a sheet up to its last row that holds anything; hidden rows too. `progress` hears shares from 0 to 1
   * and ends at 1; an aborted `signal` rejects with its reason and leaves nothing half read.
   */
  readSheet(name: string, progress?: (share: number) => void, signal?: AbortSignal): Promise<Sheet>;
  /**
   * What one cell holds now, `undefined` where its sheet is gone. Hosts that can look at a cell without reading its
   * sheet have it: a jump to a finding then says when the cell has changed since it was judged.
   */
  readCell?(address: CellAddress): Promise<CellValue | undefined>;
  /** Shows a cell to the user and puts the cursor on it. A hidden sheet stays hidden: that is a problem. */
  selectCell(address: CellAddress): Promise<void>;
  /**
   * Writes new sheets behind those that are there, and shows the first; nothing else is touched. A name in use gets a
   * number. Answers with the names that they were given. Where it fails or is aborted, no new sheet stays behind.
   */
  addSheets(
    drafts: readonly SheetDraft[],
    progress?: (share: number) => void,
    signal?: AbortSignal,
  ): Promise<readonly string[]>;
  /** A setting of ours kept in the workbook, as it was stored, or null: parse it before trusting it. */
  readSetting(key: string): Promise<unknown>;
  /** Keeps a setting in the workbook; `null` takes it out. */
  writeSetting(key: string, value: unknown): Promise<void>;
}

/** Something went wrong with the workbook: what, where and what to do, in one sentence. */
export class WorkbookProblem extends Error {
  constructor(
    sentence: string,
    /** For "copy details"; never shown by itself. */
    readonly details = "",
  ) {
    super(sentence);
    this.name = "WorkbookProblem";
  }
}
