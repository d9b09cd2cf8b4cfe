import ExcelJS from "exceljs";
import { asCell, dateCell, isoOf, serialOf, type Written } from "./cells";
import { Chance } from "./chance";
import type { PlantedFault, PlantedLack, SampleKey } from "./key";
import { dress, page } from "./look";
import { COLUMNS, SkerryPlanter, type SkerryColumn, type SkerryFill } from "./skerryPlanted";

const SHEET = "Fill book";
const FIRST_DAY = serialOf("2026-03-01");
const LAST_DAY = serialOf("2026-10-31");
const SOUND_FILLS = 110;

/** Skerry Bay, an invented club: one sheet for fills and cylinders together, metric, UK rules. */
export function skerryBay(): { readonly workbook: ExcelJS.Workbook; readonly key: SampleKey } {
  const chance = new Chance(20_261_031);
  const planter = new SkerryPlanter(chance);
  planter.plant();
  planter.sound(SOUND_FILLS, FIRST_DAY, LAST_DAY);
  const fills = [...planter.fills].sort((one, other) => one.day - other.day);

  const workbook = new ExcelJS.Workbook();
  workbook.creator = "Skerry Bay Divers";
  workbook.created = workbook.modified = new Date(Date.UTC(2026, 9, 31));
  write(workbook, fills);
  return { workbook, key: keyOf(fills) };
}

const HEADING_ROW = 2;
const rowOf = (at: number): number => HEADING_ROW + 1 + at;

function write(workbook: ExcelJS.Workbook, fills: readonly SkerryFill[]): void {
  const sheet = workbook.addWorksheet(SHEET, {
    views: [{ state: "frozen", ySplit: HEADING_ROW, xSplit: 2 }],
    pageSetup: page(`${HEADING_ROW}:${HEADING_ROW}`),
  });
  sheet.getCell(1, 1).value = "Skerry Bay Divers: fill book";
  dress(sheet, 1, COLUMNS.length, "title");
  COLUMNS.forEach(({ heading, width }, at) => {
    sheet.getCell(HEADING_ROW, at + 1).value = heading;
    sheet.getColumn(at + 1).width = width;
  });
  dress(sheet, HEADING_ROW, COLUMNS.length, "heading");
  sheet.getRow(HEADING_ROW).height = 32;
  fills.forEach(({ day, cells }, nth) => {
    dress(sheet, rowOf(nth), COLUMNS.length, "plain");
    COLUMNS.forEach(({ column }, at) => {
      const written: Written = column === "date" ? dateCell(isoOf(day), "dd/mm/yyyy") : cells[column];
      const { value, format } = asCell(written);
      const cell = sheet.getCell(rowOf(nth), at + 1);
      cell.value = value;
      if (format !== undefined) cell.numFmt = format;
    });
  });
}

/** Rules for which the book has no column, or nobody has told what they ask for. */
const WITHOUT_COLUMN: readonly (readonly [why: string, ...rules: string[]])[] = [
  ["no air test is on record", "A01", "A02"],
  ["the log has no column for source", "A03", "O03"],
  ["the log has no column for certification", "G05", "G10"],
  ["the log has no column for analysed by", "G09"],
  ["the log has no column for class", "O09", "V12", "V13"],
  ["the log has no column for class or material", "V04"],
  ["the log has no column for class or material or alloy", "V05"],
  ["the log has no column for consent", "R09"],
  ["the log has no column for status", "V02", "V08"],
  ["the log has no column for neck thread", "V14"],
  ["the log has no column for external check", "V18"],
];

function keyOf(fills: readonly SkerryFill[]): SampleKey {
  const place = (nth: number, column: SkerryColumn) => ({
    sheet: SHEET,
    cell: `${String.fromCharCode(65 + COLUMNS.findIndex((each) => each.column === column))}${rowOf(nth)}`,
  });
  const findings = fills.flatMap(({ day, cells, faults }, nth) =>
    faults.map((each): PlantedFault => {
      const [rule = "", severity, column = "serial"] = each.split(" ");
      return {
        rule,
        severity: severity as PlantedFault["severity"],
        ...place(nth, column as SkerryColumn),
        serial: String(cells.serial),
        fillDate: isoOf(day),
      };
    }),
  );
  const lacks = new Map<string, { rule: string; why: string; fills: number; cells: PlantedLack["cells"] }>();
  fills.forEach(({ lacks: said }, nth) => {
    for (const { rules, why, column } of said) {
      for (const rule of rules) {
        const lack = lacks.get(`${rule} ${why}`) ?? { rule, why, fills: 0, cells: [] };
        const cells = column === undefined ? lack.cells : [...lack.cells, place(nth, column)];
        lacks.set(`${rule} ${why}`, { ...lack, fills: lack.fills + 1, cells });
      }
    }
  });
  const whole = WITHOUT_COLUMN.flatMap(([why, ...rules]) =>
    rules.map((rule): PlantedLack => ({ rule, why, fills: fills.length, cells: [] })),
  );
  return {
    about:
      "What is wrong in the sample on purpose, as the script that made it planted it. A check by these rules finds these faults and no other, and cannot judge these fills and no other.",
    file: "skerry-bay.xlsx",
    country: "GB",
    units: "metric",
    asOf: isoOf(LAST_DAY),
    sheets: [SHEET],
    rows: {
      total: fills.length + HEADING_ROW,
      fills: fills.length,
      cylinders: 0,
      blank: 0,
      headings: HEADING_ROW,
      totals: 0,
      unreadable: 0,
    },
    findings,
    notChecked: [...lacks.values(), ...whole],
  };
}
