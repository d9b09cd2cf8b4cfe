import { isProblem, type Answer, type AnswerCell } from "../functions/answer";
import { cellFrom, type Argument } from "../typed/cells";
import { evaluate } from "../functions/evaluate";
import { EXIT, type Command, type ExitCode, type Given, type Terminal } from "./command";
import { CommandProblem, sentenceOf } from "./problem";

const EXAMPLE = `calc MOD '[32,"ft"]'`;

/** One worksheet function, or a line of JSON for each of many. */
export const calc: Command = {
  name: "calc",
  usage: `calc NAME '[ARGUMENTS]', or calc --batch with a line {"fn":"MOD","args":[32,"ft"]} for each`,
  says:
    "Calculates a worksheet function. Arguments are a JSON array, ranges arrays of rows. Prints the value as JSON, or " +
    `{"error":"#VALUE!","message":"…"}. Exit code 0: answered; 2: refused; 3: some rows of a range refused. ` +
    "--batch always ends with 0: each line says for itself.",
  options: { batch: { type: "boolean" } },

  async run(given: Given, terminal: Terminal): Promise<ExitCode> {
    if (given.has("batch")) return batch(terminal);
    const [name, written = "[]", ...more] = given.words;
    if (name === undefined) throw new CommandProblem(`Name a function, such as ${EXAMPLE}.`);
    if (more.length > 0)
      throw new CommandProblem(`Put all arguments into one JSON array, such as ${EXAMPLE}.`);
    const answer = evaluate(name, readArguments(readJson(written, EXAMPLE)));
    terminal.print(JSON.stringify(shaped(answer)));
    return exitCode(answer);
  },
};

function exitCode(answer: Answer): ExitCode {
  const cells = answer.flat();
  const refused = cells.filter(isProblem).length;
  if (refused === 0) return EXIT.nothingFound;
  return refused === cells.length ? EXIT.cannot : EXIT.notFullyJudged;
}

/** Answers line by line; a line that cannot be read answers with an error of its own. */
async function batch(terminal: Terminal): Promise<ExitCode> {
  for await (const line of terminal.input) {
    if (line.trim() !== "") terminal.print(JSON.stringify(answerLine(line)));
  }
  return EXIT.nothingFound;
}

function answerLine(line: string): unknown {
  try {
    const call = readJson(line, BATCH_EXAMPLE);
    const [name, args] = Array.isArray(call) ? call : [fieldOf(call, "fn"), fieldOf(call, "args") ?? []];
    if (typeof name !== "string")
      throw new CommandProblem(`The line names no function: write it as ${BATCH_EXAMPLE}.`);
    return shaped(evaluate(name, readArguments(args)));
  } catch (thrown) {
    return { error: "#VALUE!", message: sentenceOf(thrown) };
  }
}

const BATCH_EXAMPLE = `{"fn":"MOD","args":[32,"ft"]}`;

function fieldOf(call: unknown, name: string): unknown {
  return typeof call === "object" && call !== null ? new Map(Object.entries(call)).get(name) : undefined;
}

function readJson(text: string, example: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new CommandProblem(`${text.slice(0, 60)} is not JSON: write it as ${example}.`);
  }
}

function readArguments(given: unknown): Argument[] {
  if (!Array.isArray(given)) throw new CommandProblem(`Arguments are a JSON array, such as [32,"ft"].`);
  return given.map((argument: unknown, index) => {
    if (!Array.isArray(argument)) return cellFrom(argument);
    if (!argument.every((row) => Array.isArray(row))) {
      throw new CommandProblem(
        `Argument ${index + 1} is a range: write it as an array of rows, such as [[1,2],[3,4]].`,
      );
    }
    return argument.map((row: unknown[]) => row.map(cellFrom));
  });
}

/** A single cell stands for itself. */
function shaped(answer: Answer): AnswerCell | Answer {
  const [first] = answer;
  return answer.length === 1 && first?.length === 1 ? first[0]! : answer;
}
