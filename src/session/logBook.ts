import type { CountryRules } from "../cylinders/countryRules";
import { countryRules } from "../cylinders/countryRules";
import type { Finding } from "../audit/judge/finding";
import type { LogContext } from "../log/context";
import type { Log, LogSheet } from "../log/log";
import { readLogSteps } from "../log/readLog";
import { ownSheetOf } from "../sheet/ownSheet";
import type { Sheet } from "../sheet/sheet";
import { contextOf, readingKey, type Terms } from "./terms";
import { told, type ToldSteps } from "./worker/told";

/** What outlives one state of the workbook: what was found in the state before. */
export interface Remembered {
  findings?: {
    readonly of: LogBook;
    readonly found: readonly Finding[];
    readonly before: readonly Finding[];
  };
}

/**
 * One state of a workbook under one set of terms, and the one reading of its log. Nothing in it changes: an edit makes
 * another book. What is worked out from it once is kept for whoever asks next.
 */
export class LogBook {
  readonly #kept = new Map<string, unknown>();
  readonly remembered: Remembered;

  constructor(
    readonly sheets: readonly Sheet[],
    readonly terms: Terms,
    before?: LogBook,
  ) {
    this.remembered = before?.remembered ?? {};
    if (before?.sheets === sheets && readingKey(before.terms) === readingKey(terms)) {
      for (const key of OF_THE_READING) if (before.#kept.has(key)) this.#kept.set(key, before.#kept.get(key));
    }
  }

  /** Throws Refusal where the country is not known. */
  get rules(): CountryRules {
    return countryRules(this.terms.country);
  }

  get context(): LogContext {
    return { ...contextOf(this.terms), choices: this.#choices() };
  }

  /** The log, read when it is first asked for. `from` and `to` are the shares of the whole work that it takes. */
  *log(from: number, to: number): ToldSteps<Log> {
    return yield* this.kept(
      "log",
      told("Reading the rows", from, to, readLogSteps(this.sheets, this.context)),
    );
  }

  /** What the sheets hold that are not to be read, for whoever wants to choose them after all. */
  *leftOut(): ToldSteps<readonly LogSheet[]> {
    const choices = this.context.choices ?? [];
    const names = choices.filter(({ use }) => use === false).map(({ sheet }) => sheet);
    const context = { ...this.context, choices: choices.map(({ sheet, columns }) => ({ sheet, columns })) };
    const sheets = this.sheets.filter(({ name }) => names.includes(name));
    const log = yield* this.kept(
      "left out",
      told("Reading the rows", 0.5, 0.5, readLogSteps(sheets, context)),
    );
    return log.sheets;
  }

  /** What was worked out from this book before under this name, else what the steps come to. */
  *kept<Result>(name: string, steps: ToldSteps<Result>): ToldSteps<Result> {
    if (!this.#kept.has(name)) this.#kept.set(name, yield* steps);
    return this.#kept.get(name) as Result;
  }

  /** That a sheet Brimbook wrote is not to be read need not be said: it says so itself. */
  #choices(): Terms["choices"] {
    if (!this.terms.choices.some(({ use }) => use === false)) return this.terms.choices;
    const own = new Set(
      this.sheets.filter((sheet) => ownSheetOf(sheet) !== undefined).map(({ name }) => name),
    );
    return this.terms.choices.filter(({ sheet, use }) => use !== false || !own.has(sheet));
  }
}

const OF_THE_READING = ["log", "left out"];
