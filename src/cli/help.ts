import type { Command } from "./command";

/** What the command line can do. */
export function helpLines(commands: readonly Command[]): readonly string[] {
  return [
    "Brimbook on the command line: npm run -s brimbook -- COMMAND …",
    "",
    ...commands.flatMap(({ usage, says }) => [`  ${usage}`, `      ${says}`, ""]),
    "Logs are .xlsx, .csv or .ods files. They are only read, and nothing leaves this machine.",
  ];
}
