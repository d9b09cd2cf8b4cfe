/*
 * What a worker has to say may be long, and whoever takes it out of one message holds the screen. So its long lists
 * travel ahead, a few items at a time, and the rest follows with the places where they belong.
 */

export const ITEMS_PER_MESSAGE = 200;

/** Where a long list was taken out. */
interface Gap {
  readonly itemsSentAhead: number;
}

function isGap(value: object): value is Gap {
  return "itemsSentAhead" in value;
}

/** Takes long lists out of a plain value: `send` gets their items, the answer is the rest. */
export function takenApart(value: unknown, send: (items: readonly unknown[]) => void): unknown {
  if (typeof value !== "object" || value === null) return value;
  if (!Array.isArray(value))
    return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, takenApart(part, send)]));
  if (value.length <= ITEMS_PER_MESSAGE) return value.map((item) => takenApart(item, send));
  for (let at = 0; at < value.length; at += ITEMS_PER_MESSAGE) send(value.slice(at, at + ITEMS_PER_MESSAGE));
  return { itemsSentAhead: value.length } satisfies Gap;
}

/** Puts a value together again of what came ahead and the rest. */
export class Pieces {
  private readonly items: unknown[] = [];
  private taken = 0;

  add(items: readonly unknown[]): void {
    for (const item of items) this.items.push(item);
  }

  joined(value: unknown): unknown {
    if (typeof value !== "object" || value === null) return value;
    if (Array.isArray(value)) return value.map((item) => this.joined(item));
    if (isGap(value)) return this.items.slice(this.taken, (this.taken += value.itemsSentAhead));
    return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, this.joined(part)]));
  }
}
