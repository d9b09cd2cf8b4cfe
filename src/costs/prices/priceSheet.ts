import type { Units } from "../../gas/units";
import type { Cell } from "../../log/cells/cell";
import { readPressure } from "../../log/cells/pressure";
import { readPrice } from "../../log/cells/text";
import type { Reading } from "../../log/reading";
import { isBlank, type CellAddress, type Sheet, type SheetRow } from "../../sheet/sheet";
import { headingRowOf, type HeadingRow, type PriceColumn } from "./headings";
import { itemName, itemOf, type Item } from "./item";
import { readShare, readVolume } from "./quantities";
import { unitOf, type ListUnit } from "./unit";

/** An amount of money, or of whatever its unit says, and what it is for. */
export interface ListAmount {
  readonly amount: number;
  readonly unit: ListUnit;
  /** The unit as it stands in the list. */
  readonly written: string;
}

/** A bottle as gas is bought in it. */
export interface SupplyBottle {
  readonly waterVolumeL?: number;
  /** What a full one is sold as, litres of gas. */
  readonly holdsL?: number;
  readonly fullBar?: number;
  /** What cannot be used any more, bar absolute. */
  readonly leftBar?: number;
}

/** A row of the price list, as far as it could be read. */
export interface PriceRow {
  readonly item: Item;
  readonly cell: CellAddress;
  readonly pay?: ListAmount;
  readonly charge?: ListAmount;
  readonly bottle: SupplyBottle;
  /** Share of the gas bought that never reaches a cylinder. */
  readonly losses?: number;
}

/** Something in a price list that is not used, and why. */
export interface PriceDoubt {
  readonly cell: CellAddress;
  readonly sentence: string;
}

export interface PriceSheet {
  readonly name: string;
  readonly rows: readonly PriceRow[];
  readonly doubts: readonly PriceDoubt[];
}

/** Headings stand within these rows, as in a log. */
const ROWS_SEARCHED = 30;
/** A price list is short; a hostile sheet may not be. */
const MOST_ROWS = 2000;

/** Whether a sheet has the headings of a price list. */
export function isPriceSheet(sheet: Sheet): boolean {
  return sheet.rows.slice(0, ROWS_SEARCHED).some((row) => headingRowOf(row.values) !== undefined);
}

/**
 * Reads a price list: rows of what, what is paid and charged, and for how much of it, under headings anywhere in the
 * first 30 rows; further headings below begin another part. What cannot be read is told with its cell, never guessed.
 */
export function readPriceSheet(sheet: Sheet, units: Units): PriceSheet {
  const rows: PriceRow[] = [];
  const doubts: PriceDoubt[] = [];
  const seen = new Set<string>();
  let headings: HeadingRow | undefined;
  for (const [at, row] of sheet.rows.slice(0, MOST_ROWS).entries()) {
    const here = headingRowOf(row.values);
    headings = here ?? headings;
    if (here || !headings) continue;
    const read = new RowReader(sheet, row, at, headings, units, doubts).read();
    if (!read) continue;
    const name = itemName(read.item) + (read.pay ? ` ${read.pay.unit.kind}` : "");
    if (seen.has(name)) {
      doubts.push({
        cell: read.cell,
        sentence: `“${itemName(read.item)}” stands here twice: the first row is used. Leave one.`,
      });
      continue;
    }
    seen.add(name);
    rows.push(read);
  }
  if (sheet.rows.length > MOST_ROWS)
    doubts.push({
      cell: { sheet: sheet.name, row: MOST_ROWS, column: 0 },
      sentence: `A price list ends at row ${MOST_ROWS} here: what stands below is not read.`,
    });
  return { name: sheet.name, rows, doubts };
}

class RowReader {
  constructor(
    private readonly sheet: Sheet,
    private readonly row: SheetRow,
    private readonly at: number,
    private readonly headings: HeadingRow,
    private readonly units: Units,
    private readonly doubts: PriceDoubt[],
  ) {}

