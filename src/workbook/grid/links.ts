import type { CellLink } from "../../sheet/draft/draft";
import type { CellAddress } from "../../sheet/sheet";
import type { Engine } from "./engine";
import { ownDataOf } from "./ownCellData";

/** Where a link of this workbook leads; undefined where it leads to another file. */
export function targetOf(link: CellLink | undefined): CellAddress | undefined {
  return link?.file === undefined ? link?.cell : undefined;
}

/** Tells from now on of every click on a cell that leads to another one. Call it once there is a workbook in the grid. */
export function followLinks({ api }: Engine, onFollow: (target: CellAddress) => void): void {
  api.addEvent(api.Event.CellClicked, ({ worksheet, row, column }) => {
    const target = targetOf(ownDataOf(worksheet.getSheet().getCellRaw(row, column)).link);
    if (target) onFollow(target);
  });
}
