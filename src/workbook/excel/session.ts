import { problemOf } from "./problems";

/** What we take from office.js's globals. They exist once `Office.onReady` has resolved, not before. */
export interface OfficeGlobals {
  readonly Excel: Pick<typeof Excel, "run">;
  readonly Office: {
    /** Tells of the pane being closed and opened again, where functions and pane share a runtime. */
    readonly addin?: Pick<typeof Office.addin, "onVisibilityModeChanged">;
    readonly context: {
      readonly requirements: { isSetSupported(name: string, version: string): boolean };
    };
  };
}

type Batch<T> = (context: Excel.RequestContext) => Promise<T>;

/** Talks to Excel; what goes wrong comes out as a sentence about `about`. */
export class Session {
  constructor(private readonly globals: OfficeGlobals) {}

  /** Reads; where Excel can, it waits until the cell being edited is done. */
  read<T>(about: string, batch: Batch<T>): Promise<T> {
    return this.run({ delayForCellEdit: true }, about, batch);
  }

  /** Changes what the user sees or keeps; refused at once while a cell is being edited. */
  act<T>(about: string, batch: Batch<T>): Promise<T> {
    return this.run({ delayForCellEdit: false }, about, batch);
  }

  /** Changes cells on the user's request; one undo takes all of it back where this Excel can. */
  change<T>(about: string, batch: Batch<T>): Promise<T> {
    const options = { delayForCellEdit: false, ...(this.supports("1.20") && { mergeUndoGroup: true }) };
    return this.run(options, about, batch);
  }

  /** Whether this Excel has a requirement set beyond those the manifest asks for. */
  supports(excelApi: string): boolean {
    return this.globals.Office.context.requirements.isSetSupported("ExcelApi", excelApi);
  }

  private async run<T>(options: Excel.RunOptions, about: string, batch: Batch<T>): Promise<T> {
    try {
      return await this.globals.Excel.run(options, batch);
    } catch (error) {
      throw problemOf(error, about);
    }
  }
}
