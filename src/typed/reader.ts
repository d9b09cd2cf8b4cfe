import type { Units } from "../gas/units";
import type { CellValue } from "../sheet/sheet";
import type { FilledCell } from "./cells";
import type { Nudge } from "./nudges";
import { capital } from "../words/figures";

/** What a blank cell, or an argument left out, stands for. */
interface Blank<T> {
  readonly value: (units: Units) => T;
  /** As the formula helper says it: "1.4", "salt". Nothing where a blank has no value of its own. */
  readonly inWords?: string;
  /** May the argument be left out of the formula? */
  readonly leaveOut: boolean;
  /** Spreadsheets hand a blank cell over as 0. */
  readonly zeroIsBlank: boolean;
}

/** How one argument that is a single value, or a column of them, is read. */
export class CellReader<T> {
  readonly shape = "cell";

  constructor(
    private readonly meaning: string,
    /** @throws Refusal with a sentence that need not name the argument. */
    readonly read: (cell: FilledCell, units: Units) => T,
    readonly nudge?: Nudge<T>,
    readonly blank?: Blank<T>,
  ) {}

  /** What the formula helper says of the argument. */
  get help(): string {
    return this.blank?.inWords ? `${this.meaning} ${capital(this.blank.inWords)} if left out.` : this.meaning;
  }

  get optional(): boolean {
    return this.blank?.leaveOut ?? false;
  }

  /** The same reader with other words in the formula helper. */
  saying(meaning: string): CellReader<T> {
    return new CellReader(meaning, this.read, this.nudge, this.blank);
  }

  /** Optional: left out, blank or 0 it is this value. */
  or<D extends string | number | boolean>(value: D): CellReader<T | D> {
    return this.orElse<D>(() => value, asTyped(value));
  }

  /** Optional: left out, blank or 0 it is what `value` gives. */
  orElse<D>(value: (units: Units) => D, inWords?: string): CellReader<T | D> {
    return this.withBlank<D>({ value, ...(inWords && { inWords }), leaveOut: true, zeroIsBlank: true });
  }

  /** Optional, and 0 is a value like any other. */
  orElseButZeroCounts<D>(value: (units: Units) => D, inWords?: string): CellReader<T | D> {
    return this.withBlank<D>({ value, ...(inWords && { inWords }), leaveOut: true, zeroIsBlank: false });
  }

  /** Has to stand in the formula, but its cell may be blank (or 0, as a blank cell arrives). */
  mayBeBlank(): CellReader<T | undefined> {
    return this.withBlank({ value: () => undefined, leaveOut: false, zeroIsBlank: true });
  }

  private withBlank<D>(blank: Blank<D>): CellReader<T | D> {
    return new CellReader<T | D>(this.meaning, this.read, this.nudge as Nudge<T | D> | undefined, blank);
  }
}

/** How an argument is read that takes a whole table. */
export class TableReader<T> {
  readonly shape = "table";
  readonly optional = false;

  constructor(
    readonly help: string,
    /** @throws Refusal with a sentence that need not name the argument. */
    readonly read: (rows: readonly (readonly CellValue[])[], units: Units) => T,
  ) {}
}

export type Reader<T> = CellReader<T> | TableReader<T>;

function asTyped(value: string | number | boolean): string {
  return typeof value === "string" ? `"${value}"` : String(value).toUpperCase();
}
