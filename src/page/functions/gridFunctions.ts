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
import type { Answer, AnswerCell } from "../../functions/answer";
import type { Argument } from "../../functions/cells";
import { evaluate, WHY } from "../../functions/evaluate";
import { FUNCTIONS } from "../../functions/worksheetFunctions";
import type { CellValue } from "../../sheet/sheet";
import type { EngineFunction } from "../../workbook/grid/engine";
import type { Sentences } from "./sentences";

interface Parameter {
  readonly name: string;
  readonly help: string;
  readonly optional: boolean;
}

/** The worksheet functions as the grid calls them; the sentences behind their errors go to `sentences`. */
export function gridFunctions(sentences: Sentences): readonly EngineFunction[] {
  return [
    ...FUNCTIONS.map(({ id, says, parameters, examples }) =>
      gridFunction(
        id,
        says,
        parameters.map(([name, reader]) => ({ name, help: reader.help, optional: reader.optional })),
        examples[0] ?? [],
        sentences,
      ),
    ),
    gridFunction(
      WHY,
      "The sentence behind an error, or how an answer came about.",
      [
        { name: "function", help: 'The name of the function, such as "MOD".', optional: false },
        { name: "arguments", help: "Its arguments, one after the other.", optional: true },
      ],
      ["MOD", "EAN32", "ft"],
      sentences,
    ),
  ];
}

function gridFunction(
  id: string,
  says: string,
  parameters: readonly Parameter[],
  example: readonly Argument[],
  sentences: Sentences,
): EngineFunction {
  const functionName = `BRIM.${id}`;
  return {
    calculate: class extends BaseFunction {
      override calculate(...given: BaseValueObject[]): BaseValueObject {
        const answer = evaluate(id, given.map(argumentFrom));
        sentences.keep(this.unitId ?? "", this.subUnitId ?? "", this.row, this.column, answer);
        return valueOf(answer);
      }
    },
    help: {
      functionName,
      functionType: FunctionType.User,
      abstract: says,
      description: `${says} Example: =${functionName}(${example.map(written).join(", ")})`,
      functionParameter: parameters.map(({ name, help, optional }) => ({
        name,
        detail: help,
        example: "",
        require: optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
        repeat: name === "arguments" ? BooleanNumber.TRUE : BooleanNumber.FALSE,
      })),
    },
  };
}

/** An argument as one types it into a formula; ranges as the array constants that hold the same. */
function written(argument: Argument): string {
  if (Array.isArray(argument)) return `{${argument.map((row) => row.map(written).join(",")).join(";")}}`;
  if (typeof argument === "string") return JSON.stringify(argument);
  if (typeof argument === "boolean") return argument ? "TRUE" : "FALSE";
  return argument === null || argument === undefined ? "" : String(argument);
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

function cellOf(cell: AnswerCell): BaseValueObject {
  switch (typeof cell) {
    case "number":
      return NumberValueObject.create(cell);
    case "boolean":
      return BooleanValueObject.create(cell);
    case "string":
      return StringValueObject.create(cell);
    default:
      return ErrorValueObject.create(cell.error === "#N/A" ? ErrorType.NA : ErrorType.VALUE);
  }
}
