import type { Field, Log, RowPlace } from "../log/log";
import type { CellAddress } from "../sheet/sheet";
import type { Place } from "./rule";

/** Where the fields of a log stand in its sheets. */
export class LogColumns {
  readonly #bySheet = new Map<string, Map<Field, number>>();
  readonly #fields = new Set<Field>();

  constructor(log: Log) {
    for (const sheet of log.sheets) {
      const columns = new Map<Field, number>();
      for (const { field, column, further } of sheet.columns) {
        if (field === undefined || further === true || columns.has(field)) continue;
        columns.set(field, column);
        this.#fields.add(field);
      }
      this.#bySheet.set(sheet.name, columns);
    }
  }

  /** Whether any sheet has a column for one of these fields. */
  hasAny(fields: readonly Field[]): boolean {
    return fields.some((field) => this.#fields.has(field));
  }

  /** Whether the sheet of this place has a column for its field. */
  has({ field, record }: Place, fill: RowPlace): boolean {
    return this.#column((record ?? fill).sheet, field) !== undefined;
  }

  /** The cell of a place: where the field has no column of its own, that of the serial, else the row's first. */
  cell({ field, record, column }: Place, fill: RowPlace): CellAddress {
    const { sheet, row } = record ?? fill;
    return { sheet, row, column: column ?? this.#column(sheet, field) ?? this.#column(sheet, "serial") ?? 0 };
  }

  #column(sheet: string, field: Field): number | undefined {
    return this.#bySheet.get(sheet)?.get(field);
  }
}
