import type { Command } from "./command";
import { LOG_OPTIONS_IN_WORDS } from "./logOptions";

/** What the command line can do. */
export function helpLines(commands: readonly Command[]): readonly string[] {
  return [
    "Brimbook on the command line: npm run -s brimbook -- COMMAND …",
    "",
    ...commands.flatMap(({ usage, says }) => [`  ${usage}`, `      ${says}`, ""]),
    "Of a log:",
    ...LOG_OPTIONS_IN_WORDS.map((line) => `  ${line}`),
    "",
    "Logs are .xlsx, .csv or .ods files. They are only read, and nothing leaves this machine.",
  ];
}