  read(): PriceRow | undefined {
    const named = this.cell("item");
    const says = (["pay", "charge"] as const).some((column) => this.cell(column) !== undefined);
    if (!named) {
      if (says) this.doubt("item", "A price for nothing: write what it is for beside it.");
      return undefined;
    }
    if (!says) return undefined;
    const item = typeof named.value === "string" ? itemOf(named.value) : undefined;
    if (!item) {
      this.doubt(
        "item",
        `“${String(named.value).slice(0, 60)}” is nothing that fills are costed by: this row is not used.`,
      );
      return undefined;
    }
    const pay = this.amount("pay", "payPer");
    const charge = this.amount("charge", "chargePer");
    const losses = this.losses();
    return {
      item,
      cell: this.address("item"),
      ...(pay && { pay }),
      ...(charge && { charge }),
      bottle: this.bottle(),
      ...(losses !== undefined && { losses }),
    };
  }

  private amount(column: "pay" | "charge", per: "payPer" | "chargePer"): ListAmount | undefined {
    const cell = this.cell(column);
    if (!cell) return undefined;
    const amount = this.value(column, readPrice(cell));
    const written = String(this.cell(per)?.value ?? "").trim();
    const unit = unitOf(written);
    if (amount === undefined) return undefined;
    if (amount < 0 && unit?.kind !== "temperature")
      return this.doubt(column, "A price below 0: write 0 or more.");
    if (!unit)
      return this.doubt(
        this.headings.columns[per] === undefined ? column : per,
        written === ""
          ? "Nothing says what this amount is for: write bottle, cu ft, L, kg, hour or fill beside it."
          : `“${written.slice(0, 40)}” is no unit known here: write bottle, cu ft, L, kg, hour or fill.`,
      );
    return { amount, unit, written };
  }

  private bottle(): SupplyBottle {
    const waterVolumeL = this.volume("bottle", "L");
    const holdsL = this.volume("holds", this.units === "us" ? "cu ft" : "L");
    const fullBar = this.pressure("full");
    const leftBar = this.pressure("left");
    return {
      ...(waterVolumeL !== undefined && { waterVolumeL }),
      ...(holdsL !== undefined && { holdsL }),
      ...(fullBar !== undefined && { fullBar }),
      ...(leftBar !== undefined && { leftBar }),
    };
  }

  private volume(column: "bottle" | "holds", usual: string): number | undefined {
    const cell = this.cell(column);
    if (!cell) return undefined;
    return this.value(column, readVolume(cell, unitOf(this.headings.units[column] ?? usual)!));
  }

  private pressure(column: "full" | "left"): number | undefined {
    const cell = this.cell(column);
    if (!cell) return undefined;
    const heading = this.headings.units[column];
    const unit = heading === "psi" || heading === "bar" ? heading : this.units === "us" ? "psi" : "bar";
    return this.value(column, readPressure(cell, { unit, stated: true, pairs: undefined, full: false }))?.bar;
  }

  private losses(): number | undefined {
    const cell = this.cell("losses");
    return cell && this.value("losses", readShare(cell));
  }

  /** The value of a reading; a doubt is written down and gives none. */
  private value<T>(column: PriceColumn, reading: Reading<T>): T | undefined {
    if (reading.kind === "value") return reading.value;
    if (reading.kind === "blank") return undefined;
    return this.doubt(column, reading.why);
  }

  private doubt(column: PriceColumn, sentence: string): undefined {
    this.doubts.push({ cell: this.address(column), sentence });
    return undefined;
  }

  private address(column: PriceColumn): CellAddress {
    const { columns } = this.headings;
    return { sheet: this.sheet.name, row: this.at, column: columns[column] ?? columns.item ?? 0 };
  }

  private cell(column: PriceColumn): Cell | undefined {
    const at = this.headings.columns[column];
    const value = at === undefined ? undefined : this.row.values[at];
    if (at === undefined || value === undefined || value === null || isBlank(value)) return undefined;
    return { value, format: this.row.formats?.[at], dateSystem: this.sheet.dateSystem };
  }
}
