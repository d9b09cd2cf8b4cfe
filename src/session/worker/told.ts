import { part, type Steps } from "../../sheet/steps";

/** How far a piece of work is, and with what. */
export interface Told {
  readonly doing: string;
  readonly share: number;
}

/** Work in steps that says what it does. */
export type ToldSteps<Result> = Generator<Told, Result, undefined>;
export type AsyncToldSteps<Result> = AsyncGenerator<Told, Result, undefined>;

/** Steps as the user is told of them: what is done there, between two shares of the whole work. */
export function* told<Result>(
  doing: string | ((share: number) => string),
  from: number,
  to: number,
  steps: Steps<Result>,
): ToldSteps<Result> {
  const within = part(from, to, steps);
  for (;;) {
    const step = within.next();
    if (step.done) return step.value;
    const share = step.value;
    yield { doing: typeof doing === "string" ? doing : doing((share - from) / (to - from)), share };
  }
}

/** More often than this nobody sees a difference, and every time is drawn anew. */
const TOLD_EVERY_MS = 50;

/** Passes on only so many of the steps of a work that has thousands. */
export function seldom(tell: (step: Told) => void): (step: Told) => void {
  let last = -Infinity;
  return (step) => {
    const now = performance.now();
    if (now - last < TOLD_EVERY_MS) return;
    last = now;
    tell(step);
  };
}
