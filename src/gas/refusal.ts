/**
 * What the domain answers when it cannot answer: a sentence for the user.
 *
 * `unusable` is input that is wrong, or what physics or a limit forbids; `unknown` is what nobody can tell
 * from what was given. A refusal is never a default value: unknown is not a pass.
 */
export class Refusal extends Error {
  constructor(
    readonly kind: "unusable" | "unknown",
    sentence: string,
  ) {
    super(sentence);
    this.name = "Refusal";
  }
}

/** Throws a refusal of unusable input. */
export function refuse(sentence: string): never {
  throw new Refusal("unusable", sentence);
}

/** Throws a refusal of what cannot be known. */
export function unknown(sentence: string): never {
  throw new Refusal("unknown", sentence);
}
