import type { Fill, Log, LogColumn } from "../../log/log";

export type AddedGas = "oxygenAdded" | "heliumAdded";
/** What an added gas is written as: how much was added, or the reading at which it stopped. */
export type AddedAs = NonNullable<LogColumn["adds"]>;

/** The rows around a fill, and what its columns say of themselves. */
export interface RowInLog {
  /** The fill in the row above and below, on the same sheet. */
  readonly above: Fill | undefined;
  readonly below: Fill | undefined;
  /** What the heading of an added gas says it is; undefined where it does not say. */
  addedAs(gas: AddedGas): AddedAs | undefined;
}

/** Of a fill that stands in no log. */
export const NO_ROWS: RowInLog = { above: undefined, below: undefined, addedAs: () => undefined };

/** The rows of a log, to be looked at around any of its fills. */
export class LogRows {
  readonly #columns = new Map<string, readonly LogColumn[]>();

  constructor(private readonly log: Log) {
    for (const { name, columns } of log.sheets) {
      const added = columns.filter(({ adds }) => adds !== undefined);
      if (added.length > 0) this.#columns.set(name, added);
    }
  }

  around(index: number): RowInLog {
    return new Row(this, index);
  }

  fill(index: number): Fill | undefined {
    return this.log.fills[index];
  }

  addedAs({ sheet, row }: Fill, gas: AddedGas): AddedAs | undefined {
    const column = this.#columns
      .get(sheet)
      ?.find(({ field, rows }) => field === gas && (!rows || (row >= rows.first && row <= rows.last)));
    return column?.adds;
  }
}

class Row implements RowInLog {
  constructor(
    private readonly rows: LogRows,
    private readonly index: number,
  ) {}

  get above(): Fill | undefined {
    return this.#onSameSheet(this.index - 1);
  }

  get below(): Fill | undefined {
    return this.#onSameSheet(this.index + 1);
  }

  addedAs(gas: AddedGas): AddedAs | undefined {
    return this.rows.addedAs(this.rows.fill(this.index)!, gas);
  }

  #onSameSheet(index: number): Fill | undefined {
    const fill = this.rows.fill(index);
    return fill?.sheet === this.rows.fill(this.index)?.sheet ? fill : undefined;
  }
}
