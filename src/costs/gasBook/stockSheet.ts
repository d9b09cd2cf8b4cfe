import type { DateOrder } from "../../log/context";
import { HELIUM, OXYGEN } from "../../gas/mixture";
import type { Units } from "../../gas/units";
import { plain, type Cell } from "../../log/cells/cell";
import { readDate } from "../../log/cells/date";
import { readPressure } from "../../log/cells/pressure";
import { readPrice } from "../../log/cells/text";
import { wordsOf } from "../../log/headings/headingWords";
import type { Reading } from "../../log/reading";
import { isBlank, type CellAddress, type CellValue, type Sheet, type SheetRow } from "../../sheet/sheet";
import { itemOf } from "../prices/item";
import type { PriceDoubt } from "../prices/priceSheet";
import { unitOf, type ListUnit } from "../prices/unit";

/** The gases that come in bottles and are booked. */
export const BOOKED_GASES = ["oxygen", "helium"] as const;
export type BookedGas = (typeof BOOKED_GASES)[number];
export const PURE_GAS = { oxygen: OXYGEN, helium: HELIUM } as const;

export type StockEvent = "delivered" | "in stock" | "sent back";

/** A row of the stock sheet: what came, what went back, what was counted. */
export interface StockRow {
  readonly cell: CellAddress;
  /** ISO date. */
  readonly day: string;
  readonly gas: BookedGas;
  readonly event: StockEvent;
  readonly amount: number;
  readonly unit: ListUnit;
  /** What each bottle stood at, bar absolute; absent for full ones. */
  readonly pressureBar?: number;
}

export interface StockSheet {
  readonly name: string;
  readonly rows: readonly StockRow[];
  readonly doubts: readonly PriceDoubt[];
}

type Column = "day" | "gas" | "event" | "amount" | "unit" | "pressure";
type Columns = Readonly<Partial<Record<Column, number>>>;

const HEADINGS: readonly (readonly [Column, string])[] = [
  ["day", "date|day|datum|fecha"],
  ["gas", "what|item|supply|product|was|quoi|que"],
  ["event", "in or out|event|what happened|movement|came or went"],
  ["amount", "how many|how much|amount|quantity|qty|number|menge|quantite|cantidad"],
  ["unit", "unit|of|per|einheit|unite|unidad"],
  ["pressure", "at|standing at|stood at|bottles at"],
];
const BY_WORDS = new Map(
  HEADINGS.flatMap(([column, words]) => words.split("|").map((each) => [each, column] as const)),
);

const EVENTS: readonly (readonly [StockEvent, RegExp])[] = [
  ["delivered", /^(?:delivered|delivery|in|came|received|bought|geliefert|livre|entregado)$/],
  ["in stock", /^(?:in stock|stock|stock count|counted|count|on hand|bestand|stock compte|existencias)$/],
  ["sent back", /^(?:sent back|returned|return|back|out|went back|zuruck|rendu|devuelto)$/],
];

const ROWS_SEARCHED = 30;
const MOST_ROWS = 20_000;

/** Whether a sheet has the headings of deliveries and stock. */
export function isStockSheet(sheet: Sheet): boolean {
  return sheet.rows.slice(0, ROWS_SEARCHED).some((row) => columnsOf(row.values) !== undefined);
}

/** Reads deliveries, bottles sent back and stock counts; what cannot be read is told with its cell. */
export function readStockSheet(sheet: Sheet, units: Units, dateOrder: DateOrder | undefined): StockSheet {
  const rows: StockRow[] = [];
  const doubts: PriceDoubt[] = [];
  let columns: Columns | undefined;
  for (const [at, row] of sheet.rows.slice(0, MOST_ROWS).entries()) {
    const here = columns ? undefined : columnsOf(row.values);
    columns ??= here;
    if (here || !columns) continue;
    const reader = new StockRowReader(sheet, row, at, columns, units, dateOrder);
    const read = reader.read();
    if (read) rows.push(read);
    doubts.push(...reader.doubts);
  }
  return { name: sheet.name, rows, doubts };
}

