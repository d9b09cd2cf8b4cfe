/**
 * Work that must let the screen go: it stops after every few rows, and tells which share of it is done, from 0 to 1.
 */
export type Steps<Result> = Generator<number, Result, undefined>;

/** The result of work in steps, where nobody waits for the screen. */
export function allAtOnce<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Part of a longer piece of work: its shares count from one share of the whole to another. */
export function* part<Result>(from: number, to: number, steps: Steps<Result>): Steps<Result> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield from + (to - from) * step.value;
  }
}

/** The items of a list one by one, with a stop after every so many. */
export function* inSteps<Item>(
  items: Iterable<Item>,
  count: number,
  each: (item: Item) => unknown,
): Steps<void> {
  let done = 0;
  for (const item of items) {
    if (done % ITEMS_A_STEP === 0) yield Math.min(1, done / count);
    each(item);
    done++;
  }
}

/** What is made of each item of a list, a few at a time. */
export function* madeInSteps<Item, Made>(
  items: readonly Item[],
  make: (item: Item) => Made,
): Steps<readonly Made[]> {
  const made: Made[] = [];
  yield* inSteps(items, items.length, (item) => made.push(make(item)));
  return made;
}

/** About a millisecond, of fills. */
const ITEMS_A_STEP = 100;
