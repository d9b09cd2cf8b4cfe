import { cellName, columnLetters, NEVER_CALCULATED, type Area, type CellValue } from "../../../sheet/sheet";
import { WorkbookProblem } from "../../workbook";
import type { CellOrigin, ColumnContent, RowContent, SheetContent } from "../content";
import { escapeXml } from "../xml";
import { isDynamic, storedFormula } from "./formulas";
import { areaName, RELATIONS, SPREADSHEET } from "./names";
import type { SheetReport } from "./reportParts";
import { escapeControls } from "./sharedStrings";
import { listsXml } from "./listsXml";
import { conditionsXml, marksXml } from "./marksXml";
import type { StyleNumbers } from "./stylesXml";

const MOST_CHARACTERS = 32_767;
const DEFAULT_WIDTH = 9.140625;
export const ROWS_PER_PIECE = 200;
/** The errors that a file may hold; programs with more of them store another in their place. */
const STORED_ERRORS = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"]);

/** The texts of all sheets, by number. */
export class TextNumbers {
  private readonly numbers = new Map<string, number>();

  numberOf(text: string): number {
    const known = this.numbers.get(text);
    if (known !== undefined) return known;
    this.numbers.set(text, this.numbers.size);
    return this.numbers.size - 1;
  }

  *xml(): Generator<string> {
    yield `<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" uniqueCount="${this.numbers.size}">`;
    let piece = "";
    for (const text of this.numbers.keys()) {
      piece += `<si><t xml:space="preserve">${escapeXml(escapeControls(text))}</t></si>`;
      if (piece.length > 64 * 1024) {
        yield piece;
        piece = "";
      }
    }
    yield `${piece}</sst>`;
  }
}

/** What the sheets of one workbook share, and what the workbook has to know of them. */
export interface BookNumbers {
  readonly styles: StyleNumbers;
  readonly texts: TextNumbers;
  /** A formula without an answer was written: whoever opens the file must calculate. */
  needsCalculation: boolean;
}

/** A sheet's part, piece by piece (ECMA-376 part 1, 18.3; the order of its elements is fixed). */
export function* sheetXml(
  sheet: SheetContent,
  shown: boolean,
  book: BookNumbers,
  report?: SheetReport,
): Generator<string> {
  yield (
    `<worksheet xmlns="${SPREADSHEET}"${report ? ` xmlns:r="${RELATIONS}"` : ""}>${report?.head ?? ""}` +
    `<sheetViews><sheetView${sheet.report ? ` showGridLines="0"` : ""}${shown ? ` tabSelected="1"` : ""} workbookViewId="0">${paneXml(sheet)}</sheetView></sheetViews>` +
    `<sheetFormatPr defaultRowHeight="15"/>${columnsXml(sheet.columns)}<sheetData>`
  );
  let piece = "";
  for (const [index, row] of sheet.rows.entries()) {
    piece += rowXml(row, index, sheet.name, book);
    if (index % ROWS_PER_PIECE === 0) {
      yield piece;
      piece = "";
    }
  }
  yield `${piece}</sheetData>${mergesXml(sheet.merges)}${marksXml(sheet.marks ?? [], book.styles)}${conditionsXml(sheet.report?.conditions ?? [], book.styles)}${listsXml(sheet.report?.lists ?? [])}${report?.tail ?? ""}</worksheet>`;
}

function paneXml({ frozenRows, frozenColumns }: SheetContent): string {
  if (frozenRows === 0 && frozenColumns === 0) return "";
  const pane = frozenRows === 0 ? "topRight" : frozenColumns === 0 ? "bottomLeft" : "bottomRight";
  return (
    `<pane${frozenColumns ? ` xSplit="${frozenColumns}"` : ""}${frozenRows ? ` ySplit="${frozenRows}"` : ""}` +
    ` topLeftCell="${cellName({ row: frozenRows, column: frozenColumns })}" activePane="${pane}" state="frozen"/>` +
    `<selection pane="${pane}"/>`
  );
}

