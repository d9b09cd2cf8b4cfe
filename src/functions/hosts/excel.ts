import { isProblem, type Answer, type AnswerCell, type ErrorName } from "../answer";
import type { Argument } from "../../typed/cells";
import { dateWasRefused, setDateSystem, type DateSystem } from "../../typed/dateSystem";
import { evaluate, WHY } from "../evaluate";
import { leaveWord } from "./registered";
import { FUNCTIONS } from "../families/families";
import { VERSION } from "../../version";

/** So long a cell with dates waits for Excel to say what they are counted from. */
const PATIENCE_MS = 8000;

/*
 * The worksheet functions in Excel. Loading this file registers them and does nothing else; where Excel's runtime is
 * not there (office.js could not be reached) it does nothing at all, and the pane says so.
 */
if (typeof CustomFunctions !== "undefined") {
  const dates = waitForDateSystem();
  leaveWord(VERSION, dates.hear);
  const answer = (id: string, given: readonly Argument[]) => {
    const now = evaluate(id, given);
    if (!dateWasRefused()) return inExcel(now);
    return dates.settled().then(() => {
      const later = evaluate(id, given);
      if (dateWasRefused()) dates.leaveRefused();
      return inExcel(later);
    });
  };
  for (const { id, parameters } of FUNCTIONS)
    CustomFunctions.associate(id, (...handedOver: Argument[]) =>
      answer(id, fitting(argumentsIn(handedOver), parameters.length)),
    );
  CustomFunctions.associate(WHY, (...handedOver: Argument[]) => answer(WHY, apart(argumentsIn(handedOver))));
}

/** Behind the arguments it knows of Excel hands over an object about the call; arguments are rows of cells, or null. */
function argumentsIn(handedOver: readonly Argument[]): readonly Argument[] {
  const last = handedOver.at(-1);
  const isAboutCall = typeof last === "object" && last !== null && !Array.isArray(last);
  return isAboutCall ? handedOver.slice(0, -1) : handedOver;
}

/**
 * Excel may know a newer or an older version of the function than this script. What an older one does not hand over is
 * left out; what a newer one hands over besides must not be passed over in silence.
 */
function fitting(given: readonly Argument[], count: number): readonly Argument[] {
  if (given.slice(count).every((argument) => argument === null || argument === undefined))
    return given.slice(0, count);
  throw errorOf({
    error: "#VALUE!",
    message:
      "Excel knows a newer version of this function than Brimbook has loaded: close Excel and open it again.",
  });
}

/** As long as Excel knows the older WHY, the arguments behind the first arrive as one list of ranges. */
function apart(given: readonly Argument[]): readonly Argument[] {
  const [name, list] = given as readonly [Argument, readonly unknown[] | null | undefined];
  const isList = list?.some((each) => Array.isArray(each) && Array.isArray(each[0])) ?? false;
  return isList ? [name, ...(list as readonly Argument[])] : given;
}

/** What the workbook counts its dates from is told by the pane, which can ask Excel. */
function waitForDateSystem() {
  let refused = false;
  let resolve: () => void;
  const told = new Promise<void>((known) => (resolve = known));
  let tired: Promise<void> | undefined;
  setDateSystem(undefined);
  return {
    hear: (system: DateSystem): boolean => {
      setDateSystem(system);
      resolve();
      return refused;
    },
    settled: () => Promise.race([told, (tired ??= new Promise((end) => setTimeout(end, PATIENCE_MS)))]),
    leaveRefused: () => {
      refused = true;
    },
  };
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
