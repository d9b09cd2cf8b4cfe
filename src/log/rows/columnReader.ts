import { isBlank, type CellValue, type Sheet } from "../../sheet/sheet";
import { asSeen, isDitto, isTooLong } from "../cells/cell";
import { readStamps } from "../cells/stamp";
import { readCell, type ColumnSettings, type Kind } from "../fieldKinds";
import type { Field } from "../log";
import { BLANK, unreadable, value, type Reading } from "../reading";

/**
 * Reads the cells of one column. Logs repeat themselves, so every different cell is read once and its reading shared:
 * that is what makes a hundred thousand rows quick.
 */
export class ColumnReader {
  private readonly byFormat = new Map<string | undefined, Map<CellValue, Reading<unknown>>>();
  private lastFormat: string | undefined;
  private lastReadings: Map<CellValue, Reading<unknown>>;
  private readonly several = new Map<Reading<unknown>, readonly Reading<unknown>[]>();
  private above: Reading<unknown> = BLANK;

  constructor(
    /** The column it reads, and what for. */
    readonly of: { readonly column: number; readonly field: Field; readonly further: boolean },
    private readonly kind: Kind,
    private readonly settings: ColumnSettings,
    private readonly dateSystem: Sheet["dateSystem"],
  ) {
    this.lastReadings = this.readingsOf(undefined);
  }

  /** The other readings of a cell that holds several: earlier tests beside the latest. */
  othersOf(reading: Reading<unknown>): readonly Reading<unknown>[] {
    return this.several.get(reading) ?? [];
  }

  /** The reading of this column's cell in a row, reading rows from the top: a ditto mark repeats the row above. */
  read(cell: CellValue | undefined, format: string | undefined): Reading<unknown> {
    if (cell === undefined || cell === null || cell === "") return BLANK;
    if (format !== this.lastFormat) {
      this.lastFormat = format;
      this.lastReadings = this.readingsOf(format);
    }
    let reading = this.lastReadings.get(cell);
    if (reading === undefined) {
      reading = this.fresh(cell, format);
      // Running numbers never come again: keeping them would only fill the memory.
      if (this.kind !== "label" || typeof cell !== "number") this.lastReadings.set(cell, reading);
    }
    if (reading === DITTO) return this.sameAsAbove();
    if (reading !== BLANK) this.above = reading;
    return reading;
  }

  private fresh(
    cell: string | number | boolean | { readonly error: string },
    format: string | undefined,
  ): Reading<unknown> {
    if (isBlank(cell)) return BLANK;
    if (isDitto(cell)) return DITTO;
    const whole = asSeen({ value: cell, format, dateSystem: this.dateSystem });
    if (this.kind !== "stamp" || isTooLong(whole.value)) return readCell(whole, this.kind, this.settings);
    const words = readCell(whole, this.kind, this.settings);
    if (words.kind !== "unreadable" || words.says !== undefined) return words;
    const [latest, ...others] = readStamps(whole, this.settings.stamp);
    if (others.length > 0) this.several.set(latest!, others);
    return latest!;
  }

  private sameAsAbove(): Reading<unknown> {
    if (this.above.kind === "value") return value(this.above.value, "ditto: the same as above");
    return this.above.kind === "blank"
      ? unreadable("A ditto mark with nothing above it. Write it out.")
      : this.above;
  }

  private readingsOf(format: string | undefined): Map<CellValue, Reading<unknown>> {
    let readings = this.byFormat.get(format);
    if (!readings) this.byFormat.set(format, (readings = new Map()));
    return readings;
  }
}

const DITTO: Reading<unknown> = unreadable("ditto");
