import type { CellValue, Workbook } from "exceljs";
import { dress, page } from "./look";

/** A row of the board: what it says, and for each order a value or a formula of ours in terms of the rows above it. */
interface BoardRow {
  readonly label: string;
  readonly answer?: true;
  readonly format?: string;
  of(cell: string, order: Order): CellValue;
}

interface Order {
  readonly customer: string;
  readonly startPsi: number;
  readonly startMix: string;
  readonly endPsi: number;
  readonly mix: string;
}

/** Orders for the day after the log ends. */
const ORDERS: readonly Order[] = [
  { customer: "C-019", startPsi: 500, startMix: "EAN32", endPsi: 3000, mix: "EAN32" },
  { customer: "C-031", startPsi: 800, startMix: "air", endPsi: 3440, mix: "EAN36" },
  { customer: "C-007", startPsi: 400, startMix: "TX 18/45", endPsi: 2640, mix: "TX 18/45" },
  { customer: "C-044", startPsi: 0, startMix: "air", endPsi: 2900, mix: "EAN50" },
];

const FIRST_ROW = 4;

const ROWS: readonly BoardRow[] = [
  { label: "For", of: (_, { customer }) => customer },
  { label: "Gauge now (psi)", format: "#,##0", of: (_, { startPsi }) => startPsi },
  { label: "In it now", of: (_, { startMix }) => startMix },
  { label: "Wanted (psi)", format: "#,##0", of: (_, { endPsi }) => endPsi },
  { label: "Wanted", of: (_, { mix }) => mix },
  {
    label: "Helium to",
    answer: true,
    format: "#,##0",
    of: (cell) => ours(`STOPAT("helium",${cell[0]}5,${cell[0]}6,${cell[0]}7,${cell[0]}8,"psi")`, cell),
  },
  {
    label: "Oxygen to",
    answer: true,
    format: "#,##0",
    of: (cell) => ours(`STOPAT("oxygen",${cell[0]}5,${cell[0]}6,${cell[0]}7,${cell[0]}8,"psi")`, cell),
  },
  {
    label: "Then air to",
    answer: true,
    format: "#,##0",
    of: (cell) => ours(`STOPAT("top",${cell[0]}5,${cell[0]}6,${cell[0]}7,${cell[0]}8,"psi")`, cell),
  },
  {
    label: "Only topped with air: O2 %",
    answer: true,
    format: "0.0",
    of: (cell) => ours(`MIXAFTER(${cell[0]}5,${cell[0]}6,${cell[0]}7,"air","psi")`, cell),
  },
  { label: "MOD (ft)", answer: true, format: "0", of: (cell) => ours(`MOD(${cell[0]}8,"ft")`, cell) },
];

/** A sheet beside the log on which the day's blends are worked out by our own functions. */
export function writeBlendBoard(workbook: Workbook): void {
  const sheet = workbook.addWorksheet("Blend board", {
    views: [{ showGridLines: false }],
    pageSetup: page("1:2"),
  });
  const columns = ORDERS.length + 1;
  sheet.getColumn(1).width = 26;
  ORDERS.forEach((_, at) => (sheet.getColumn(at + 2).width = 13));
  sheet.getCell(1, 1).value = "Blend board";
  dress(sheet, 1, columns, "title");
  sheet.getCell(2, 1).value = "A plan, not a measurement: every cylinder is analysed. Stops hold at 70 °F.";
  dress(sheet, 2, columns, "note");
  ROWS.forEach(({ label, answer, format, of }, at) => {
    const row = FIRST_ROW + at;
    dress(sheet, row, columns, answer ? "answer" : "plain");
    dress(sheet, row, 1, "label");
    sheet.getCell(row, 1).value = label;
    ORDERS.forEach((order, nth) => {
      const cell = sheet.getCell(row, nth + 2);
      cell.value = of(cell.address, order);
      cell.alignment = { horizontal: "right" };
      if (format !== undefined) cell.numFmt = format;
    });
  });
  const steps = FIRST_ROW + ROWS.length + 1;
  sheet.getCell(steps, 1).value = "Step by step, for the trimix";
  dress(sheet, steps, columns, "section");
  const spill = `A${steps + 1}:D${steps + 4}`;
  sheet.getCell(steps + 1, 1).value = ours('FILLSTEPS(D5,D6,D7,D8,"psi")', spill);
  sheet.getCell(steps + 7, 1).value = "How the oxygen stop of the second order came about";
  dress(sheet, steps + 7, columns, "section");
  const why = sheet.getCell(steps + 8, 1);
  why.value = ours('WHY("STOPAT","oxygen",C5,C6,C7,C8,"psi")', why.address);
}

/** One of our functions as Excel stores it: with the prefix of add-ins, as an array formula over these cells. */
function ours(call: string, cells: string): CellValue {
  const formula = { formula: `_xldudf_BRIM_${call}`, shareType: "array", ref: cells };
  return formula as CellValue;
}
