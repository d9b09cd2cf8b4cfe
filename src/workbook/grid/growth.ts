import { ICommandService, type ICellData, type Nullable } from "@univerjs/core";
import { SetRangeValuesMutation, type ISetRangeValuesMutationParams } from "@univerjs/preset-sheets-core";
import type { Engine } from "./engine";
import { COLUMNS, reachOf, ROWS } from "./reach";

/** Lets the sheets grow when a formula is typed that looks beyond them; the engine would call it an error. */
export function growWithFormulas({ univer, api }: Engine): void {
  univer
    .__getInjector()
    .get(ICommandService)
    .onCommandExecuted(({ id, params }, options) => {
      if (id !== SetRangeValuesMutation.id || options?.fromFormula) return;
      const { unitId, cellValue } = params as ISetRangeValuesMutationParams;
      const formulas = Object.values(cellValue ?? {}).flatMap((row) =>
        (Object.values(row) as Nullable<ICellData>[]).flatMap((cell) => cell?.f ?? []),
      );
      const { rows, columns } = reachOf(formulas);
      let grown = false;
      for (const sheet of api.getUniverSheet(unitId)?.getSheets() ?? []) {
        const wantedRows = Math.min(rows, ROWS.most);
        const wantedColumns = Math.min(columns, COLUMNS.referencedAtMost);
        if (wantedRows > sheet.getMaxRows()) sheet.setRowCount(wantedRows);
        else if (wantedColumns <= sheet.getMaxColumns()) continue;
        if (wantedColumns > sheet.getMaxColumns()) sheet.setColumnCount(wantedColumns);
        grown = true;
      }
      if (grown) api.getFormula().executeCalculation();
    });
}
