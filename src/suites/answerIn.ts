import { isProblem } from "../functions/answer";
import type { Argument } from "../typed/cells";
import { evaluate, WHY } from "../functions/evaluate";

/** What a suite's cell can take: it has no error with a sentence of its own. */
type SuiteCell = string | number | boolean;

/** What differs between suites. */
export interface Suite {
  /** The day count of a date that the suite hands over as an object. */
  readonly serialOf?: (date: Date) => number;
}

/** The namespace as it must be written where names hold no dot. */
const PREFIX = "BRIM_";

/** How a problem leaves: its error, then its sentence. */
const TOLD_PROBLEM = /^#(VALUE!|N\/A|DIV\/0!|NAME\?|NULL!|NUM!|REF!) /;

/**
 * Answers a worksheet function in a suite other than Excel, as rows of cells. An error leaves as text that begins with
 * its name, since these suites show no sentence behind an error; handed on to another of our functions it is an
 * error again.
 */
export function answerIn(suite: Suite, id: string, given: readonly unknown[]): SuiteCell[][] {
  const taken = withoutLeftOut(given).map((argument) => argumentFrom(suite, argument));
  const [name, ...others] = taken;
  const asked =
    id === WHY && typeof name === "string" ? [name.replace(/^\s*=?BRIM_/i, ""), ...others] : taken;
  return evaluate(id, asked).map((row) =>
    row.map((cell) => renamed(isProblem(cell) ? `${cell.error} ${cell.message}` : cell)),
  );
}

/** The functions are declared with all the arguments they can have: those at the end that were left out are none. */
function withoutLeftOut(given: readonly unknown[]): readonly unknown[] {
  return given.slice(0, given.findLastIndex((argument) => argument !== undefined && argument !== null) + 1);
}

function argumentFrom(suite: Suite, argument: unknown): Argument {
  return Array.isArray(argument)
    ? argument.map((row: unknown) => (Array.isArray(row) ? row : [row]).map((cell) => cellFrom(suite, cell)))
    : cellFrom(suite, argument);
}

function cellFrom({ serialOf }: Suite, cell: unknown): Exclude<Argument, readonly unknown[]> {
  if (typeof cell === "string") {
    const problem = TOLD_PROBLEM.exec(cell);
    return problem ? { error: `#${problem[1]!}` } : cell;
  }
  if (serialOf && isDate(cell)) return serialOf(cell);
  return cell as Exclude<Argument, readonly unknown[]>;
}

/** A date object, also one that was made in another realm. */
const isDate = (cell: unknown): cell is Date => Object.prototype.toString.call(cell) === "[object Date]";

/** Our sentences name formulas as Excel has them. */
const renamed = (cell: SuiteCell) => (typeof cell === "string" ? cell.replaceAll("BRIM.", PREFIX) : cell);
