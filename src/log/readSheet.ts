import { isBlank, type SheetRow } from "../sheet/sheet";
import { ColumnReader } from "./columnReader";
import { DUE_CHOICES, type ColumnProposal } from "./columns";
import { KINDS, TEST_FIELDS } from "./fieldKinds";
import type {
  Cylinder,
  Field,
  Fill,
  FurtherTest,
  LogColumn,
  LogSheet,
  RowKind,
  TestField,
  UnreadableRow,
} from "./log";
import { value, type Reading } from "./reading";
import { RecordMaker } from "./records";
import { rowKindOf, type RowReadings } from "./rowKind";
import { settleTable, type Knowledge, type SettledColumn } from "./settle/settle";
import type { SheetPlan, TablePlan } from "./sheetPlan";
import { sumsUp } from "./sums";

/** A sheet read: what it is, and what its rows hold. */
export interface SheetReading {
  readonly sheet: LogSheet;
  readonly fills: readonly Fill[];
  readonly cylinders: readonly Cylinder[];
  readonly unreadable: readonly UnreadableRow[];
}

/** Reads one sheet as planned, and gives every row its kind. */
export function readSheet(plan: SheetPlan, knowledge: Knowledge): SheetReading {
  const reading = {
    rowKinds: [] as RowKind[],
    columns: [] as LogColumn[],
    fills: [] as Fill[],
    cylinders: [] as Cylinder[],
    unreadable: [] as UnreadableRow[],
  };
  for (const table of plan.tables) new TableReading(plan, table, knowledge, reading).read();
  const kind = plan.tables.find((table) => table.kind !== "neither")?.kind ?? "neither";
  const { rowKinds, columns, fills, cylinders, unreadable } = reading;
  return {
    sheet: {
      name: plan.sheet.name,
      kind,
      ...(kind === "neither" ? { why: whyNeither(plan) } : {}),
      columns,
      rowKinds,
      hiddenRows: plan.sheet.rows.filter((row) => row.hidden === true).length,
      headingsChanged: plan.headingsChanged,
      source: plan.original,
    },
    fills,
    cylinders,
    unreadable,
  };
}

interface Readings {
  readonly rowKinds: RowKind[];
  readonly columns: LogColumn[];
  readonly fills: Fill[];
  readonly cylinders: Cylinder[];
  readonly unreadable: UnreadableRow[];
}

/** The work on one table. */
class TableReading {
  readonly #settled: ReadonlyMap<number, SettledColumn>;
  readonly #readers: readonly ColumnReader[];
  readonly #testReaders: readonly ColumnReader[];
  readonly #furtherReaders: readonly ColumnReader[];
  readonly #records: RecordMaker;

