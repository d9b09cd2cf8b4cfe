import type { OxygenService } from "../cylinders/oxygenService";
import type { TestStamp } from "../cylinders/testStamp";
import type { Mixture } from "../gas/mixture";
import { gaugeReading } from "../gas/units";
import { cellName, columnLetters, isBlank, type CellValue } from "../sheet/sheet";
import { KINDS, type Kind } from "./fieldKinds";
import { serialKey } from "./cells/serial";
import type {
  CylinderStatus,
  ExternalCheck,
  Field,
  FurtherTest,
  Log,
  LogColumn,
  LogSheet,
  PressureReading,
  RowCounts,
  RowKind,
  TestField,
} from "./log";
import type { Reading } from "./reading";

/** How a log was understood, as plain JSON: for support, and to show a person what was made of their log. */
export interface LogDescription {
  /** How the rows of all sheets that were read add up. */
  readonly rows: RowCounts;
  readonly sheets: readonly SheetDescription[];
}

export interface SheetDescription {
  readonly name: string;
  readonly kind: LogSheet["kind"];
  readonly why?: string;
  /** Its rows are not part of the log, nor counted. */
  readonly leftOut?: boolean;
  readonly columns: readonly ColumnDescription[];
  readonly rows: readonly RowDescription[];
}

export interface ColumnDescription {
  /** By letters, as a spreadsheet names it. */
  readonly column: string;
  readonly heading: string;
  readonly field: Field | null;
  readonly unit: string | null;
  readonly confidence: number;
  readonly question?: LogColumn["question"];
  readonly assumed?: string;
}

export interface RowDescription {
  /** As a spreadsheet counts, from 1. */
  readonly row: number;
  readonly kind: RowKind;
  readonly fields: Readonly<Partial<Record<Field, ReadingDescription>>>;
  /** Tests besides those in `fields`, where the row has several of one kind. */
  readonly furtherTests?: readonly FurtherTestDescription[];
  /** Which cell could not be read, by its name, and why. */
  readonly cell?: string;
  readonly why?: string;
}

export interface FurtherTestDescription extends ReadingDescription {
  readonly field: TestField;
  readonly column: string;
}

/** A cell as it stands and as it was read; without value, choices or reason it says nothing of its field. */
export interface ReadingDescription {
  readonly raw: string | number | boolean;
  readonly value?: unknown;
  readonly choices?: readonly unknown[];
  readonly unreadable?: string;
  /** A word that is in no table, as it stands. */
  readonly unknownWord?: string;
  readonly unit?: string;
  readonly note?: string;
  /** What the words of a status mean. */
  readonly meaning?: string;
  /** What besides the month a test stamp says. */
  readonly stamp?: Readonly<Record<string, unknown>>;
}

/**
 * Describes a log. Serials stand in the form in which they are compared. Dates are ISO text, test stamps year and
 * month, pressures in bar on the gauge and as written, mixes in per cent, temperatures in kelvin, depths in metres.
 * A sheet that was left out has no rows: they were not read.
 */
export function describeLog(log: Log): LogDescription {
  const fills = byPlace(log.fills);
  const cylinders = byPlace(log.cylinders);
  const unreadable = byPlace(log.unreadable);
  const describeRow = (sheet: LogSheet, kind: RowKind, row: number): RowDescription => {
    const key = keyOf({ sheet: sheet.name, row });
    const fill = fills.get(key);
    const record = cylinders.get(key) ?? fill?.cylinderInRow;
    const fault = unreadable.get(key);
    const furtherTests = (record?.furtherTests ?? []).map((test) => describeTest(test, sheet, row));
    return {
      row: row + 1,
      kind,
      fields: describeFields(sheet, row, { ...record?.fields, ...fill?.fields }),
      ...(furtherTests.length > 0 ? { furtherTests } : {}),
      ...(fault ? { cell: cellName(fault), why: fault.why } : {}),
    };
  };
  return {
    rows: log.rows,
    sheets: log.sheets.map((sheet) => ({
      name: sheet.name,
      kind: sheet.kind,
      ...(sheet.why === undefined ? {} : { why: sheet.why }),
      ...(sheet.leftOut ? { leftOut: true } : {}),
      columns: sheet.columns.map(describeColumn),
      rows: sheet.leftOut ? [] : sheet.rowKinds.map((kind, row) => describeRow(sheet, kind, row)),
    })),
  };
}

function describeColumn(column: LogColumn): ColumnDescription {
  return {
    column: columnLetters(column.column),
    heading: column.heading,
    field: column.field ?? null,
    unit: column.unit ?? null,
    confidence: column.confidence,
    ...(column.question ? { question: column.question } : {}),
    ...(column.assumed === undefined ? {} : { assumed: column.assumed }),
  };
}

