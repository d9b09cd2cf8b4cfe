import { readFile, stat } from "node:fs/promises";
import { resolve } from "node:path";
import { Temporal } from "temporal-polyfill";
import type { AuditOptions } from "../audit/shop/shop";
import { COUNTRIES, countryRules, type CountryRules } from "../cylinders/countryRules";
import { readUnits, type Units } from "../gas/units";
import { countryContext } from "../log/countryContext";
import type { DateOrder } from "../log/context";
import type { Log } from "../log/log";
import { readLog } from "../log/readLog";
import { ownSheetOf } from "../sheet/ownSheet";
import type { Sheet } from "../sheet/sheet";
import { LIMITS } from "../workbook/file/limits";
import { openFile } from "../workbook/file/openFile";
import { readShopSettings, type ShopSettings } from "../workbook/settings";
import type { Workbook } from "../workbook/workbook";
import { readColumnSaid, refuseUnknownHeadings } from "./columnSaid";
import { readWordSaid } from "./wordSaid";
import { withSheetsSaid } from "./sheetSaid";
import type { Given, Terminal } from "./command";
import { CommandProblem } from "./problem";

/** A log in a file, and what is known of the shop: from the command line, else from the workbook's own settings. */
export interface LogFile {
  /** As it was named. */
  readonly name: string;
  readonly log: Log;
  readonly rules: CountryRules | undefined;
  /** What the shop has set for itself, and the day of the audit. */
  readonly options: AuditOptions;
  readonly settings: ShopSettings;
  readonly units: Units | undefined;
  readonly asOf: Temporal.PlainDate;
  /** What the user should know besides. */
  readonly notices: readonly string[];
}

/** The rules to judge by. Throws CommandProblem where neither the command line nor the workbook names any. */
export function rulesOf({ rules }: LogFile): CountryRules {
  if (rules) return rules;
  throw new CommandProblem(
    `No country's rules: the workbook keeps none, so add --rules with one of ${COUNTRIES.map(({ code }) => code).join(", ")}.`,
  );
}

/** How many fills are dated after the day that the log is looked at. */
export function fillsAfter({ log, asOf }: LogFile): number {
  return log.fills.filter(
    ({ fields: { date } }) => date.kind === "value" && Temporal.PlainDate.compare(date.value, asOf) > 0,
  ).length;
}

/** Opens the file that is named first and reads it as a log. */
export async function readLogFile(given: Given, terminal: Terminal): Promise<LogFile> {
  const [name, ...more] = given.words;
  if (name === undefined) throw new CommandProblem("Name the file that holds the log.");
  if (more.length > 0) throw new CommandProblem(`One file at a time: "${more[0]}" is one too many.`);
  const asOf = readDay(given.value("as-of"));
  const givenRules = readRules(given.value("rules"));
  const givenUnits = readShopUnits(given.value("units"));
  const datesAre = readDateOrder(given.value("dates"));
  const said = given.all("column").map(readColumnSaid);
  const wordsSaid = given.all("word").map(readWordSaid);
  const workbook = await openFile(await bytesOf(resolve(terminal.folder, name)), name);
  const { settings, notice } = await readShopSettings(workbook);
  const rules = givenRules ?? readRules(settings.country);
  const sheets = await allSheets(workbook);
  const units = givenUnits ?? settings.units;
  const { house, airTests, sources } = settings;
  const choices = withSheetsSaid(settings.sheets, given, sheets);
  const words = [...(settings.words ?? []), ...wordsSaid];
  const context = { ...(rules && countryContext(rules)), units, datesAre, asOf, choices, words, said };
  const log = readLog(sheets, context);
  refuseOurOwn(name, sheets, log);
  refuseUnknownHeadings(said, log);
  const options = { house, airTests, sources, asOf: asOf.toString() };
  return { name, log, rules, options, settings, units, asOf, notices: notice === undefined ? [] : [notice] };
}

/** A report opened by mistake for the log it is about. */
function refuseOurOwn(name: string, sheets: readonly Sheet[], log: Log): void {
  if (log.sheets.some(({ kind }) => kind !== "neither")) return;
  const own = sheets.map(ownSheetOf).find((what) => what !== undefined);
  if (own !== undefined)
    throw new CommandProblem(
      `“${name}” holds no log: Brimbook wrote it (${own}). Open the log that it was made from.`,
    );
}

async function allSheets(workbook: Workbook): Promise<readonly Sheet[]> {
  return Promise.all((await workbook.listSheets()).map(({ name }) => workbook.readSheet(name)));
}

async function bytesOf(path: string): Promise<Uint8Array> {
  try {
    const { size } = await stat(path);
    if (size > LIMITS.fileBytes) {
      throw new CommandProblem(
        `“${path}” is ${Math.round(size / 1e6)} MB, more than Brimbook takes: if it is a log, split it by year.`,
      );
    }
    return new Uint8Array(await readFile(path));
  } catch (error) {
    if (error instanceof CommandProblem) throw error;
    const code = (error as NodeJS.ErrnoException).code ?? "";
    throw new CommandProblem(`“${path}” ${WHY_NOT.get(code) ?? `cannot be opened (${code})`}.`);
  }
}

const WHY_NOT: ReadonlyMap<string, string> = new Map([
  ["ENOENT", "does not exist: check the name and the folder"],
  ["EISDIR", "is a folder: name the file that holds the log"],
  ["EACCES", "may not be read: ask for the right to read it"],
]);

function readRules(code: string | undefined): CountryRules | undefined {
  return code === undefined ? undefined : countryRules(code);
}

function readShopUnits(text: string | undefined): Units | undefined {
  return text === undefined ? undefined : readUnits(text);
}

function readDateOrder(text: string | undefined): DateOrder | undefined {
  if (text === undefined) return undefined;
  const order = (["day first", "month first"] as const).find(
    (each) =>
      each ===
      text
        .trim()
        .toLowerCase()
        .replace(/[\s-]+/g, " "),
  );
  if (order) return order;
  throw new CommandProblem(`"${text}" is no order of dates: write day-first or month-first.`);
}

/** The day the log is judged on: today, unless another is given. */
function readDay(text: string | undefined): Temporal.PlainDate {
  if (text === undefined) return Temporal.Now.plainDateISO();
  try {
    return Temporal.PlainDate.from(text, { overflow: "reject" });
  } catch {
    throw new CommandProblem(`"${text}" is no day: write it as 2026-10-31.`);
  }
}
