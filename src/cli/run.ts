import { calc } from "./calc";
import { check } from "./check";
import { EXIT, readGiven, type Command, type ExitCode, type Terminal } from "./command";
import { helpLines } from "./help";
import { month } from "./month";
import { CommandProblem } from "./problem";
import { read } from "./read";

const COMMANDS: readonly Command[] = [calc, read, check, month];
const HELP_WORDS = ["help", "--help", "-h"];

/** Runs the command that the words name. Throws, with a sentence, where it cannot. */
export async function run(words: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const [name = "help", ...rest] = words;
  if (HELP_WORDS.includes(name) || rest.some((word) => word === "--help")) {
    for (const line of helpLines(COMMANDS)) terminal.print(line);
    return EXIT.nothingFound;
  }
  const command = COMMANDS.find((each) => each.name === name);
  if (!command) {
    const names = COMMANDS.map((each) => each.name).join(", ");
    throw new CommandProblem(`There is no command "${name}": write one of ${names}, or help.`);
  }
  return command.run(readGiven(command, rest), terminal);
}
