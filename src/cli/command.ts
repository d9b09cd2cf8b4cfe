import { parseArgs } from "node:util";
import { CommandProblem } from "./problem";

/** What the shell is told. */
export const EXIT = {
  nothingFound: 0,
  findings: 1,
  cannot: 2,
  notFullyJudged: 3,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** Where a command writes, and what it reads where no file is named. */
export interface Terminal {
  print(line: string): void;
  /** The lines of standard input. */
  readonly input: AsyncIterable<string>;
  /** The folder that file names are relative to. */
  readonly folder: string;
}

export interface Given {
  readonly words: readonly string[];
  /** Options with a value. */
  readonly value: (name: string) => string | undefined;
  /** Options that may be given several times. */
  readonly all: (name: string) => readonly string[];
  /** Options without. */
  readonly has: (name: string) => boolean;
}

export interface Command {
  readonly name: string;
  /** How it is written, for the help. */
  readonly usage: string;
  readonly says: string;
  readonly options: Readonly<
    Record<string, { readonly type: "string" | "boolean"; readonly multiple?: true }>
  >;
  run(given: Given, terminal: Terminal): Promise<ExitCode>;
}

/** Reads the words behind a command's name. Throws CommandProblem where they are not what it takes. */
export function readGiven(command: Command, words: readonly string[]): Given {
  try {
    const { values, positionals } = parseArgs({
      args: [...words],
      options: command.options,
      allowPositionals: true,
      strict: true,
    });
    return {
      words: positionals,
      value: (name) => (typeof values[name] === "string" ? values[name] : undefined),
      all: (name) => [values[name] ?? []].flat().map(String),
      has: (name) => values[name] === true,
    };
  } catch (error) {
    const reason = (error as Error).message.split(". ")[0]!.replace(/\.$/, "");
    throw new CommandProblem(`${reason}. Write: ${command.usage}`);
  }
}
