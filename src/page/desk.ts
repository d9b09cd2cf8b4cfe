import { isError } from "../typed/cells";
import type { CellAddress } from "../sheet/sheet";
import type { WorkbookContent } from "../workbook/file/content";
import { startEngine, type Engine } from "../workbook/grid/engine";
import { GridWorkbook, type GridWorkbookListener } from "../workbook/grid/gridWorkbook";
import { fitNumbers } from "../workbook/grid/fitNumbers";
import { growWithFormulas } from "../workbook/grid/growth";
import { explainErrors, type Hint } from "../workbook/grid/hints";
import { followLinks } from "../workbook/grid/links";
import { drawMarks } from "../workbook/grid/marks";
import { loadTypefaces } from "../workbook/grid/typeface";
import { selectedCell, watchGrid, type GridListener } from "../workbook/grid/watch";
import { cellNote, type CellNote } from "./functions/cellNote";
import { gridFunctions } from "./functions/gridFunctions";
import { Sentences } from "./functions/sentences";

/** What the selected cell is, and what there is to say of it. */
export interface SelectedCell extends CellNote {
  readonly address: CellAddress;
  /** Where it leads to, of a link. */
  readonly leadsTo?: CellAddress | undefined;
}

export interface DeskListener extends GridListener {
  /** A link could not be followed. */
  readonly onProblem: (thrown: unknown) => void;
}

/** The grid, with the worksheet functions, and the workbook that lies in it. The heavy part: it is loaded on its own. */
export class Desk {
  private readonly sentences = new Sentences();
  private readonly engine: Engine;
  private workbook: GridWorkbook | undefined;

  /** Once the typefaces are here. */
  static async start(container: HTMLElement, listener: DeskListener): Promise<Desk> {
    await loadTypefaces();
    return new Desk(container, listener);
  }

  private constructor(
    container: HTMLElement,
    private readonly listener: DeskListener,
  ) {
    this.engine = startEngine(container, gridFunctions(this.sentences));
  }

  /** Shows a workbook in place of the present one. */
  async open(
    content: WorkbookContent,
    listener: GridWorkbookListener,
    signal: AbortSignal,
  ): Promise<GridWorkbook> {
    const onOpen = () => this.sentences.clear();
    const opened = await GridWorkbook.open(this.engine, content, { ...listener, onOpen }, signal);
    const first = this.workbook === undefined;
    this.workbook = opened;
    if (first) {
      watchGrid(this.engine, this.listener);
      growWithFormulas(this.engine);
      fitNumbers(this.engine);
      drawMarks(this.engine);
      followLinks(this.engine, (target) => {
        this.workbook?.selectCell(target).catch(this.listener.onProblem);
      });
      explainErrors(this.engine, (address) => this.hintOn(address));
    }
    return opened;
  }

  /** Takes over what is still being typed into a cell. */
  async finishTyping(): Promise<void> {
    await this.engine.api.getActiveWorkbook()?.endEditingAsync(true);
  }

  selected(): SelectedCell | undefined {
    const cell = selectedCell(this.engine);
    /* While one workbook gives way to another, the engine is ahead. */
    if (!cell || cell.workbook !== this.workbook?.id) return undefined;
    const { address } = cell;
    return {
      address,
      leadsTo: this.workbook.leadsTo(address),
      ...cellNote(this.workbook, address, this.sentences),
    };
  }

  setDark(dark: boolean): void {
    this.engine.api.toggleDarkMode(dark);
  }

  private hintOn(address: CellAddress): Hint | undefined {
    if (!this.workbook) return undefined;
    const { value, sentence } = cellNote(this.workbook, address, this.sentences);
    return isError(value) && sentence !== undefined ? { title: value.error, sentence } : undefined;
  }
}
