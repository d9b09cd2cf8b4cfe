/** What the command line answers when it cannot do what was asked: a sentence, and exit code 2. */
export class CommandProblem extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = "CommandProblem";
  }
}

/** The sentence for whatever was thrown; never a stack trace. */
export function sentenceOf(thrown: unknown): string {
  if (thrown instanceof Error && SENTENCES.includes(thrown.name)) return thrown.message;
  const detail = thrown instanceof Error ? thrown.message : String(thrown);
  return `Brimbook failed (${detail.split("\n")[0]}). That is a fault of Brimbook: please report the command.`;
}

/** Errors that are made for the user. */
const SENTENCES = ["CommandProblem", "Refusal", "WorkbookProblem"];
