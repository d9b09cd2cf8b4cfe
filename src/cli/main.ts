import { createInterface } from "node:readline";
import { EXIT } from "./command";
import { sentenceOf } from "./problem";
import { run } from "./run";

const terminal = {
  print: (line: string) => void process.stdout.write(`${line}\n`),
  input: { [Symbol.asyncIterator]: () => createInterface({ input: process.stdin })[Symbol.asyncIterator]() },
  folder: process.env["BRIMBOOK_FOLDER"] ?? process.cwd(),
};

/* A reader that has seen enough (`| head`) closes the pipe: that is no error of ours. */
process.stdout.on("error", () => process.exit(EXIT.cannot));

try {
  process.exitCode = await run(process.argv.slice(2), terminal);
} catch (thrown) {
  process.stderr.write(`${sentenceOf(thrown)}\n`);
  process.exitCode = EXIT.cannot;
}