function columnsOf(values: readonly CellValue[]): Columns | undefined {
  const columns: Partial<Record<Column, number>> = {};
  for (const [at, value] of values.entries()) {
    if (typeof value !== "string" || isBlank(value) || value.length > 60) continue;
    const words = wordsOf(value)
      .join(" ")
      .replace(/ (?:psi|bar)$/, "");
    const column = BY_WORDS.get(words);
    if (column !== undefined) columns[column] ??= at;
  }
  const needed = ["day", "gas", "event", "amount", "unit"] as const;
  return needed.every((column) => columns[column] !== undefined) ? columns : undefined;
}

class StockRowReader {
  readonly doubts: PriceDoubt[] = [];

  constructor(
    private readonly sheet: Sheet,
    private readonly row: SheetRow,
    private readonly at: number,
    private readonly columns: Columns,
    private readonly units: Units,
    private readonly dateOrder: DateOrder | undefined,
  ) {}

  read(): StockRow | undefined {
    if (this.row.values.every(isBlank) || this.cell("amount") === undefined) return undefined;
    const day = this.needed("day", (cell) =>
      readDate(cell, { order: this.dateOrder, swapped: false, latestYear: 2099 }),
    );
    const gas = this.gas();
    const event = this.event();
    const amount = this.needed("amount", readPrice);
    const unit = this.unit();
    const pressure = this.cell("pressure");
    const pressureBar = pressure && this.needed("pressure", (cell) => this.pressure(cell))?.bar;
    if (!day || !gas || !event || amount === undefined || !unit) return undefined;
    if (pressure && pressureBar === undefined) return undefined;
    if (amount < 0) return this.doubt("amount", "Below 0: write how much came, went back or is there.");
    return {
      cell: this.address("gas"),
      day: day.toString(),
      gas,
      event,
      amount,
      unit,
      ...(pressureBar !== undefined && { pressureBar }),
    };
  }

  private gas(): BookedGas | undefined {
    const cell = this.cell("gas");
    const item = typeof cell?.value === "string" ? itemOf(cell.value) : undefined;
    if (item?.kind === "oxygen" || item?.kind === "helium") return item.kind;
    return this.doubt("gas", "Only oxygen and helium are booked: this row is not used.");
  }

  private event(): StockEvent | undefined {
    const words = plain(String(this.cell("event")?.value ?? ""));
    const event = EVENTS.find(([, pattern]) => pattern.test(words))?.[0];
    return event ?? this.doubt("event", "Write delivered, in stock or sent back: this row is not used.");
  }

  private unit(): ListUnit | undefined {
    const unit = unitOf(String(this.cell("unit")?.value ?? ""));
    if (unit && (unit.kind === "bottle" || unit.kind === "volume" || unit.kind === "mass")) return unit;
    return this.doubt("unit", "Write bottle, cu ft, L or kg: this row is not used.");
  }

  private pressure(cell: Cell) {
    const unit = this.units === "us" ? "psi" : "bar";
    return readPressure(cell, { unit, stated: true, pairs: undefined, full: false });
  }

  private needed<T>(column: Column, read: (cell: Cell) => Reading<T>): T | undefined {
    const cell = this.cell(column);
    const reading = cell && read(cell);
    if (reading?.kind === "value") return reading.value;
    const why = reading && reading.kind !== "blank" ? reading.why : "Nothing stands here";
    return this.doubt(column, `${why.replace(/\.$/, "")}: this row is not used.`);
  }

  private doubt(column: Column, sentence: string): undefined {
    this.doubts.push({ cell: this.address(column), sentence });
    return undefined;
  }

  private address(column: Column): CellAddress {
    return { sheet: this.sheet.name, row: this.at, column: this.columns[column] ?? 0 };
  }

  private cell(column: Column): Cell | undefined {
    const at = this.columns[column];
    const value = at === undefined ? undefined : this.row.values[at];
    if (at === undefined || value === undefined || value === null || isBlank(value)) return undefined;
    return { value, format: this.row.formats?.[at], dateSystem: this.sheet.dateSystem };
  }
}
