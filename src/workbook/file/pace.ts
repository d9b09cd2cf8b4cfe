export interface PaceOptions {
  /** How much of the file is read, from 0 to 1. */
  readonly progress?: (share: number) => void;
  readonly signal?: AbortSignal;
}

const LONGEST_RUN_MS = 25;

/** Long work in short runs: says how far it is, lets the screen live, and stops when asked. */
export class Pace {
  private done = 0;
  private lastPause = performance.now();
  /** How much there is to do, in the measure that `step` counts in. */
  total = 1;

  constructor(private readonly options: PaceOptions = {}) {}

  /** Counts work as done; where this run has been long enough, waits a turn. Rejects once the signal is aborted. */
  async step(amount: number): Promise<void> {
    this.done += amount;
    if (performance.now() - this.lastPause < LONGEST_RUN_MS) return;
    this.options.progress?.(Math.min(1, this.done / this.total));
    await this.pause();
  }

  /** Waits a turn in any case, ahead of work that takes long in one go. */
  async pause(): Promise<void> {
    await new Promise((resolve) => setTimeout(resolve, 0));
    this.options.signal?.throwIfAborted();
    this.lastPause = performance.now();
  }

  /** Does work that stops after every so many rows, as it yields them. */
  async through<Result>(steps: Generator<number, Result, undefined>): Promise<Result> {
    for (;;) {
      const step = steps.next();
      if (step.done) return step.value;
      await this.step(step.value);
    }
  }

  finish(): void {
    this.options.signal?.throwIfAborted();
    this.options.progress?.(1);
  }
}
