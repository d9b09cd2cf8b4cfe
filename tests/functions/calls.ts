import { expect } from "vitest";
import { isProblem, type AnswerCell } from "../../src/functions/answer";
import type { Argument } from "../../src/typed/cells";
import { evaluate } from "../../src/functions/evaluate";

/** The one cell that a call with single values answers. */
export function cell(name: string, ...given: readonly Argument[]): AnswerCell {
  const answer = evaluate(name, given);
  expect(answer, `${name} answers one cell`).toHaveLength(1);
  expect(answer[0], `${name} answers one cell`).toHaveLength(1);
  return answer[0]![0]!;
}

export function number(name: string, ...given: readonly Argument[]): number {
  const answer = cell(name, ...given);
  expect(answer).toBeTypeOf("number");
  return answer as number;
}

/** The error a call answers, as `#VALUE! sentence`. */
export function error(name: string, ...given: readonly Argument[]): string {
  const answer = cell(name, ...given);
  return isProblem(answer) ? `${answer.error} ${answer.message}` : `no error but ${String(answer)}`;
}

export function column(...cells: readonly unknown[]): Argument {
  return cells.map((each) => [each]) as Argument;
}

/** A column of answers; errors as `#VALUE! sentence`. */
export function answers(name: string, ...given: readonly Argument[]): readonly (string | number | boolean)[] {
  return evaluate(name, given).map((row) => {
    expect(row).toHaveLength(1);
    const [only] = row;
    return isProblem(only!) ? `${only.error} ${only.message}` : only!;
  });
}

/** The sentence of a call that is refused as a whole, or answers one error. */
export function sentence(name: string, ...given: readonly Argument[]): string {
  return error(name, ...given).replace(/^#\S+ /, "");
}
