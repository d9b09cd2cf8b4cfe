import { unitsOf, type Values, type WorksheetFunction } from "./define";
import { Refusal } from "../gas/refusal";
import { figure, signed, unitOf } from "./wording";

/**
 * How an answer came about, as one text for one cell: the answer, the sentences of the function itself, and how the
 * answer moves with a gauge that is 1 % out and with 5 °C.
 * @throws Refusal where there is no answer.
 */
export function explain(worksheetFunction: WorksheetFunction, values: Values): string {
  const answer = worksheetFunction.answer(values);
  const sentences = [...worksheetFunction.why(values)];
  if (typeof answer === "number" && worksheetFunction.quantity !== "date") {
    const unit = unitOf(worksheetFunction.quantity, unitsOf(values));
    sentences.unshift(`${worksheetFunction.id}: ${figure(answer)}${unit}.`);
    sentences.push(...movement(worksheetFunction, values, answer, unit));
  } else if (typeof answer === "string") {
    sentences.unshift(answer.endsWith(".") ? answer : `${answer}.`);
  }
  return sentences.join(" ");
}

function movement(
  worksheetFunction: WorksheetFunction,
  values: Values,
  answer: number,
  unit: string,
): string[] {
  const moves = worksheetFunction.parameters.flatMap(([name, reader]) => {
    const nudge = reader.shape === "cell" ? reader.nudge : undefined;
    if (!nudge || values[name] === undefined) return [];
    const moved = answerOrNothing(worksheetFunction, { ...values, [name]: nudge.of(values[name]) });
    if (moved === undefined) return [`${name} ${nudge.inWords}: not possible`];
    const change = moved - answer;
    return figure(change) === "0" || Math.abs(change) < 1e-9 * Math.abs(answer)
      ? []
      : [`${name} ${nudge.inWords}: ${figure(moved)}${unit} (${signed(change)})`];
  });
  return moves.length > 0 ? [`How it moves: ${moves.join("; ")}.`] : [];
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
