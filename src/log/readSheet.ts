import { isBlank, type Sheet, type SheetRow } from "../sheet/sheet";
import type { Mixture } from "../gas/mixture";
import { withHelium } from "./cells/mix";
import { ColumnReader } from "./columnReader";
import { proposeColumns, type ColumnProposal } from "./columns";
import type { LogContext } from "./context";
import { CYLINDER_FIELDS, CYLINDER_KINDS, FILL_FIELDS, FILL_KINDS, KINDS } from "./fieldKinds";
import type {
  Cylinder,
  CylinderFields,
  Field,
  Fill,
  FillFields,
  LogColumn,
  LogSheet,
  RowKind,
  SheetKind,
  UnreadableRow,
} from "./log";
import { BLANK, type Reading } from "./reading";
import { namesTotals, saysSomething } from "./rows";
import { settleColumns, type SettledColumn } from "./settle";
import { findHead, type TableHead } from "./table";

export interface SheetReading {
  readonly sheet: LogSheet;
  readonly fills: readonly Fill[];
  readonly cylinders: readonly Cylinder[];
  readonly unreadable: readonly UnreadableRow[];
}

/** Fields that make a row a fill, and fields that make it a cylinder, when enough of them are there. */
const FILL_ONLY = FILL_FIELDS.filter((field) => !Object.hasOwn(CYLINDER_KINDS, field));
const CYLINDER_ONLY = CYLINDER_FIELDS.filter((field) => !Object.hasOwn(FILL_KINDS, field));
const CORE_OF_FILL: readonly Field[] = [
  "date",
  "serial",
  "shopNumber",
  "startPressure",
  "endPressure",
  "settledPressure",
  "startMix",
  "orderedMix",
  "analysedMix",
  "method",
];

const NO_FILL_FIELDS = Object.fromEntries(
  FILL_FIELDS.map((field) => [field, BLANK]),
) as unknown as FillFields;
const NO_CYLINDER_FIELDS = Object.fromEntries(
  CYLINDER_FIELDS.map((field) => [field, BLANK]),
) as unknown as CylinderFields;

/** Reads one sheet: finds its headings, settles its columns, and gives every row its kind. */
export function readSheet(sheet: Sheet, context: LogContext): SheetReading {
  const head = findHead(sheet);
  const proposals = head ? proposeColumns(sheet, head) : [];
  const kind = sheetKind(proposals);
  if (!head || kind === "neither") return neither(sheet, proposals);

  const settled = settleColumns(sheet, head.lastRow + 1, proposals, context);
  const readers = proposals.flatMap((proposal) => {
    const settings = settled.get(proposal.column)?.settings;
    return proposal.field && settings && !proposal.further
      ? [new ColumnReader(proposal.column, proposal.field, KINDS[proposal.field], settings, sheet.dateSystem)]
      : [];
  });
  const rowKinds: RowKind[] = [];
  const fills: Fill[] = [];
  const cylinders: Cylinder[] = [];
  const unreadable: UnreadableRow[] = [];
  sheet.rows.forEach((row, at) => {
    if (isBlankRow(row)) return void rowKinds.push("blank");
    if (at <= head.lastRow) return void rowKinds.push("heading");
    const place = { sheet: sheet.name, row: at };
    const readings: { [field in Field]?: Reading<unknown> } = {};
    for (const reader of readers) {
      readings[reader.field] = reader.read(row.values[reader.column], row.formats?.[reader.column]);
    }
    const rowKind = kindOf(row, readings, kind, head);
    rowKinds.push(rowKind);
    if (rowKind === "fill") fills.push(fillOf(place, readings, kind));
    if (rowKind === "cylinder") cylinders.push(cylinderOf(place, readings));
    if (rowKind === "unreadable") unreadable.push(unreadableRow(place, row, readers, readings));
  });
  return {
    sheet: {
      name: sheet.name,
      kind,
      columns: proposals.map((proposal) => columnOf(proposal, settled.get(proposal.column))),
      rowKinds,
      hiddenRows: sheet.rows.filter((row) => row.hidden === true).length,
      headingsChanged: false,
      source: sheet,
    },
    fills,
    cylinders,
    unreadable,
  };
}

function sheetKind(proposals: readonly ColumnProposal[]): SheetKind {
  const has = (fields: readonly Field[]): number =>
    fields.filter((field) => proposals.some((proposal) => proposal.field === field)).length;
  const named = has(["serial", "shopNumber"]) > 0;
  const ofFill = has(
    FILL_ONLY.filter(
      (field) => field !== "price" && field !== "remarks" && field !== "number" && field !== "source",
    ),
  );
  const ofCylinder = has(CYLINDER_ONLY);
  const gas = has([
    "startPressure",
    "endPressure",
    "settledPressure",
    "startMix",
    "orderedMix",
    "analysedMix",
    "method",
  ]);
  if (gas > 0 && ofFill >= 2)
    return has(["hydro", "visual", "oxygenService", "oxygenCleaned"]) > 0 ? "flat" : "fills";
  if (named && ofCylinder > 0) return "register";
  return named && has(["date"]) > 0 && ofFill >= 2 ? "fills" : "neither";
}

