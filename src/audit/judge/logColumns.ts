import type { Field, Log, LogColumn, RowPlace } from "../../log/log";
import type { CellAddress, Sheet } from "../../sheet/sheet";
import type { Place } from "./rule";

/** The columns of one table; a sheet with several has headings of its own above each. */
interface Table {
  /** Undefined where it is the only one of its sheet. */
  readonly rows: LogColumn["rows"];
  readonly columns: Map<Field, number>;
}

/** Where the fields of a log stand in its sheets. */
export class LogColumns {
  readonly #bySheet = new Map<string, readonly Table[]>();
  readonly #fields = new Set<Field>();
  readonly #sources = new Map<string, Sheet>();

  constructor(log: Log) {
    for (const sheet of log.sheets) {
      this.#sources.set(sheet.name, sheet.source);
      const tables: Table[] = [];
      for (const { field, column, further, rows } of sheet.columns) {
        if (field === undefined || further === true) continue;
        let table = tables.find((each) => each.rows?.first === rows?.first);
        if (table === undefined) tables.push((table = { rows, columns: new Map() }));
        if (!table.columns.has(field)) table.columns.set(field, column);
        this.#fields.add(field);
      }
      this.#bySheet.set(sheet.name, tables);
    }
  }

  /** Whether any sheet has a column for one of these fields. */
  hasAny(fields: readonly Field[]): boolean {
    return fields.some((field) => this.#fields.has(field));
  }

  /** Whether the table of this place has a column for its field. */
  has({ field, record }: Place, fill: RowPlace): boolean {
    return this.#column(record ?? fill, field) !== undefined;
  }

  /** The cell of a place: where the field has no column of its own, that of the serial, else the row's first. */
  cell({ field, record, column }: Place, fill: RowPlace): CellAddress {
    const place = record ?? fill;
    const { sheet, row } = place;
    return { sheet, row, column: column ?? this.#column(place, field) ?? this.#column(place, "serial") ?? 0 };
  }

  /** What stands in a cell, as one text. */
  textAt({ sheet, row, column }: CellAddress): string {
    return JSON.stringify(this.#sources.get(sheet)?.rows[row]?.values[column] ?? null);
  }

  #column({ sheet, row }: RowPlace, field: Field): number | undefined {
    const tables = this.#bySheet.get(sheet);
    return tables?.find(({ rows }) => !rows || (row >= rows.first && row <= rows.last))?.columns.get(field);
  }
}
