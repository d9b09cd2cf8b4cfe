import type { Workbook, Worksheet } from "exceljs";
import { asCell, dateCell, isoOf, MONTHS, type Written } from "./cells";
import type { FillColumn, SampleFill } from "./fills";
import { dress } from "./look";
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
  { column: "startPsi", group: "Start", heading: "psi", width: 8, format: "#,##0" },
  { column: "startMix", group: "Start", heading: "mix", width: 10 },
  { column: "orderedMix", group: "Ordered", heading: "mix", width: 11 },
  { column: "method", heading: "Method", width: 15 },
  { column: "endPsi", group: "End", heading: "psi", width: 10, format: "#,##0" },
  { column: "oxygen", group: "Analysed", heading: "O2 %", width: 8, format: "0.0" },
  { column: "helium", group: "Analysed", heading: "He %", width: 8, format: "0.0" },
  { column: "analysedBy", group: "Analysed", heading: "by", width: 6 },
  { column: "mod", heading: "MOD (ft)", width: 9, format: "0" },
  { column: "filledBy", heading: "Filled by", width: 8 },
  { column: "received", heading: "Signature", width: 10 },
  { column: "remarks", heading: "Remarks", width: 26 },
];

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
  const months = [...new Set(fills.map(({ day }) => isoOf(day).slice(0, 7)))];
  let number = 4101;
  const sheets = months.map((month) => {
    const name = `${MONTHS[Number(month.slice(5)) - 1]} ${month.slice(0, 4)}`;
    const sheet = startSheet(workbook, name);
    const ofMonth = fills.filter(({ day }) => isoOf(day).startsWith(month));
    rows.headings += 4;
    let row = 5;
    let week: number | undefined;
    let above: SampleFill | undefined;
    for (const fill of ofMonth) {
      const monday = fill.day - ((fill.day - 2) % 7);
      if (monday !== week) {
        if (week !== undefined) {
          rows.blank += 1;
          row++;
        }
        sheet.getCell(row, 1).value =
          `Week of ${MONTHS[Number(isoOf(monday).slice(5, 7)) - 1]} ${Number(isoOf(monday).slice(8))}`;
        dress(sheet, row++, COLUMNS.length, "section");
        rows.headings += 1;
        week = monday;
        above = undefined;
      }
      writeFill(sheet, row, { ...plainly(fill, number++), ...mess.of(fill, above), ...fill.written });
      placeOf.set(fill, { sheet: name, row: row++ });
      above = fill;
    }
    sheet.getCell(row, 1).value = "Total";
    sheet.getCell(row, fillColumnNumber("customer")).value = `${ofMonth.length} fills`;
    dress(sheet, row, COLUMNS.length, "total");
    rows.fills += ofMonth.length;
    rows.totals += 1;
    rows.total += row;
    return name;
  });
  return { sheets, placeOf, rows };
}

function startSheet(workbook: Workbook, name: string): Worksheet {
  const sheet = workbook.addWorksheet(name, { views: [{ state: "frozen", ySplit: 4 }] });
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
  });
}

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
    time: { value: (9 * 60 + ((number * 37) % 480)) / 1440, format: "h:mm" },
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
    remarks: null,
  };
}
