import type { LogBook } from "../logBook";
import type { AsyncToldSteps, ToldSteps } from "../worker/told";
import { check } from "./check";
import { costs } from "./costs";
import { month, months } from "./month";
import { receive } from "./receive";
import { rehearsal } from "./rehearsal";
import { suspectGas } from "./suspectGas";

/** What can be asked of an open workbook, by name. Arguments and answers are plain values: they travel to a worker. */
export const QUESTIONS = { check, costs, month, months, receive, rehearsal, suspectGas } as const;

export type QuestionName = keyof typeof QUESTIONS;
export type ArgumentsOf<Name extends QuestionName> = Parameters<(typeof QUESTIONS)[Name]>[1];
export type AnswerTo<Name extends QuestionName> =
  ReturnType<(typeof QUESTIONS)[Name]> extends ToldSteps<infer Answer> | AsyncToldSteps<infer Answer>
    ? Answer
    : never;

/** The way to the answer of a question, a step at a time. */
export function answerSteps(
  name: QuestionName,
  book: LogBook,
  wanted: unknown,
): ToldSteps<unknown> | AsyncToldSteps<unknown> {
  const answer = QUESTIONS[name] as (book: LogBook, wanted: unknown) => ToldSteps<unknown>;
  return answer(book, wanted);
}
