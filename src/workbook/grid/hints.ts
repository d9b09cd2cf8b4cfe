import { CellAlertManagerService } from "@univerjs/preset-sheets-core";
import type { CellAddress } from "../../sheet/sheet";
import type { Engine } from "./engine";

/** What the hint on a cell says in place of the engine's own words. */
export interface Hint {
  readonly title: string;
  readonly sentence: string;
}

/**
 * Gives the hint that the engine shows on an error cell our sentence, where we have one. Call it once there is a
 * workbook in the grid.
 */
export function explainErrors(
  { univer, api }: Engine,
  hintOn: (address: CellAddress) => Hint | undefined,
): void {
  const alerts = univer.__getInjector().get(CellAlertManagerService);
  const show = alerts.showAlert.bind(alerts);
  alerts.showAlert = (alert) => {
    const { unitId, subUnitId, row, col: column } = alert.location;
    const sheet = api.getUniverSheet(unitId)?.getSheetBySheetId(subUnitId)?.getSheetName();
    const hint = sheet === undefined ? undefined : hintOn({ sheet, row, column });
    show(hint ? { ...alert, title: hint.title, message: hint.sentence } : alert);
  };
}
