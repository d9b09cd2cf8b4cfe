import { shopFor } from "../audit/shop/shopFor";
import { receive as receiptOf, type Receipt } from "../counter/receive/receipt";
import { receiptSaid } from "../counter/receive/receiptSaid";
import { CAUTIONS } from "../counter/words";
import type { Units } from "../gas/units";
import { unitsOf } from "../reports/month/options";
import { EXIT, type Command, type ExitCode } from "./command";
import { readLogFile, rulesOf, type LogFile } from "./logFile";
import { HOW_TO_READ, LOG_OPTIONS } from "./logOptions";
import { CommandProblem } from "./problem";

/** What the counter says of a cylinder. */
export const receive: Command = {
  name: "receive",
  usage: `receive SERIAL LOG --rules US ${HOW_TO_READ} [--as-of 2026-10-31] [--json]`,
  says:
    "Says whether a cylinder may be filled today, by its serial or shop number: what its records say, and why. " +
    "Exit code 0: fill; 1: don't, or empty or analyse it first; 3: not known; 2: cannot be read.",
  options: { ...LOG_OPTIONS, json: { type: "boolean" } },

  async run(given, terminal) {
    const [serial, ...files] = given.words;
    if (serial === undefined || files.length === 0)
      throw new CommandProblem("Name the cylinder by its serial, and then the file that holds the log.");
    const file = await readLogFile({ ...given, words: files }, terminal);
    const receipt = receiptFor(serial, file);
    const lines = receiptLines(receipt, file.units ?? unitsOf(rulesOf(file)));
    if (given.has("json")) terminal.print(JSON.stringify(receipt, null, 2));
    else for (const line of [...file.notices, ...lines]) terminal.print(line);
    return EXITS[receipt.verdict];
  },
};

const EXITS: Readonly<Record<Receipt["verdict"], ExitCode>> = {
  fill: EXIT.nothingFound,
  "do not fill": EXIT.findings,
  "empty it first": EXIT.findings,
  "analyse it first": EXIT.findings,
  "not known": EXIT.notFullyJudged,
};

/** As the counter receives it. */
export function receiptFor(serial: string, file: LogFile): Receipt {
  const { shop } = shopFor(rulesOf(file), file.options);
  return receiptOf(file.log, shop, serial, file.asOf);
}

function receiptLines(receipt: Receipt, units: Units): readonly string[] {
  const { verdict, cylinder, against, lines, facts, inside } = receiptSaid(receipt, units);
  return [
    verdict,
    cylinder,
    ...(receipt.note === undefined ? [] : [receipt.note]),
    ...(receipt.found === "nothing" && receipt.suggestion !== undefined
      ? [`Did you mean ${receipt.suggestion}?`]
      : []),
    ...against.map(({ says, todo, source }) => `${says} ${todo} (${source})`),
    ...lines,
    ...facts.map(([what, fact]) => `${what}: ${fact}`),
    ...(inside === undefined ? [] : [inside]),
    "",
    CAUTIONS[2],
  ];
}