function describeFields(
  sheet: LogSheet,
  row: number,
  readings: { readonly [field in Field]?: Reading<unknown> },
): Partial<Record<Field, ReadingDescription>> {
  const described: Partial<Record<Field, ReadingDescription>> = {};
  for (const [field, raw] of rawTexts(sheet, row)) {
    const reading = readings[field];
    if (reading === undefined || (reading.kind === "blank" && isBlank(raw))) continue;
    described[field] = { raw: rawOf(raw), ...describeReading(reading, KINDS[field]) };
  }
  return described;
}

/** What stands in a row by field; of a test in several columns, the first in which anything stands. */
function rawTexts(sheet: LogSheet, row: number): ReadonlyMap<Field, CellValue> {
  const raws = new Map<Field, CellValue>();
  for (const { field, column, rows } of sheet.columns) {
    if (field === undefined || (rows && (row < rows.first || row > rows.last))) continue;
    if (isBlank(raws.get(field))) raws.set(field, sheet.source.rows[row]?.values[column] ?? null);
  }
  return raws;
}

function describeTest(
  { field, column, reading }: FurtherTest,
  sheet: LogSheet,
  row: number,
): FurtherTestDescription {
  return {
    field,
    column: columnLetters(column),
    raw: rawOf(sheet.source.rows[row]?.values[column] ?? null),
    ...describeReading(reading, "stamp"),
  };
}

function describeReading(reading: Reading<unknown>, kind: Kind): Partial<ReadingDescription> {
  switch (reading.kind) {
    case "value":
      return {
        value: describeValue(reading.value, kind),
        ...unitOf(reading.value, kind),
        ...(reading.note === undefined ? {} : { note: reading.note }),
        ...(kind === "status" ? { meaning: (reading.value as CylinderStatus).meaning } : {}),
        ...(kind === "stamp" ? { stamp: stampParts(reading.value as TestStamp) } : {}),
      };
    case "ambiguous":
      return { choices: reading.choices.map((choice) => describeValue(choice, kind)), note: reading.why };
    case "unreadable":
      return { unreadable: reading.why };
    case "unknown word":
      return { unknownWord: reading.word };
    case "blank":
      return {};
  }
}

function describeValue(value: unknown, kind: Kind): unknown {
  const describe = DESCRIBE[kind];
  return describe ? describe(value as never) : value;
}

/** Kinds whose values are not plain JSON as they are. */
const DESCRIBE: { readonly [kind in Kind]?: (value: never) => unknown } = {
  date: String,
  time: String,
  stamp: ({ month }: TestStamp) => month.toString(),
  pressure: ({ bar, written, hotBar, plus, testBar }: PressureReading) => ({
    bar: gauge(bar),
    written,
    ...(hotBar === undefined ? {} : { hotBar: gauge(hotBar) }),
    ...(testBar === undefined ? {} : { testBar: gauge(testBar) }),
    ...(plus ? { plus } : {}),
  }),
  mix: ({ oxygen, helium }: Mixture) => ({ oxygen: percent(oxygen), helium: percent(helium) }),
  helium: percent,
  status: ({ written }: CylinderStatus) => written,
  "external check": ({ passed, written }: ExternalCheck) => (passed ? written : { passed, written }),
  "oxygen service": ({ maxOxygen, oxygenClean }: OxygenService) => ({
    maxOxygen: maxOxygen === undefined ? "air only" : percent(maxOxygen),
    oxygenClean,
  }),
  serial: (serials: readonly string[]) =>
    serials.length === 1 ? serialKey(serials[0]!) : serials.map(serialKey),
  temperature: rounded,
  depth: rounded,
};

function unitOf(value: unknown, kind: Kind): { unit?: string } {
  if (kind === "pressure") return { unit: (value as PressureReading).written.unit };
  if (kind === "temperature") return { unit: "K" };
  if (kind === "depth") return { unit: "m" };
  return kind === "mix" || kind === "helium" ? { unit: "%" } : {};
}

function stampParts(stamp: TestStamp): Record<string, unknown> {
  return {
    means: stamp.means,
    ...(stamp.day ? { day: stamp.day.toString() } : {}),
    ...(stamp.plus ? { plus: true } : {}),
    ...(stamp.marks.length > 0 ? { marks: stamp.marks } : {}),
  };
}

function rawOf(raw: CellValue): string | number | boolean {
  if (raw === null) return "";
  return typeof raw === "object" ? raw.error : raw;
}

function gauge(bar: number): number {
  return rounded(gaugeReading(bar, "metric"));
}

function percent(fraction: number): number {
  return rounded(fraction * 100);
}

function rounded(number: number): number {
  return Number(number.toFixed(3));
}

function byPlace<T extends { sheet: string; row: number }>(things: readonly T[]): ReadonlyMap<string, T> {
  return new Map(things.map((thing) => [keyOf(thing), thing]));
}

function keyOf(place: { sheet: string; row: number }): string {
  return `${place.row} ${place.sheet}`;
}
