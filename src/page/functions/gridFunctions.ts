import { BooleanNumber } from "@univerjs/core";
import {
  ArrayValueObject,
  BaseFunction,
  type BaseValueObject,
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  FunctionType,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/preset-sheets-core";
import { isProblem, type Answer, type AnswerCell, type ErrorName } from "../../functions/answer";
import { NAMESPACE, WORKSHEET_FUNCTIONS, type CatalogueEntry } from "../../functions/catalogue";
import type { Argument } from "../../typed/cells";
import { evaluate } from "../../functions/evaluate";
import type { CellValue } from "../../sheet/sheet";
import type { EngineFunction } from "../../workbook/grid/engine";
import type { FormulaCell, Sentences } from "./sentences";

/** The worksheet functions as the grid calls them; the sentences behind their errors go to `sentences`. */
export function gridFunctions(sentences: Sentences): readonly EngineFunction[] {
  return WORKSHEET_FUNCTIONS.map((entry) => gridFunction(entry, sentences));
}

function gridFunction(entry: CatalogueEntry, sentences: Sentences): EngineFunction {
  const { id, says, description, parameters } = entry;
  return {
    calculate: class extends BaseFunction {
      override needsFormulaDataModel = true;

      override calculate(...given: BaseValueObject[]): BaseValueObject {
        const answer = evaluate(id, given.map(argumentFrom));
        if (answer.some((row) => row.some(isProblem))) sentences.keep(this.cell(), answer);
        return valueOf(answer);
      }

      private cell(): FormulaCell {
        const { row, column } = this;
        const workbook = this.unitId ?? "";
        const sheet = this.subUnitId ?? "";
        const formula = this._formulaDataModel?.getFormulaStringByCell(row, column, sheet, workbook);
        return { workbook, sheet, row, column, formula: (formula ?? "").replace(/^=/, "") };
      }
    },
    help: {
      functionName: `${NAMESPACE}.${id}`,
      functionType: FunctionType.User,
      abstract: says,
      description,
      functionParameter: parameters.map(({ name, help, optional }) => ({
        name,
        detail: help,
        example: "",
        require: optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
        repeat: BooleanNumber.FALSE,
      })),
    },
  };
}

function argumentFrom(value: BaseValueObject): Argument {
  if (!value.isArray()) return cellFrom(value);
  return value.getArrayValue().map((row) => row.map((cell) => (cell ? cellFrom(cell) : null)));
}

function cellFrom(value: BaseValueObject): CellValue {
  if (value.isNull()) return null;
  if (value.isError()) return { error: String(value.getValue()) };
  return value.getValue();
}

function valueOf(answer: Answer): BaseValueObject {
  const [first = []] = answer;
  if (answer.length === 1 && first.length === 1) return cellOf(first[0]!);
  return ArrayValueObject.create({
    calculateValueList: answer.map((row) => row.map(cellOf)),
    rowCount: answer.length,
    columnCount: first.length,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}

const GRID_ERRORS: Readonly<Record<ErrorName, ErrorType>> = {
  "#VALUE!": ErrorType.VALUE,
  "#N/A": ErrorType.NA,
  "#DIV/0!": ErrorType.DIV_BY_ZERO,
  "#NAME?": ErrorType.NAME,
  "#NULL!": ErrorType.NULL,
  "#NUM!": ErrorType.NUM,
  "#REF!": ErrorType.REF,
};

function cellOf(cell: AnswerCell): BaseValueObject {
  if (typeof cell === "number") return NumberValueObject.create(cell);
  if (typeof cell === "boolean") return BooleanValueObject.create(cell);
  if (typeof cell === "string") return StringValueObject.create(cell);
  return ErrorValueObject.create(GRID_ERRORS[cell.error]);
}
