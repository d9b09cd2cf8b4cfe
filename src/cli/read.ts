import { describeLog } from "../log/describeLog";
import { EXIT, type Command } from "./command";
import { readLogFile } from "./logFile";
import { HOW_TO_READ, LOG_OPTIONS } from "./logOptions";
import { readingLines } from "./readingLines";

/** How a log was understood. */
export const read: Command = {
  name: "read",
  usage: `read LOG [--rules US] ${HOW_TO_READ} [--as-of 2026-10-31] [--json]`,
  says: "Shows how a log was understood: its columns, its rows, and every field with what it was read from.",
  options: { ...LOG_OPTIONS, json: { type: "boolean" } },

  async run(given, terminal) {
    const { log, units, notices } = await readLogFile(given, terminal);
    if (given.has("json")) terminal.print(JSON.stringify(describeLog(log), null, 2));
    else for (const line of [...notices, ...readingLines(log, units)]) terminal.print(line);
    return EXIT.nothingFound;
  },
};
