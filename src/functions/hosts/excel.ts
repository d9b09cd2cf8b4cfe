import { isProblem, type Answer, type AnswerCell, type ErrorName } from "../answer";
import type { Argument } from "../../typed/cells";
import { evaluate, WHY } from "../evaluate";
import { leaveVersion } from "./registered";
import { FUNCTIONS } from "../families/families";
import { VERSION } from "../../version";

/*
 * The worksheet functions in Excel. Loading this file registers them and does nothing else; where Excel's runtime is
 * not there (office.js could not be reached) it does nothing at all, and the pane says so.
 */
if (typeof CustomFunctions !== "undefined") {
  leaveVersion(VERSION);
  for (const { id, parameters } of FUNCTIONS) {
    // Behind the arguments Excel hands over an object about the call.
    CustomFunctions.associate(id, (...handedOver: Argument[]) =>
      inExcel(evaluate(id, handedOver.slice(0, parameters.length))),
    );
  }
  CustomFunctions.associate(WHY, (name: Argument, given: readonly Argument[] | null) =>
    inExcel(evaluate(WHY, [name, ...(given ?? [])])),
  );
}

/** A single error is thrown, which is the surest way for its sentence to be shown; others stay in their rows. */
function inExcel(answer: Answer): unknown[][] {
  const [[only] = []] = answer;
  if (answer.length === 1 && answer[0]!.length === 1 && only !== undefined && isProblem(only)) {
    throw errorOf(only);
  }
  return answer.map((row) => row.map(errorOf));
}

function errorOf(cell: AnswerCell): unknown {
  if (!isProblem(cell)) return cell;
  // Only these two may carry a sentence.
  return cell.error === "#VALUE!" || cell.error === "#N/A"
    ? new CustomFunctions.Error(errorCode(cell.error), cell.message)
    : new CustomFunctions.Error(errorCode(cell.error));
}

function errorCode(error: ErrorName): CustomFunctions.ErrorCode {
  const { ErrorCode } = CustomFunctions;
  switch (error) {
    case "#N/A":
      return ErrorCode.notAvailable;
    case "#DIV/0!":
      return ErrorCode.divisionByZero;
    case "#NAME?":
      return ErrorCode.invalidName;
    case "#NULL!":
      return ErrorCode.nullReference;
    case "#NUM!":
      return ErrorCode.invalidNumber;
    case "#REF!":
      return ErrorCode.invalidReference;
    case "#VALUE!":
      return ErrorCode.invalidValue;
  }
}
