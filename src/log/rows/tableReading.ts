import { isBlank, type SheetRow } from "../../sheet/sheet";
import { ColumnReader } from "./columnReader";
import { isCylinderOnly, KINDS, TEST_FIELDS } from "../fieldKinds";
import type { Cylinder, Field, Fill, FurtherTest, RowKind, TestField, UnreadableRow } from "../log";
import { value, type Reading } from "../reading";
import { blankReadings, Records, type RowReadings } from "./records";
import { rowKindOf } from "./rowKind";
import { startBeside } from "./rowUnits";
import type { SettledColumn } from "../settle/open";
import type { SheetPlan, TablePlan } from "../sheetPlan";
import type { Steps } from "../../sheet/steps";
import { sumsUp } from "./sums";
import { holdsData } from "../tables/table";

/** What the rows of a sheet hold, in their order. */
export interface RowsRead {
  readonly rowKinds: RowKind[];
  readonly fills: Fill[];
  readonly cylinders: Cylinder[];
  readonly unreadable: UnreadableRow[];
}

/** About a millisecond. */
const ROWS_A_STEP = 200;

/** Reads the rows of one table, from the top, and gives each its kind. */
export class TableReading {
  readonly #readers: readonly ColumnReader[];
  readonly #testReaders: readonly ColumnReader[];
  readonly #furtherReaders: readonly ColumnReader[];
  readonly #isFlat: boolean;
  readonly #records: Records;
  /** The column of start pressures, where nobody stated their unit. */
  readonly #unstatedStart: number | undefined;
  /** The readings of the row at hand; one object for all rows. */
  readonly #row: RowReadings = blankReadings();

  constructor(
    private readonly plan: SheetPlan,
    private readonly table: TablePlan,
    settled: ReadonlyMap<number, SettledColumn>,
    private readonly into: RowsRead,
  ) {
    const readers = table.proposals.flatMap(({ column, field, further }) => {
      const settings = settled.get(column)?.settings;
      if (field === undefined || settings === undefined) return [];
      return [new ColumnReader({ column, field, further }, KINDS[field], settings, plan.sheet.dateSystem)];
    });
    this.#readers = readers.filter(({ of }) => !of.further);
    this.#testReaders = this.#readers.filter(({ of }) => isTest(of.field));
    this.#furtherReaders = readers.filter(({ of }) => of.further);
    this.#isFlat = this.#readers.some(({ of }) => isCylinderOnly(of.field));
    this.#records = new Records(this.#readers.map(({ of }) => of.field));
    const start = this.#readers.find(({ of }) => of.field === "startPressure")?.of.column;
    this.#unstatedStart =
      start !== undefined && settled.get(start)?.settings.pressure.stated === false ? start : undefined;
  }

  *read(): Steps<void> {
    const { headingRows, firstRow, lastRow, firstHeading = firstRow } = this.table.table;
    let sumFrom = firstRow;
    for (let at = firstRow; at <= lastRow; at++) {
      if (at % ROWS_A_STEP === 0) yield at / this.plan.sheet.rows.length;
      const row = this.plan.sheet.rows[at]!;
      const kind = isBlankRow(row)
        ? "blank"
        : headingRows.has(at) || (at < firstHeading && !holdsData(row))
          ? "heading"
          : at < firstHeading
            ? this.#unread(row, at, "It stands above the headings. Move it below those it belongs to.")
            : this.#readRow(row, at, sumFrom);
      this.into.rowKinds.push(kind);
      if (kind === "heading" || kind === "totals") sumFrom = at + 1;
    }
  }

