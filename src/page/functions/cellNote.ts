import { callInCell, callInWords } from "../../functions/hosts/callInCell";
import { isError, type Argument } from "../../typed/cells";
import type { PlainArgument } from "../../functions/hosts/plainCall";
import type { CellAddress, CellValue } from "../../sheet/sheet";
import type { GridWorkbook } from "../../workbook/grid/gridWorkbook";
import { WorkbookProblem } from "../../workbook/workbook";
import type { Sentences } from "./sentences";

/** What the page says of a cell beside what the cell shows. */
export interface CellNote {
  readonly value: CellValue;
  /** Without the equals sign; of the cell itself or the one that spills into it. */
  readonly formula?: string;
  /** The sentence behind an error, or how the answer came about. */
  readonly sentence?: string;
}

/** What there is to say of a cell: its formula, and the sentence behind an answer or error of ours. */
export function cellNote(workbook: GridWorkbook, address: CellAddress, sentences: Sentences): CellNote {
  const reader = workbook.reader(address.sheet);
  const { row, column } = address;
  const value = reader.value(row, column);
  const owner = reader.spillOwner(row, column) ?? { row, column };
  const formula = reader.formula(owner.row, owner.column);
  if (formula === undefined) return { value };
  if (!/BRIM\./i.test(formula)) return { value, formula };
  const sentence = isError(value)
    ? (GRID_ERRORS[value.error] ??
      sentences.behind(
        value.error,
        { ...owner, workbook: workbook.id, sheet: reader.sheetId, formula },
        address,
      ))
    : undefined;
  const words = sentence ?? explanation(workbook, address.sheet, formula, row - owner.row);
  return { value, formula, ...(words !== undefined && { sentence: words }) };
}

/** Errors that come from the grid and not from the function in it. */
const GRID_ERRORS: Readonly<Record<string, string>> = {
  "#SPILL!":
    "The answer fills more than one cell, and something stands in its way: clear the cells below and to the right.",
  "#NAME?":
    "The formula names a function that is not there: after typing =BRIM. the formula helper lists ours.",
  "#REF!": "The formula refers to cells that are gone: write it again with the cells it is about.",
};

/** How the answer of a plain call came about; formulas that are more than one call keep it to themselves. */
function explanation(
  workbook: GridWorkbook,
  sheet: string,
  formula: string,
  down: number,
): string | undefined {
  const call = callInCell(formula, down);
  if (!call) return undefined;
  try {
    return callInWords(
      call,
      call.given.map((argument) => argumentIn(workbook, sheet, argument)),
    );
  } catch (problem) {
    /* A sheet that the formula names is gone: the cell shows an error of its own. */
    if (problem instanceof WorkbookProblem) return undefined;
    throw problem;
  }
}

function argumentIn(workbook: GridWorkbook, ownSheet: string, argument: PlainArgument): Argument {
  if (typeof argument !== "object" || argument === null) return argument;
  const reader = workbook.reader(argument.sheet ?? ownSheet);
  const rows: CellValue[][] = [];
  const lastRow = Math.min(argument.lastRow, reader.lastRow());
  for (let row = argument.firstRow; row <= Math.max(lastRow, argument.firstRow); row++) {
    const cells: CellValue[] = [];
    for (let column = argument.firstColumn; column <= argument.lastColumn; column++) {
      cells.push(reader.value(row, column));
    }
    rows.push(cells);
  }
  return rows;
}
