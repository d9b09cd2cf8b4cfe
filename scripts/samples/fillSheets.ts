import type { Workbook, Worksheet } from "exceljs";
import { asCell, dateCell, isoOf, MONTHS, type Written } from "./cells";
import type { FillColumn, SampleFill } from "./fills";
import { dress, page } from "./look";
import type { Mess } from "./mess";

interface FillColumnLayout {
  readonly column: FillColumn;
  /** The upper of the two heading rows, merged over equal neighbours; without one the heading takes both rows. */
  readonly group?: string;
  readonly heading: string;
  readonly width: number;
  readonly format?: string;
}

const COLUMNS: readonly FillColumnLayout[] = [
  { column: "number", group: "Fill", heading: "No.", width: 6 },
  { column: "date", group: "Fill", heading: "Date", width: 11 },
  { column: "time", group: "Fill", heading: "Time", width: 8 },
  { column: "serial", group: "Cylinder", heading: "Serial", width: 18 },
  { column: "customer", group: "Cylinder", heading: "Customer", width: 10 },
  { column: "check", heading: "External check", width: 10 },
  { column: "startPsi", group: "Start", heading: "psi", width: 8, format: "#,##0" },
  { column: "startMix", group: "Start", heading: "mix", width: 10 },
  { column: "orderedMix", group: "Ordered", heading: "mix", width: 11 },
  { column: "method", heading: "Method", width: 15 },
  { column: "source", heading: "Source", width: 15 },
  { column: "endPsi", group: "End", heading: "psi", width: 10, format: "#,##0" },
  { column: "temperature", group: "End", heading: "°F", width: 6, format: "0" },
  { column: "oxygen", group: "Analysed", heading: "O2 %", width: 8, format: "0.0" },
  { column: "helium", group: "Analysed", heading: "He %", width: 8, format: "0.0" },
  { column: "analysedBy", group: "Analysed", heading: "by", width: 6 },
  { column: "mod", heading: "MOD (ft)", width: 9, format: "0" },
  { column: "filledBy", heading: "Filled by", width: 8 },
  { column: "received", heading: "Signature", width: 10 },
  { column: "certification", heading: "Cert. no.", width: 10 },
  { column: "remarks", heading: "Remarks", width: 26 },
];

const CENTRED: ReadonlySet<FillColumn> = new Set([
  "time",
  "startMix",
  "orderedMix",
  "analysedBy",
  "filledBy",
  "received",
  "check",
]);

export function fillColumnNumber(column: FillColumn): number {
  return COLUMNS.findIndex((each) => each.column === column) + 1;
}

export interface FillPlace {
  readonly sheet: string;
  /** From 1. */
  readonly row: number;
}

export interface FillLayout {
  readonly sheets: readonly string[];
  readonly placeOf: ReadonlyMap<SampleFill, FillPlace>;
  readonly rows: {
    readonly total: number;
    readonly fills: number;
    readonly blank: number;
    readonly headings: number;
    readonly totals: number;
  };
}

/** Writes a sheet for each month: weeks with their titles, a blank row between them, a total at the end. */
export function writeFills(workbook: Workbook, fills: readonly SampleFill[], mess: Mess): FillLayout {
  const placeOf = new Map<SampleFill, FillPlace>();
  const rows = { total: 0, fills: 0, blank: 0, headings: 0, totals: 0 };
  let number = 4101;
  const months = grouped(fills, ({ day }) => isoOf(day).slice(0, 7));
  const sheets = months.map((ofMonth) => {
    const name = monthName(ofMonth[0]!.day);
    const sheet = startSheet(workbook, name);
    let row = HEADING_ROWS + 1;
    const weeks = grouped(ofMonth, ({ day }) => day - ((day - MONDAY) % 7));
    weeks.forEach((week, nth) => {
      if (nth > 0) row++;
      sheet.getCell(row, 1).value = `Week of ${dayName(week[0]!.day)}`;
      dress(sheet, row++, COLUMNS.length, "section");
      week.forEach((fill, at) => {
        const cells = {
          ...plainly(fill, number++),
          time: timeIn(week, at),
          ...mess.of(fill, week[at - 1]),
          ...fill.written,
        };
        writeFill(sheet, row, cells);
        placeOf.set(fill, { sheet: name, row: row++ });
      });
    });
    sheet.getCell(row, 1).value = "Total";
    sheet.getCell(row, fillColumnNumber("customer")).value = `${ofMonth.length} fills`;
    dress(sheet, row, COLUMNS.length, "total");
    rows.headings += HEADING_ROWS + weeks.length;
    rows.blank += weeks.length - 1;
    rows.fills += ofMonth.length;
    rows.totals += 1;
    rows.total += row;
    return name;
  });
  return { sheets, placeOf, rows };
}

/** Title, note, and two rows of headings. */
const HEADING_ROWS = 4;
/** Spreadsheets count from a Saturday, 30 December 1899: day 2 was a Monday. */
const MONDAY = 2;

