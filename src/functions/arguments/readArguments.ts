import { refuse } from "../../gas/refusal";
import type { Units } from "../../gas/units";
import { problemFrom, type Problem } from "../answer";
import type { CellValue } from "../../sheet/sheet";
import { cellFrom, ErrorCell, isBlankCell, isError, type Argument, type FilledCell } from "../../typed/cells";
import type { Values, WorksheetFunction } from "../define";
import type { CellReader, Reader, TableReader } from "../../typed/reader";

type Rows = Exclude<Argument, undefined | null | string | number | boolean | { error: string }>;

/** The arguments of one call. Columns go down side by side, single values are repeated beside them. */
export interface Call {
  /** How many rows the columns have; `undefined` where all arguments are single values. */
  readonly height: number | undefined;
  /** Whether every column is blank in this row: 0 counts, as a function cannot tell it from blank. */
  isBlank(row: number): boolean;
  /** The arguments of a row, or what stands in the way. The object is good until the next row is read. */
  read(row: number): Values | Unread;
}

/** An argument that could not be read, with its name in the sentence. */
export class Unread {
  constructor(readonly problem: Problem) {}
}

/**
 * The one place where arguments are read: matched to their readers, columns found, cells coerced, sentences given the
 * argument's name.
 * @throws Refusal for what is wrong with the call as a whole.
 */
export function readArguments(worksheetFunction: WorksheetFunction, given: readonly Argument[]): Call {
  const { id, parameters } = worksheetFunction;
  if (given.slice(parameters.length).some((extra) => extra !== undefined && extra !== null)) {
    refuse(
      `${id} takes ${parameters.length} arguments (${parameters.map(([name]) => name).join(", ")}): ${given.length} were given.`,
    );
  }
  const sources = parameters.map(([name, reader], index) => new Source(name, reader, given[index]));
  const columns = sources.filter((source) => source.column !== undefined);
  if (worksheetFunction.table && columns[0]) {
    refuse(
      `${columns[0].name}: ${id} answers with a table and so takes single values. For columns use STOPAT or ADDGAS.`,
    );
  }
  const unitsSource = sources.find(({ name }) => name === "units");
  const values: Record<string, unknown> = {};
  return {
    height: commonHeight(columns),
    isBlank: (row) => columns.every((source) => source.isBlank(row)),
    read(row) {
      const units = unitsSource?.read(row, "metric") ?? "metric";
      if (units instanceof Unread) return units;
      for (const source of sources) {
        const value = source.read(row, units as Units);
        if (value instanceof Unread) return value;
        values[source.name] = value;
      }
      return values;
    },
  };
}

function commonHeight(columns: readonly Source[]): number | undefined {
  const [first, ...others] = columns;
  for (const other of others) {
    if (other.column!.length !== first!.column!.length) {
      refuse(
        `${other.name} has ${other.column!.length} rows and ${first!.name} has ${first!.column!.length}: make the columns equally long.`,
      );
    }
  }
  return first?.column!.length;
}

/** Where one argument of a call comes from. Cells that come again are not read again. */
class Source {
  readonly column: Rows | undefined;
  private readonly single: Argument;
  private readonly seen: Readonly<Record<Units, Map<string, unknown>>> = { us: new Map(), metric: new Map() };
  private lastCell: unknown = NOTHING_YET;
  private lastUnits: Units | undefined;
  private lastValue: unknown;

  constructor(
    readonly name: string,
    private readonly reader: Reader<unknown>,
    argument: Argument,
  ) {
    const rows = rowsOf(argument);
    if (reader.shape === "table" || rows === undefined) this.single = argument;
    else if (rows.length <= 1 && (rows[0]?.length ?? 0) <= 1) this.single = rows[0]?.[0];
    else this.column = oneColumn(name, rows);
  }

  isBlank(row: number): boolean {
    const cell = this.column![row]![0];
    return (
      cell === 0 || cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "")
    );
  }

  read(row: number, units: Units): unknown {
    const cell = this.column ? this.column[row]![0] : this.single;
    if (cell === this.lastCell && units === this.lastUnits) return this.lastValue;
    this.lastCell = cell;
    this.lastUnits = units;
    return (this.lastValue =
      typeof cell === "string" ? this.readText(cell, units) : this.readOrName(cell, units));
  }

  private readText(text: string, units: Units): unknown {
    const seen = this.seen[units];
    let value = seen.get(text);
    if (value === undefined && !seen.has(text)) seen.set(text, (value = this.readOrName(text, units)));
    return value;
  }

  private readOrName(raw: Argument, units: Units): unknown {
    try {
      return this.reader.shape === "table"
        ? readTable(this.reader, raw, units)
        : readCell(this.reader, raw, units);
    } catch (thrown) {
      const { error, message } = problemFrom(thrown);
      return new Unread({ error, message: `${this.name}: ${message}` });
    }
  }
}

const NOTHING_YET = Symbol("nothing read yet");

/** The rows of a range; undefined for a single value. A row that is none is a cell. */
function rowsOf(argument: Argument): Rows | undefined {
  if (!Array.isArray(argument)) return undefined;
  const rows: readonly unknown[] = argument;
  return rows.every(Array.isArray)
    ? argument
    : rows.map((row) => (Array.isArray(row) ? row : [row]) as Rows[number]);
}

function oneColumn(name: string, rows: Rows): Rows {
  const other = rows.find((row) => row.length !== 1);
  if (other) {
    const twoColumnMix = /mix$/i.test(name)
      ? ", as another column would be read as another mix. Oxygen and helium in two columns: BRIM.MIX(B2,C2)."
      : ".";
    refuse(`${name}: ${other.length} cells side by side. Give one cell or one column${twoColumnMix}`);
  }
  return rows;
}

function readCell(reader: CellReader<unknown>, raw: Argument, units: Units): unknown {
  const cell = usable(cellFrom(raw));
  if (isBlankCell(cell) || (cell === 0 && reader.blank?.zeroIsBlank)) {
    return reader.blank ? reader.blank.value(units) : refuse(`blank or left out. ${reader.help}`);
  }
  return reader.read(cell, units);
}

function readTable(reader: TableReader<unknown>, raw: Argument, units: Units): unknown {
  const rows = (rowsOf(raw) ?? [[raw]]).map((row) => row.map((cell: unknown) => usable(cellFrom(cell))));
  if (rows.every((row) => row.every(isBlankCell))) refuse(`blank or left out. ${reader.help}`);
  return reader.read(rows, units);
}

/** No argument is a longer text, and patterns should not have to cope with any. */
const LONGEST_TEXT = 200;

/** A cell that a reader may see. An error stays one; what is not available stays unknown. */
function usable(cell: CellValue): FilledCell | null {
  if (typeof cell === "string" && cell.length > LONGEST_TEXT) {
    return refuse(`a text of ${cell.length} characters isn't a value this cell can hold.`);
  }
  if (!isError(cell)) return cell;
  throw new ErrorCell(cell.error);
}