  #readRow(row: SheetRow, at: number, sumFrom: number): RowKind {
    if (this.table.kind === "neither") return this.#readForeignRow(row, at);
    if (row.struckOut === true) return "struck out";
    this.#readCells(row, at);
    const further = this.#further(row);
    const verdict = rowKindOf(row, this.#row, further.length, this.table.kind, () =>
      sumsUp(this.plan.sheet, row, at, sumFrom),
    );
    const place = { sheet: this.plan.sheet.name, row: at };
    if (verdict.kind === "fill")
      this.into.fills.push(
        this.#isFlat
          ? this.#records.flatFill(place, this.#row, further)
          : this.#records.fill(place, this.#row),
      );
    if (verdict.kind === "cylinder")
      this.into.cylinders.push(this.#records.cylinder(place, this.#row, further));
    if (verdict.kind === "unreadable") this.into.unreadable.push(this.#unreadable(row, at, verdict.why));
    return verdict.kind;
  }

  #readCells(row: SheetRow, at: number): void {
    const readings = this.#row as unknown as Record<Field, Reading<unknown>>;
    for (const reader of this.#readers) {
      const { column, field } = reader.of;
      const reading = reader.read(row.values[column], row.formats?.[column]);
      const from = reading.kind === "value" ? this.plan.filledFrom(at, column) : undefined;
      readings[field] = reading.kind === "value" && from !== undefined ? value(reading.value, from) : reading;
    }
    if (this.#unstatedStart !== undefined) {
      const { startPressure, endPressure } = this.#row;
      readings.startPressure = startBeside(startPressure, endPressure, row.values[this.#unstatedStart]);
    }
  }

  /** Tests in further columns, and further tests in one cell. */
  #further(row: SheetRow): readonly FurtherTest[] {
    if (this.#testReaders.length === 0 && this.#furtherReaders.length === 0) return NO_TESTS;
    const further: FurtherTest[] = [];
    for (const reader of this.#testReaders) {
      const field = reader.of.field as TestField;
      for (const reading of reader.othersOf(this.#row[field])) further.push(furtherTest(reader, reading));
    }
    for (const reader of this.#furtherReaders) {
      const reading = reader.read(row.values[reader.of.column], row.formats?.[reader.of.column]);
      if (reading.kind === "blank") continue;
      for (const each of [reading, ...reader.othersOf(reading)]) further.push(furtherTest(reader, each));
    }
    return further;
  }

  /** Words on a sheet that is no log are titles and notes; with numbers among them they are something unread. */
  #readForeignRow(row: SheetRow, at: number): RowKind {
    if (row.values.every((cell) => isBlank(cell) || typeof cell === "string")) return "heading";
    return this.#unread(row, at, "What stands here is neither fills nor cylinders, by its headings.");
  }

  #unread(row: SheetRow, at: number, why: string): RowKind {
    this.into.unreadable.push({ sheet: this.plan.sheet.name, row: at, column: firstFilled(row), why });
    return "unreadable";
  }

  #unreadable(row: SheetRow, at: number, why: string | undefined): UnreadableRow {
    const place = { sheet: this.plan.sheet.name, row: at };
    const remarks = this.#readers.find(({ of }) => of.field === "remarks")?.of.column;
    if (why !== undefined) return { ...place, column: remarks ?? firstFilled(row), why };
    for (const { of } of this.#readers) {
      const reading = this.#row[of.field];
      if (reading.kind === "unreadable") return { ...place, column: of.column, why: reading.why };
    }
    return {
      ...place,
      column: firstFilled(row),
      why: "Too little stands in this row to know a fill or a cylinder by it.",
    };
  }
}

const NO_TESTS: readonly FurtherTest[] = [];

function furtherTest({ of }: ColumnReader, reading: Reading<unknown>): FurtherTest {
  return { field: of.field as TestField, column: of.column, reading: reading as FurtherTest["reading"] };
}

function isTest(field: Field): field is TestField {
  return (TEST_FIELDS as readonly Field[]).includes(field);
}

function firstFilled(row: SheetRow): number {
  return Math.max(
    0,
    row.values.findIndex((cell) => !isBlank(cell)),
  );
}

function isBlankRow(row: SheetRow): boolean {
  for (const cell of row.values) if (!isBlank(cell)) return false;
  return true;
}