function columnsXml(columns: readonly (ColumnContent | undefined)[]): string {
  const entries = columns.map((column, index) => {
    if (!column || (column.widthCharacters === undefined && !column.hidden)) return "";
    const width = column.widthCharacters ?? DEFAULT_WIDTH;
    const custom = column.widthCharacters === undefined ? "" : ` customWidth="1"`;
    return `<col min="${index + 1}" max="${index + 1}" width="${width}"${column.hidden ? ` hidden="1"` : ""}${custom}/>`;
  });
  const written = entries.join("");
  return written && `<cols>${written}</cols>`;
}

function mergesXml(merges: readonly Area[]): string {
  const areas = merges.map(areaName).filter((name) => name.includes(":"));
  if (areas.length === 0) return "";
  return `<mergeCells count="${areas.length}">${areas.map((area) => `<mergeCell ref="${area}"/>`).join("")}</mergeCells>`;
}

function rowXml(row: RowContent, index: number, sheet: string, book: BookNumbers): string {
  const width = Math.max(row.values.length, row.styles?.length ?? 0, row.formats?.length ?? 0);
  let cells = "";
  for (let column = 0; column < width; column++) {
    const value = row.values[column] ?? null;
    const origin = row.origins?.[column];
    const look = book.styles.numberOf(row.styles?.[column], row.formats?.[column]);
    if (value === null && origin === undefined && look === 0) continue;
    const name = `${columnLetters(column)}${index + 1}`;
    cells += cellXml(name, value, origin, look, sheet, book);
  }
  const measures =
    (row.heightPt === undefined ? "" : ` ht="${row.heightPt}" customHeight="1"`) +
    (row.hidden ? ` hidden="1"` : "");
  return cells || measures ? `<row r="${index + 1}"${measures}>${cells}</row>` : "";
}

function cellXml(
  name: string,
  value: CellValue,
  origin: CellOrigin | undefined,
  look: number,
  sheet: string,
  book: BookNumbers,
): string {
  if (typeof value === "string" && value.length > MOST_CHARACTERS) {
    throw new WorkbookProblem(
      `Cell ${name} of “${sheet}” holds ${value.length.toLocaleString("en-US")} characters, and an .xlsx cell holds ` +
        `${MOST_CHARACTERS.toLocaleString("en-US")}: shorten it, then save again.`,
    );
  }
  const head = `<c r="${name}"${look ? ` s="${look}"` : ""}`;
  if (origin === undefined || origin === "spill") {
    const { type, text } = storedValue(value, (content) => ({
      type: "s",
      text: String(book.texts.numberOf(content)),
    }));
    return text === "" ? `${head}/>` : `${head}${type && ` t="${type}"`}><v>${text}</v></c>`;
  }
  const isAnswered = value !== null && !(typeof value === "object" && value.error === NEVER_CALCULATED);
  if (!isAnswered) book.needsCalculation = true;
  const answer = storedAnswer(isAnswered ? value : null);
  const array = origin.fills !== undefined || isDynamic(origin.formula);
  const formula =
    `<f${array ? ` t="array" ref="${origin.fills ? areaName(origin.fills) : name}"` : ""}>` +
    `${escapeXml(storedFormula(origin.formula))}</f>`;
  return (
    `${head}${answer.type && ` t="${answer.type}"`}${array ? ` cm="1"` : ""}>${formula}` +
    `${isAnswered ? `<v>${answer.text}</v>` : ""}</c>`
  );
}

interface StoredValue {
  readonly type: string;
  readonly text: string;
}

function storedValue(value: CellValue, storedText: (text: string) => StoredValue): StoredValue {
  if (value === null || value === "") return { type: "", text: "" };
  if (typeof value === "boolean") return { type: "b", text: value ? "1" : "0" };
  if (typeof value === "string") return storedText(value);
  if (typeof value === "number") {
    return Number.isFinite(value) ? { type: "", text: String(value) } : { type: "e", text: "#NUM!" };
  }
  return STORED_ERRORS.has(value.error) ? { type: "e", text: value.error } : storedText(value.error);
}

/** A formula's answer; an error that files do not know stands as the commonest, until it is calculated anew. */
function storedAnswer(value: CellValue): StoredValue {
  if (value === "") return { type: "str", text: "" };
  if (value !== null && typeof value === "object" && !STORED_ERRORS.has(value.error)) {
    return { type: "e", text: "#VALUE!" };
  }
  return storedValue(value, (text) => ({ type: "str", text: escapeXml(escapeControls(text)) }));
}
