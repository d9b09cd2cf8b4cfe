import type { SheetDraft } from "../sheet/draft/draft";
import type { Area, CellAddress, CellValue, CellWrite, Sheet, SheetRow } from "../sheet/sheet";

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

/** The rows of one sheet that the user has selected, whichever of their cells: what is out of sight is not meant. */
export interface SelectedRows {
  readonly sheet: string;
  /** From 0, each once, in the order of the sheet; none below the last row that holds anything. */
  readonly rows: readonly number[];
  /** How many rows of the selection are hidden or filtered away, and therefore not among `rows`. */
  readonly outOfSight: number;
}

/** A cell to be marked, with what it held when it was judged. */
export interface CellToMark {
  readonly cell: CellAddress;
  readonly held: CellValue;
}

/** Marks on cells: they can be taken away again, and change nothing else. */
export interface CellMarks {
  /**
   * Marks these cells instead of those marked before. Answers with the cells left out, as they hold something else by
   * now or their sheet is gone.
   */
  mark(cells: readonly CellToMark[]): Promise<readonly CellAddress[]>;
  /** Takes our marks away, however long ago they were made; answers how many marked groups of cells there were. */
  clear(): Promise<number>;
}

/** What changed in a workbook, as far as its host can tell. Rows count from 0, the last included. */
export type WorkbookChange =
  /** Cells of these rows may hold something else; nothing moved. */
  | {
      readonly kind: "rows";
      readonly sheet: string;
      readonly firstRow: number;
      readonly lastRow: number;
      /** The host knows that Brimbook itself wrote it. Without, it may be anybody's. */
      readonly own?: true;
    }
  /** Rows or columns were put in, taken out or sorted, or the name means another sheet now: read all of it again. */
  | { readonly kind: "sheet"; readonly sheet: string; readonly own?: true }
  /** Sheets came, went, moved, were renamed, hidden or shown: list them again. */
  | { readonly kind: "sheets" };

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
   * These rows of a sheet as `readSheet` gives them, blank ones included; counts from 0, the last included. Hosts that
   * can read a part of a sheet have it.
   */
  readRows?(name: string, firstRow: number, lastRow: number): Promise<readonly SheetRow[]>;
  /**
   * Tells of changes from now on, until the function it returns is called: a burst comes as one list, and nothing
   * comes while nobody sees the pane; what happened meanwhile comes when it is shown again. Hosts that cannot tell of
   * changes do without, and the log is read again on request.
   */
  watch?(onChange: (changes: readonly WorkbookChange[]) => void): () => void;
  /**
   * What one cell holds now, `undefined` where its sheet is gone. Hosts that can look at a cell without reading its
   * sheet have it: a jump to a finding then says when the cell has changed since it was judged.
   */
  readCell?(address: CellAddress): Promise<CellValue | undefined>;
  /**
   * The rows that the user has selected, in one area or several; of whole columns those that hold anything. Hosts
   * without a cursor do without.
   */
  readSelection?(): Promise<SelectedRows>;
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
  /**
   * Writes one row below the last row of a sheet that holds anything, and shows it. Where the sheet ends in totals, a
   * row is put in above them, and sums that ended there take it in; no other cell is touched. What is a total besides
   * such sums, `isTotals` says. Answers with its first cell. Hosts that cannot write into the person's own sheets do
   * without.
   */
  appendRow?(
    sheet: string,
    cells: readonly CellWrite[],
    isTotals?: (row: SheetRow) => boolean,
  ): Promise<CellAddress>;
  /** Where the host can mark cells without changing them. */
  readonly marks?: CellMarks;
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