  constructor(
    private readonly plan: SheetPlan,
    private readonly table: TablePlan,
    knowledge: Knowledge,
    private readonly into: Readings,
  ) {
    this.#settled = table.kind === "neither" ? new Map() : settleTable(plan, table, knowledge);
    const readers = table.proposals.flatMap((proposal) => {
      const settings = this.#settled.get(proposal.column)?.settings;
      return proposal.field === undefined || settings === undefined
        ? []
        : [
            new ColumnReader(
              proposal.column,
              proposal.field,
              KINDS[proposal.field],
              settings,
              plan.sheet.dateSystem,
              proposal.further,
            ),
          ];
    });
    this.#readers = readers.filter((reader) => !reader.further);
    this.#testReaders = this.#readers.filter(({ field }) =>
      (TEST_FIELDS as readonly Field[]).includes(field),
    );
    this.#furtherReaders = readers.filter((reader) => reader.further);
    this.#records = new RecordMaker(this.#readers.map((reader) => reader.field));
  }

  read(): void {
    const { table } = this.table;
    const firstHeading = Math.min(...table.headingRows, Infinity);
    let sumFrom = table.firstRow;
    for (let at = table.firstRow; at <= table.lastRow; at++) {
      const row = this.plan.sheet.rows[at]!;
      const kind = this.#kindOf(row, at, firstHeading, sumFrom);
      this.into.rowKinds.push(kind);
      if (kind === "heading" || kind === "totals") sumFrom = at + 1;
    }
    this.into.columns.push(...this.table.proposals.map((proposal) => this.#describe(proposal)));
  }

  #kindOf(row: SheetRow, at: number, firstHeading: number, sumFrom: number): RowKind {
    if (isBlankRow(row)) return "blank";
    if (this.table.table.headingRows.has(at)) return "heading";
    if (firstHeading !== Infinity && at < firstHeading) return "heading";
    const { kind } = this.table;
    const place = { sheet: this.plan.sheet.name, row: at };
    if (kind === "neither") return this.#ofNoTable(row, at);
    const readings = this.#readRow(row, at);
    const verdict = rowKindOf(row, readings, kind, () => sumsUp(this.plan.sheet, row, at, sumFrom));
    if (verdict.kind === "fill")
      this.into.fills.push(this.#records.fill(place, readings, this.#further(row, readings)));
    if (verdict.kind === "cylinder")
      this.into.cylinders.push(this.#records.cylinder(place, readings, this.#further(row, readings)));
    if (verdict.kind === "unreadable")
      this.into.unreadable.push(this.#unreadable(row, at, readings, verdict.why));
    return verdict.kind;
  }

  #readRow(row: SheetRow, at: number): RowReadings {
    const readings: { [field in Field]?: Reading<unknown> } = {};
    for (const reader of this.#readers) {
      const { column } = reader;
      const reading = reader.read(row.values[column], row.formats?.[column]);
      readings[reader.field] =
        reading.kind === "value" && this.plan.isMerged(at, column)
          ? value(reading.value, "from the merged cell above")
          : reading;
    }
    return readings;
  }

  /** Tests in further columns, and further tests in one cell. */
  #further(row: SheetRow, readings: RowReadings): readonly FurtherTest[] {
    const further: FurtherTest[] = [];
    for (const reader of this.#testReaders) {
      const { field, column } = reader;
      for (const reading of reader.othersOf(readings[field]!))
        further.push({ field: field as TestField, column, reading: reading as FurtherTest["reading"] });
    }
    for (const reader of this.#furtherReaders) {
      const reading = reader.read(row.values[reader.column], row.formats?.[reader.column]);
      if (reading.kind !== "blank")
        further.push({
          field: reader.field as TestField,
          column: reader.column,
          reading: reading as FurtherTest["reading"],
        });
    }
    return further;
  }

  /** Words on a sheet that is no log are titles and notes; with numbers among them they are something unread. */
  #ofNoTable(row: SheetRow, at: number): RowKind {
    if (row.values.every((cell) => isBlank(cell) || typeof cell === "string")) return "heading";
    this.into.unreadable.push({
      sheet: this.plan.sheet.name,
      row: at,
      column: row.values.findIndex((cell) => !isBlank(cell)),
      why: "What stands here is neither fills nor cylinders, by its headings.",
    });
    return "unreadable";
  }

  #unreadable(row: SheetRow, at: number, readings: RowReadings, why: string | undefined): UnreadableRow {
    const place = { sheet: this.plan.sheet.name, row: at };
    const first = Math.max(
      0,
      row.values.findIndex((cell) => !isBlank(cell)),
    );
    if (why !== undefined) return { ...place, column: this.#columnOf("remarks") ?? first, why };
    for (const { field, column } of this.#readers) {
      const reading = readings[field];
      if (reading?.kind === "unreadable") return { ...place, column, why: reading.why };
    }
    return {
      ...place,
      column: first,
      why: "Too little stands in this row to know a fill or a cylinder by it.",
    };
  }

  #columnOf(field: Field): number | undefined {
    return this.#readers.find((reader) => reader.field === field)?.column;
  }

  #describe(proposal: ColumnProposal): LogColumn {
    const settled = this.#settled.get(proposal.column);
    const { table } = this.table;
    const question = settled?.question ?? dueQuestion(proposal);
    const adds = addsAs(proposal);
    return {
      column: proposal.column,
      heading: proposal.heading,
      field: proposal.field,
      unit: settled?.unit,
      confidence:
        proposal.field === undefined && proposal.confidence < 1 ? 0 : Number(proposal.confidence.toFixed(2)),
      examples: proposal.sample.cells
        .slice(0, 3)
        .map(({ value: cell }) => (typeof cell === "object" ? cell.error : String(cell))),
      ...(this.plan.tables.length > 1 ? { rows: { first: table.firstRow, last: table.lastRow } } : {}),
      ...(proposal.further ? { further: true } : {}),
      ...(adds === undefined ? {} : { adds }),
      ...(question === undefined ? {} : { question }),
    };
  }
}

function dueQuestion({ dueOfSomething, heading }: ColumnProposal): LogColumn["question"] {
  if (!dueOfSomething) return undefined;
  return {
    about: "field",
    sentence: `What falls due under “${heading}”?`,
    choices: DUE_CHOICES.map(([choice]) => choice),
  };
}

function addsAs({ field, heading }: ColumnProposal): LogColumn["adds"] {
  if (field !== "oxygenAdded" && field !== "heliumAdded") return undefined;
  if (/\b(?:to|stop|bis|until)\b/i.test(heading)) return "stop";
  return /add|\+|zugab|zugegeb|ajout|anad|añad/i.test(heading) ? "increment" : undefined;
}

function whyNeither({ sheet, tables }: SheetPlan): string {
  const headed = tables.some(({ table }) => table.headingRows.size > 0);
  return headed
    ? `The headings of “${sheet.name}” are those of neither fills nor cylinders. Say what its columns are, or leave the sheet out.`
    : `“${sheet.name}” has no headings of fills or cylinders in its first rows. Say what its columns are, or leave the sheet out.`;
}

function isBlankRow(row: SheetRow): boolean {
  for (const cell of row.values) if (!isBlank(cell)) return false;
  return true;
}
