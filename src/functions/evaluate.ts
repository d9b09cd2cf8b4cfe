import { refuse } from "../gas/refusal";
import { isProblem, leaving, problemFrom, type Answer, type AnswerCell } from "./answer";
import type { Argument } from "../typed/cells";
import type { RowAnswer, Values, WorksheetFunction } from "./define";
import { explain } from "./wording/explain";
import { readArguments, Unread } from "./arguments/readArguments";
import { FUNCTIONS } from "./families/families";

/** The function that explains the others. */
export const WHY = "WHY";

const FUNCTION_BY_ID = new Map(FUNCTIONS.map((each) => [each.id, each]));

/**
 * What a worksheet function answers. Never throws: whatever is wrong stands in the cell it concerns, as a sentence.
 *
 * @param name in any case, with or without `BRIM.` in front
 * @param given single values or ranges (rows of cells); blank and left-out ones are null
 */
export function evaluate(name: string, given: readonly Argument[]): Answer {
  try {
    return idOf(name) === WHY ? why(given) : answerRows(functionNamed(name), given, answerOf);
  } catch (thrown) {
    return [[problemFrom(thrown)]];
  }
}

/** The same call explained instead of answered: text in every cell, also for what is refused. */
function why([name, ...given]: readonly Argument[]): Answer {
  try {
    return answerRows(functionNamed(singleText(name)), given, explain).map((row) =>
      row.map((cell) => (isProblem(cell) ? cell.message : cell)),
    );
  } catch (thrown) {
    return [[problemFrom(thrown).message]];
  }
}

/** One row of answer for each row of the columns; single values give one cell, or the table of FILLSTEPS. */
function answerRows(
  worksheetFunction: WorksheetFunction,
  given: readonly Argument[],
  answer: (worksheetFunction: WorksheetFunction, values: Values) => RowAnswer,
): Answer {
  const call = readArguments(worksheetFunction, given);
  const answerRow = (row: number): AnswerCell | Answer => {
    const values = call.read(row);
    if (values instanceof Unread) return values.problem;
    try {
      return answer(worksheetFunction, values);
    } catch (thrown) {
      return problemFrom(thrown);
    }
  };
  if (call.height === undefined) {
    const single = answerRow(0);
    return isTable(single) ? single.map((row) => row.map(leaving)) : [[leaving(single)]];
  }
  const rows: AnswerCell[][] = [];
  for (let row = 0; row < call.height; row++) {
    rows.push([call.isBlank(row) ? "" : leaving(answerRow(row) as AnswerCell)]);
  }
  return rows;
}

function answerOf(worksheetFunction: WorksheetFunction, values: Values): RowAnswer {
  return worksheetFunction.answer(values);
}

function isTable(answer: AnswerCell | Answer): answer is Answer {
  return Array.isArray(answer);
}

function functionNamed(name: string): WorksheetFunction {
  if (idOf(name) === WHY) refuse("WHY explains the other functions: name one of them first.");
  return (
    FUNCTION_BY_ID.get(idOf(name)) ??
    refuse(`There is no worksheet function "${name}": after typing =BRIM. the formula helper lists them.`)
  );
}

function idOf(name: string): string {
  return name
    .trim()
    .toUpperCase()
    .replace(/^=?(BRIM\.)?/, "");
}

function singleText(argument: Argument): string {
  const cell = Array.isArray(argument) ? argument[0]?.[0] : argument;
  if (typeof cell === "string" && cell.trim() !== "") return cell;
  return refuse('function: name one in quotation marks first, such as BRIM.WHY("MOD", "EAN32", "ft").');
}