function grouped(
  fills: readonly SampleFill[],
  by: (fill: SampleFill) => unknown,
): readonly (readonly SampleFill[])[] {
  const keys = [...new Set(fills.map(by))];
  return keys.map((key) => fills.filter((fill) => by(fill) === key));
}

function monthName(day: number): string {
  const [year, month] = isoOf(day).split("-");
  return `${MONTHS[Number(month) - 1]} ${year}`;
}

function dayName(day: number): string {
  const [, month, date] = isoOf(day).split("-");
  return `${MONTHS[Number(month) - 1]} ${Number(date)}`;
}

/** The fills of a day are spread over its opening hours, nine to five. */
function timeIn(week: readonly SampleFill[], at: number): Written {
  const ofDay = week.filter(({ day }) => day === week[at]?.day);
  const nth = ofDay.indexOf(week[at]!);
  const minute = 9 * 60 + Math.floor((8 * 60 * (nth + 0.5)) / ofDay.length);
  return { value: minute / 1440, format: "h:mm" };
}

function startSheet(workbook: Workbook, name: string): Worksheet {
  const sheet = workbook.addWorksheet(name, {
    views: [{ state: "frozen", ySplit: 4 }],
    pageSetup: page("3:4"),
  });
  COLUMNS.forEach(({ width }, at) => (sheet.getColumn(at + 1).width = width));
  sheet.getCell(1, 1).value = `Gannet Point Dive Works: fill log, ${name}`;
  dress(sheet, 1, COLUMNS.length, "title");
  sheet.getCell(2, 1).value =
    "Pressures in psi as read, cold. Every nitrox and trimix fill is analysed before it leaves.";
  dress(sheet, 2, COLUMNS.length, "note");
  COLUMNS.forEach(({ group, heading }, at) => {
    if (group === undefined) {
      sheet.getCell(3, at + 1).value = heading;
      sheet.mergeCells(3, at + 1, 4, at + 1);
      return;
    }
    sheet.getCell(4, at + 1).value = heading;
    if (COLUMNS[at - 1]?.group === group) return;
    sheet.getCell(3, at + 1).value = group;
    const last = COLUMNS.findLastIndex((each) => each.group === group);
    if (last > at) sheet.mergeCells(3, at + 1, 3, last + 1);
  });
  dress(sheet, 3, COLUMNS.length, "group");
  dress(sheet, 4, COLUMNS.length, "heading");
  return sheet;
}

function writeFill(sheet: Worksheet, row: number, cells: Record<FillColumn, Written>): void {
  dress(sheet, row, COLUMNS.length, "plain");
  COLUMNS.forEach(({ column, format: usual }, at) => {
    const { value, format = usual } = asCell(cells[column]);
    const cell = sheet.getCell(row, at + 1);
    cell.value = value;
    if (format !== undefined && typeof value === "number") cell.numFmt = format;
    if (usual !== undefined) cell.alignment = { horizontal: "right" };
    if (CENTRED.has(column)) cell.alignment = { horizontal: "center" };
  });
}

/** Where the gas on top comes from. */
const SOURCES: Readonly<Record<Exclude<SampleFill["recipe"]["method"], "bank">, string>> = {
  air: "Air bank",
  continuous: "Compressor",
  "partial pressure": "Clean air bank",
};

/** A fill as it is written when nobody is in a hurry. */
function plainly(
  { day, cylinders, recipe, startPsi, endPsi, oxygen }: SampleFill,
  number: number,
): Record<FillColumn, Written> {
  const enriched = recipe.mix !== "air";
  const [first] = cylinders;
  return {
    number,
    date: dateCell(isoOf(day)),
    time: null,
    serial: cylinders.map(({ serial }) => serial).join(" / "),
    customer: first?.owner === "Shop" ? null : (first?.owner ?? null),
    startPsi,
    startMix: recipe.mix,
    orderedMix: recipe.mix,
    method: recipe.method,
    endPsi,
    oxygen: enriched ? oxygen : null,
    helium: recipe.helium > 0 ? recipe.helium : null,
    analysedBy: enriched ? (number % 2 === 0 ? "R." : "T.") : null,
    // 33 ft of salt water to the ata, at 1.4; for labels rounded down.
    mod: enriched ? Math.floor(33 * (140 / oxygen - 1) + 1e-9) : null,
    filledBy: number % 3 === 0 ? "T." : "R.",
    received: enriched ? "signed" : null,
    check: "ok",
    source: recipe.method === "bank" ? `Bank ${recipe.oxygen}` : SOURCES[recipe.method],
    certification: enriched ? `N-${1000 + ((number * 37) % 9000)}` : null,
    // Left to cool, or taken warm from the whip: what is warm settles lower.
    temperature: number % 3 === 0 ? 70 + (number % 14) : null,
    remarks: null,
  };
}
