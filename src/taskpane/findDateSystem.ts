import { setDateSystem } from "../typed/dateSystem";
import { tellDateSystem } from "../functions/hosts/registered";
import type { ExcelWorkbook } from "../workbook/excel/excelWorkbook";

/** Where Excel does not answer, as it is busy or a cell is being edited, it is asked again after so long. */
const AGAIN_MS = 3000;

/**
 * Finds once what the workbook counts its dates from, and tells the worksheet functions. Cells that could not wait
 * for it are calculated again.
 */
export async function findDateSystem(workbook: ExcelWorkbook): Promise<void> {
  const system = await workbook.dateSystem();
  if (system === undefined) {
    setTimeout(() => void findDateSystem(workbook), AGAIN_MS);
    return;
  }
  setDateSystem(system);
  if (tellDateSystem(system)) await workbook.calculateAgain().catch(() => undefined);
}