function neither(sheet: Sheet, proposals: readonly ColumnProposal[]): SheetReading {
  const unreadable: UnreadableRow[] = [];
  const rowKinds = sheet.rows.map((row, at): RowKind => {
    if (isBlankRow(row)) return "blank";
    if (row.values.every((value) => isBlank(value) || typeof value === "string")) return "heading";
    const column = row.values.findIndex((value) => !isBlank(value));
    unreadable.push({
      sheet: sheet.name,
      row: at,
      column,
      why: "This sheet holds neither fills nor cylinders, by its headings.",
    });
    return "unreadable";
  });
  const found: LogSheet = {
    name: sheet.name,
    kind: "neither",
    why: `The headings of “${sheet.name}” are those of neither fills nor cylinders. Say what its columns are, or leave it out.`,
    columns: proposals.map((proposal) => columnOf(proposal, undefined)),
    rowKinds,
    hiddenRows: sheet.rows.filter((row) => row.hidden === true).length,
    headingsChanged: false,
    source: sheet,
  };
  return { sheet: found, fills: [], cylinders: [], unreadable };
}

function kindOf(
  row: SheetRow,
  readings: { readonly [field in Field]?: Reading<unknown> },
  kind: SheetKind,
  head: TableHead,
): RowKind {
  const texts = row.values.filter((value): value is string => typeof value === "string" && !isBlank(value));
  const said = row.values.filter((value) => !isBlank(value)).length;
  if (kind === "register") {
    if (saysSomething(readings.serial) || saysSomething(readings.shopNumber)) {
      if (said > 1 && !repeatsHeadings(row, head)) return "cylinder";
    }
  } else {
    const core = CORE_OF_FILL.filter((field) => saysSomething(readings[field])).length;
    if (core >= 2 && readings.date?.kind === "value") return "fill";
    if (core >= 2 && !texts.some(namesTotals) && !repeatsHeadings(row, head)) return "fill";
  }
  if (texts.some(namesTotals)) return "totals";
  if (repeatsHeadings(row, head)) return "heading";
  if (said === 1 && texts.length === 1) return "heading";
  if (kind === "register" && readings.serial?.kind === "unreadable" && said > 2) return "cylinder";
  return "unreadable";
}

function repeatsHeadings(row: SheetRow, head: TableHead): boolean {
  const headings = head.meanings.filter((meaning) => meaning.heading !== "").length;
  const same = row.values.filter(
    (value, column) =>
      typeof value === "string" && value.replace(/\s+/g, " ").trim() === head.meanings[column]?.heading,
  ).length;
  return same >= Math.max(2, headings / 2);
}

function fillOf(
  place: { sheet: string; row: number },
  readings: { readonly [field in Field]?: Reading<unknown> },
  kind: SheetKind,
): Fill {
  const fields: Record<string, Reading<unknown>> = {
    ...(NO_FILL_FIELDS as unknown as Record<string, Reading<unknown>>),
  };
  for (const field of FILL_FIELDS) if (readings[field]) fields[field] = readings[field];
  for (const [mix, helium] of [
    ["startMix", "startHelium"],
    ["orderedMix", "orderedHelium"],
    ["analysedMix", "analysedHelium"],
  ] as const) {
    fields[mix] = withHelium(fields[mix] as Reading<Mixture>, fields[helium] as Reading<number>);
  }
  const fill = { ...place, fields: fields as unknown as FillFields };
  return kind === "flat" ? { ...fill, cylinderInRow: cylinderOf(place, readings) } : fill;
}

function cylinderOf(
  place: { sheet: string; row: number },
  readings: { readonly [field in Field]?: Reading<unknown> },
): Cylinder {
  const fields: Record<string, Reading<unknown>> = {
    ...(NO_CYLINDER_FIELDS as unknown as Record<string, Reading<unknown>>),
  };
  for (const field of CYLINDER_FIELDS) if (readings[field]) fields[field] = readings[field];
  return { ...place, fields: fields as unknown as CylinderFields };
}

function unreadableRow(
  place: { sheet: string; row: number },
  row: SheetRow,
  readers: readonly ColumnReader[],
  readings: { readonly [field in Field]?: Reading<unknown> },
): UnreadableRow {
  for (const { field, column } of readers) {
    const reading = readings[field];
    if (reading?.kind === "unreadable") return { ...place, column, why: reading.why };
  }
  const column = Math.max(
    0,
    row.values.findIndex((value) => !isBlank(value)),
  );
  return { ...place, column, why: "Too little stands in this row to know a fill or a cylinder by." };
}

function columnOf(proposal: ColumnProposal, settled: SettledColumn | undefined): LogColumn {
  const kind = proposal.field && KINDS[proposal.field];
  const settings = settled?.settings;
  const unit =
    kind === "pressure"
      ? settings?.pressure.unit
      : kind === "temperature"
        ? settings?.temperatureUnit
        : kind === "depth"
          ? settings?.depthUnit
          : undefined;
  return {
    column: proposal.column,
    heading: proposal.meaning.heading,
    field: proposal.field,
    unit,
    confidence: proposal.field ? Number(proposal.confidence.toFixed(2)) : 0,
    examples: proposal.sample.cells
      .slice(0, 3)
      .map(({ value }) => (typeof value === "object" ? value.error : String(value))),
    ...(settled?.question ? { question: settled.question } : {}),
  };
}

function isBlankRow(row: SheetRow): boolean {
  for (const value of row.values) if (!isBlank(value)) return false;
  return true;
}
