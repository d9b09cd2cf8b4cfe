import { EXIT, readGiven, type Command, type ExitCode, type Terminal } from "./command";
import { helpLines } from "./help";
import { CommandProblem } from "./problem";

/** Each is loaded when it is called: a single blend need not wait for what reads logs. */
const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  calc: async () => (await import("./calc")).calc,
  read: async () => (await import("./read")).read,
  check: async () => (await import("./check")).check,
  month: async () => (await import("./month")).month,
  receive: async () => (await import("./receive")).receive,
  plan: async () => (await import("./plan")).plan,
};
const HELP_WORDS = ["help", "--help", "-h"];

/** Runs the command that the words name. Throws, with a sentence, where it cannot. */
export async function run(words: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const [name = "help", ...rest] = words;
  if (HELP_WORDS.includes(name) || rest.some((word) => word === "--help")) {
    const commands = await Promise.all(Object.values(COMMANDS).map((load) => load()));
    for (const line of helpLines(commands)) terminal.print(line);
    return EXIT.nothingFound;
  }
  const load = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (!load) {
    const names = Object.keys(COMMANDS).join(", ");
    throw new CommandProblem(`There is no command "${name}": write one of ${names}, or help.`);
  }
  const command = await load();
  return command.run(readGiven(command, rest), terminal);
}
