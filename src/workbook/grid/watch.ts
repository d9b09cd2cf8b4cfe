import { CommandType, ICommandService } from "@univerjs/core";
import { SheetsSelectionsService } from "@univerjs/preset-sheets-core";
import type { CellAddress } from "../../sheet/sheet";
import type { Engine } from "./engine";

/** Changes that the grid makes on its own account, to draw or to have room. */
const OWN_ACCOUNT = /auto-height|row-count|column-count|mark-dirty|permission|mutation\.empty/;

export interface GridListener {
  /** Another cell was selected, or another sheet shown. */
  readonly onSelect: () => void;
  /** The user changed something that a saved file would keep. */
  readonly onEdit: () => void;
  /** Formulas have new answers. */
  readonly onCalculate: () => void;
}

/** Tells from now on what happens in the grid. Call it once there is a workbook in it. */
export function watchGrid({ univer, api }: Engine, { onSelect, onEdit, onCalculate }: GridListener): void {
  const injector = univer.__getInjector();
  injector.get(SheetsSelectionsService).selectionChanged$.subscribe(onSelect);
  api.addEvent(api.Event.ActiveSheetChanged, onSelect);
  api.getFormula().calculationResultApplied(onCalculate);
  injector.get(ICommandService).onCommandExecuted(({ id, type }, options) => {
    const kept = type === CommandType.MUTATION && id.startsWith("sheet.mutation.");
    if (kept && !options?.fromFormula && !OWN_ACCOUNT.test(id)) onEdit();
  });
}

/** The cell the cursor stands on, and the workbook's id in the engine; `undefined` while none is shown. */
export function selectedCell({ api }: Engine): { workbook: string; address: CellAddress } | undefined {
  const workbook = api.getActiveWorkbook();
  if (!workbook) return undefined;
  const sheet = workbook.getActiveSheet();
  const range = sheet.getActiveCell();
  return {
    workbook: workbook.getId(),
    address: { sheet: sheet.getSheetName(), row: range?.getRow() ?? 0, column: range?.getColumn() ?? 0 },
  };
}
