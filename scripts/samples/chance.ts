/** Numbers that look thrown but come out the same every time. */
export class Chance {
  #state: number;

  constructor(seed: number) {
    this.#state = seed;
  }

  /** At least 0, below 1 (the mulberry32 generator, public domain). */
  share(): number {
    this.#state = (this.#state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), 1 | this.#state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  }

  /** A whole number, both ends included. */
  whole(from: number, to: number): number {
    return from + Math.floor(this.share() * (to - from + 1));
  }

  of<T>(choices: readonly T[]): T {
    return choices[this.whole(0, choices.length - 1)]!;
  }

  happens(probability: number): boolean {
    return this.share() < probability;
  }
}
