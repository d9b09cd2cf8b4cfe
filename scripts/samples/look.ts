import type { Borders, Fill, Font, PageSetup, Worksheet } from "exceljs";

/** Colours of the sample: a petrol blue over sand. */
const PETROL = "FF14505C";
const PETROL_LIGHT = "FFDCE9EB";
const SAND = "FFF1EDE4";
const INK = "FF2B2B2B";

const solid = (argb: string): Fill => ({ type: "pattern", pattern: "solid", fgColor: { argb } });
const font = (told: Partial<Font> = {}): Partial<Font> => ({
  name: "Calibri",
  size: 11,
  color: { argb: INK },
  ...told,
});
const line = (argb: string): Partial<Borders> => ({ bottom: { style: "thin", color: { argb } } });

/** Across the page, all columns on one, the headings on each. */
export function page(headingRows: string): Partial<PageSetup> {
  return {
    orientation: "landscape",
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: 0,
    printTitlesRow: headingRows,
  };
}

export type Look =
  "title" | "note" | "group" | "heading" | "section" | "total" | "label" | "answer" | "plain";

/** Room for a title, which no spreadsheet but Excel makes by itself. */
const TITLE_POINTS = 24;

/** Gives the cells of a row, from the first to the last column, one look. */
export function dress(sheet: Worksheet, row: number, columns: number, look: Look): void {
  if (look === "title") sheet.getRow(row).height = TITLE_POINTS;
  for (let column = 1; column <= columns; column++) {
    const cell = sheet.getCell(row, column);
    switch (look) {
      case "title":
        cell.font = font({ size: 16, bold: true, color: { argb: PETROL } });
        break;
      case "note":
        cell.font = font({ italic: true, color: { argb: "FF6B6B6B" } });
        break;
      case "group":
      case "heading":
        cell.fill = solid(look === "group" ? PETROL : PETROL_LIGHT);
        cell.font = font({ bold: true, color: { argb: look === "group" ? "FFFFFFFF" : PETROL } });
        cell.alignment = { horizontal: "center", vertical: "middle", wrapText: true };
        cell.border = line(PETROL);
        break;
      case "section":
        cell.fill = solid(SAND);
        cell.font = font({ bold: true });
        break;
      case "total":
        cell.font = font({ bold: true });
        cell.border = { top: { style: "thin", color: { argb: PETROL } } };
        break;
      case "label":
        cell.fill = solid(SAND);
        cell.font = font({ bold: true });
        break;
      case "answer":
        cell.fill = solid(PETROL_LIGHT);
        cell.font = font({ bold: true, color: { argb: PETROL } });
        cell.alignment = { horizontal: "right" };
        break;
      case "plain":
        cell.font = font();
    }
  }
}
