import type { Argument } from "../../typed/cells";
import { evaluate, WHY } from "../evaluate";
import { plainCall, type PlainArgument } from "./plainCall";
import { FUNCTIONS } from "../families/families";

/** One of our functions as it stands in a cell, for the one row of its answer that is asked about. */
export interface CallInCell {
  readonly id: string;
  /** Values, and the cells whose values it takes. */
  readonly given: readonly PlainArgument[];
}

/**
 * The call in a formula that is nothing but one of our functions with plain arguments; `undefined` for any other.
 * @param formula without the equals sign
 * @param down how many rows below the formula's own cell the answer asked about stands
 */
export function callInCell(formula: string, down: number): CallInCell | undefined {
  const call = plainCall(formula);
  const asked = FUNCTIONS.find(({ id }) => id === call?.name);
  if (!call || !asked) return undefined;
  const given = call.given.map((argument, index) =>
    asked.parameters[index]?.[1].shape === "cell" ? rowOf(argument, down) : argument,
  );
  return { id: asked.id, given };
}

/** How the call's answer came about, or why there is none: what WHY says of it. */
export function callInWords({ id }: CallInCell, given: readonly Argument[]): string | undefined {
  const text = evaluate(WHY, [id, ...given])[0]?.[0];
  return typeof text === "string" ? text : undefined;
}

/** Of a column the one cell that this row of the answer comes from. */
function rowOf(argument: PlainArgument, down: number): PlainArgument {
  if (typeof argument !== "object" || argument === null || argument.firstRow === argument.lastRow)
    return argument;
  return { ...argument, firstRow: argument.firstRow + down, lastRow: argument.firstRow + down };
}
