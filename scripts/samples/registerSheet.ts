import type { Workbook } from "exceljs";
import { asCell, type Written } from "./cells";
import type { SampleCylinder } from "./cylinders";
import type { RegisterColumn } from "./fills";
import { dress, page } from "./look";

interface RegisterColumnLayout {
  readonly column: RegisterColumn;
  readonly heading: string;
  readonly width: number;
  of(cylinder: SampleCylinder): Written;
}

const COLUMNS: readonly RegisterColumnLayout[] = [
  { column: "serial", heading: "Serial", width: 12, of: ({ serial }) => serial },
  { column: "owner", heading: "Owner", width: 9, of: ({ owner }) => owner },
  { column: "size", heading: "Size", width: 8, of: ({ size }) => size },
  { column: "class", heading: "Class", width: 14, of: ({ cylinderClass }) => cylinderClass },
  { column: "alloy", heading: "Alloy", width: 8, of: ({ alloy }) => alloy },
  { column: "made", heading: "Made", width: 10, of: ({ made }) => made },
  { column: "servicePsi", heading: "Service psi", width: 10, of: ({ servicePsi }) => servicePsi },
  { column: "hydro", heading: "Last hydro", width: 13, of: ({ hydro }) => hydro },
  { column: "visual", heading: "Last visual", width: 12, of: ({ visual }) => visual },
  { column: "eddy", heading: "Eddy current", width: 12, of: ({ eddy }) => eddy },
  { column: "rating", heading: "O2 rating", width: 12, of: ({ ratingWritten }) => ratingWritten },
  { column: "cleaned", heading: "O2 cleaned", width: 11, of: ({ cleaned }) => cleaned },
  { column: "status", heading: "Status", width: 18, of: ({ status }) => status },
  { column: "remarks", heading: "Remarks", width: 22, of: ({ remarks = null }) => remarks },
];

export const REGISTER = "Cylinders";

export interface RegisterLayout {
  /** The row of each cylinder, from 1. */
  readonly rowOf: ReadonlyMap<SampleCylinder, number>;
  readonly rows: {
    readonly cylinders: number;
    readonly headings: number;
    readonly blank: number;
    readonly total: number;
  };
}

/** Writes the register: the shop's own cylinders, then those of customers. */
export function writeRegister(workbook: Workbook, cylinders: readonly SampleCylinder[]): RegisterLayout {
  const sheet = workbook.addWorksheet(REGISTER, {
    views: [{ state: "frozen", ySplit: 2, xSplit: 1 }],
    pageSetup: page("2:2"),
  });
  COLUMNS.forEach(({ width }, at) => (sheet.getColumn(at + 1).width = width));
  sheet.getCell(1, 1).value = "Gannet Point Dive Works: cylinders";
  dress(sheet, 1, COLUMNS.length, "title");
  COLUMNS.forEach(({ heading }, at) => (sheet.getCell(2, at + 1).value = heading));
  dress(sheet, 2, COLUMNS.length, "heading");
  sheet.getRow(2).height = 20;

  const rowOf = new Map<SampleCylinder, number>();
  let row = 3;
  const section = (title: string, members: readonly SampleCylinder[]): void => {
    sheet.getCell(row, 1).value = title;
    dress(sheet, row++, COLUMNS.length, "section");
    for (const cylinder of members) {
      COLUMNS.forEach(({ of }, at) => {
        const { value, format } = asCell(of(cylinder));
        const cell = sheet.getCell(row, at + 1);
        dress(sheet, row, COLUMNS.length, "plain");
        cell.value = value;
        if (format !== undefined) cell.numFmt = format;
        if (at > 4 && at < 12) cell.alignment = { horizontal: "right" };
      });
      rowOf.set(cylinder, row++);
    }
  };
  section(
    "Shop cylinders",
    cylinders.filter(({ owner }) => owner === "Shop"),
  );
  row++;
  section(
    "Customers' cylinders",
    cylinders.filter(({ owner }) => owner !== "Shop"),
  );
  return { rowOf, rows: { cylinders: cylinders.length, headings: 4, blank: 1, total: row - 1 } };
}

export function registerColumnNumber(column: RegisterColumn): number {
  return COLUMNS.findIndex((each) => each.column === column) + 1;
}
