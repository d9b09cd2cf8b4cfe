import type { CellAddress } from "../../sheet/sheet";
import { typedFormula } from "../file/xlsx/formulas";
import { listTabs, sheetNamed } from "./outline";
import { isProtected } from "./protection";
import type { Session } from "./session";

/** A cell with a formula of ours that Excel did not know when it opened the workbook. */
export interface BrokenFormula {
  readonly cell: CellAddress;
  /** As it should read, with its equals sign. */
  readonly formula: string;
}

export interface Repair {
  readonly repaired: number;
  /** Sheets that were left as they are, since they are protected. */
  readonly protectedSheets: readonly string[];
}

const CELLS_AT_ONCE = 500;

/**
 * The formulas of ours that show `#NAME?`: the workbook was opened before the functions were there, or on a Mac
 * they got the prefix under which files keep them. Calculating again does not help; writing them again does.
 */
export async function findBroken(session: Session): Promise<BrokenFormula[]> {
  const tabs = await listTabs(session);
  const broken: BrokenFormula[] = [];
  for (const { name } of tabs) broken.push(...(await brokenOn(session, name)));
  return broken;
}

/** Excel finds the formulas with errors itself; only those cells are read. */
function brokenOn(session: Session, name: string): Promise<BrokenFormula[]> {
  return session.read(sheetNamed(name), async (context) => {
    const used = context.workbook.worksheets.getItem(name).getUsedRangeOrNullObject(true);
    await context.sync();
    if (used.isNullObject) return [];
    const errors = used.getSpecialCellsOrNullObject("Formulas", "Errors");
    await context.sync();
    if (errors.isNullObject) return [];
    const { areas } = errors;
    areas.load("items/rowIndex,items/columnIndex,items/formulas,items/values");
    await context.sync();
    return areas.items.flatMap((area) =>
      area.formulas.flatMap((formulas: unknown[], down) =>
        formulas.flatMap((formula, across) => {
          const mended = mendedFormula(String(formula), String(area.values[down]![across]));
          const cell = { sheet: name, row: area.rowIndex + down, column: area.columnIndex + across };
          return mended === undefined ? [] : [{ cell, formula: mended }];
        }),
      ),
    );
  });
}

/** How a formula that shows an error should read, where the error is that Excel does not know a function of ours. */
export function mendedFormula(formula: string, shown: string): string | undefined {
  const typed = typedFormula(formula);
  if (!/\bBRIM\.[A-Z0-9]+\s*\(/i.test(typed)) return undefined;
  return typed !== formula || shown === "#NAME?" ? typed : undefined;
}

/** Writes the formulas again; those on protected sheets stay as they are. */
export async function repairFormulas(session: Session, broken: readonly BrokenFormula[]): Promise<Repair> {
  const protectedSheets: string[] = [];
  let repaired = 0;
  for (const name of new Set(broken.map(({ cell }) => cell.sheet))) {
    const ofSheet = broken.filter(({ cell }) => cell.sheet === name);
    for (let first = 0; first < ofSheet.length; first += CELLS_AT_ONCE) {
      const written = await writeOn(session, name, ofSheet.slice(first, first + CELLS_AT_ONCE));
      repaired += written;
      if (written > 0) continue;
      protectedSheets.push(name);
      break;
    }
  }
  return { repaired, protectedSheets };
}

function writeOn(session: Session, name: string, broken: readonly BrokenFormula[]): Promise<number> {
  return session.change(sheetNamed(name), async (context) => {
    const sheet = context.workbook.worksheets.getItem(name);
    if (await isProtected(context, sheet)) return 0;
    for (const { cell, formula } of broken) {
      sheet.getRangeByIndexes(cell.row, cell.column, 1, 1).formulas = [[formula]];
    }
    await context.sync();
    return broken.length;
  });
}
