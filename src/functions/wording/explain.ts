import { Refusal, refuse } from "../../gas/refusal";
import { NOT_FINITE } from "../answer";
import { unitsOf, type Values, type WorksheetFunction } from "../define";
import { figure, signed, unitOf } from "../../words/figures";

/**
 * How an answer came about, as one text for one cell: the answer, the sentences of the function itself, and how the
 * answer moves with a gauge that is 1 % out and with 5 °C.
 * @throws Refusal where there is no answer.
 */
export function explain(worksheetFunction: WorksheetFunction, values: Values): string {
  const { id, why, quantity } = worksheetFunction;
  const answer = worksheetFunction.answer(values);
  if (typeof answer === "number" && !Number.isFinite(answer)) refuse(NOT_FINITE);
  if (typeof answer === "number" && quantity !== "date") {
    const inWords = figuresOf(worksheetFunction, values);
    return [
      `${id}: ${inWords(answer)}.`,
      ...why(values),
      ...movement(worksheetFunction, values, answer),
    ].join(" ");
  }
  return [
    ...(typeof answer === "string" ? [`${id}: ${answer.replace(/\.$/, "")}.`] : []),
    ...why(values),
  ].join(" ");
}

/** How the function's answers are written: with their unit, and as many decimals as people use. */
function figuresOf({ quantity }: WorksheetFunction, values: Values): (answer: number) => string {
  const unit = unitOf(quantity, unitsOf(values));
  return (answer) => `${figure(answer, decimalsOf(quantity))}${unit}`;
}

function movement(worksheetFunction: WorksheetFunction, values: Values, answer: number): readonly string[] {
  const inWords = figuresOf(worksheetFunction, values);
  const moves = worksheetFunction.parameters.flatMap(([name, reader]) => {
    const nudge = reader.shape === "cell" ? reader.nudge : undefined;
    if (!nudge || values[name] === undefined) return [];
    const moved = answerOrNothing(worksheetFunction, { ...values, [name]: nudge.of(values[name]) });
    if (moved === undefined) return [`${name} ${nudge.inWords}: not possible`];
    const change = figure(moved - answer, decimalsOf(worksheetFunction.quantity));
    return change === "0" ? [] : [`${name} ${nudge.inWords}: ${inWords(moved)} (${signed(change)})`];
  });
  return moves.length > 0 ? [`How it moves: ${moves.join("; ")}.`] : [];
}

function decimalsOf(quantity: WorksheetFunction["quantity"]): number {
  return quantity === "factor" ? 4 : 2;
}

function answerOrNothing(worksheetFunction: WorksheetFunction, values: Values): number | undefined {
  try {
    const answer = worksheetFunction.answer(values);
    return typeof answer === "number" && Number.isFinite(answer) ? answer : undefined;
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}
