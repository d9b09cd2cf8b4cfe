import type { Area, CellValue, SheetRow } from "../../sheet/sheet";
import { BLANK_ROW, isBlank } from "../../sheet/sheet";
import type { RowSpan } from "../selectedRows";
import { WorkbookProblem } from "../workbook";
import type { Outline } from "./outline";
import { sheetNamed } from "./outline";
import { errorCode } from "./problems";
import type { Session } from "./session";

/** Cells asked for at once. Values, types and formats of so many stay well under the 5 MB an answer may have. */
const BLOCK_CELLS = 100_000;

const TOO_LARGE = new Set(["ResponsePayloadSizeLimitExceeded", "RangeExceedsLimit"]);

/** All rows of a sheet, up to the last that holds anything. */
export async function readRows(
  session: Session,
  outline: Outline,
  progress: (share: number) => void,
  signal: AbortSignal | undefined,
): Promise<SheetRow[]> {
  const last = outline.used?.lastRow ?? -1;
  const rows = await readSpan(session, outline, { firstRow: 0, lastRow: last }, progress, signal);
  while (rows.length > 0 && rows.at(-1)!.values.every(isBlank)) rows.pop();
  return rows;
}

/** Some rows of a sheet, read in blocks of rows; a block that is too large for Excel is asked for in halves. */
export async function readSpan(
  session: Session,
  outline: Outline,
  { firstRow, lastRow }: RowSpan,
  progress: (share: number) => void = () => undefined,
  signal?: AbortSignal,
): Promise<SheetRow[]> {
  const rows: SheetRow[] = Array.from({ length: lastRow + 1 - firstRow }, () => BLANK_ROW);
  const used = outline.used;
  if (!used) return rows;
  const end = Math.min(used.lastRow, lastRow);
  const begin = Math.max(used.firstRow, firstRow);
  let blockRows = Math.max(1, Math.floor(BLOCK_CELLS / (used.lastColumn + 1 - used.firstColumn)));
  let next = begin;
  while (next <= end) {
    signal?.throwIfAborted();
    const last = Math.min(end, next + blockRows - 1);
    const block = await readBlock(session, outline, { ...used, firstRow: next, lastRow: last });
    signal?.throwIfAborted();
    if (block) {
      for (const row of block) rows[next++ - firstRow] = row;
      progress((next - begin) / (end + 1 - begin));
    } else {
      blockRows = Math.floor((last + 1 - next) / 2);
    }
  }
  return rows;
}

/** The rows of an area, or nothing where several rows are too much for one answer. */
async function readBlock(session: Session, outline: Outline, area: Area): Promise<SheetRow[] | undefined> {
  const rowCount = area.lastRow + 1 - area.firstRow;
  const columnCount = area.lastColumn + 1 - area.firstColumn;
  return session.read(sheetNamed(outline.name), async (context) => {
    const sheet = context.workbook.worksheets.getItem(outline.name);
    const range = sheet.getRangeByIndexes(area.firstRow, area.firstColumn, rowCount, columnCount);
    range.load("values,valueTypes,numberFormat");
    const hidden = outline.someRowsHidden ? range.getRowProperties({ rowHidden: true }) : undefined;
    try {
      await context.sync();
    } catch (error) {
      if (rowCount > 1 && TOO_LARGE.has(errorCode(error) ?? "")) return undefined;
      throw error;
    }
    // Beyond its limit Excel may hand over nothing instead of an error.
    const values = range.values as unknown[][] | null;
    const types = range.valueTypes as string[][] | null;
    const formats = range.numberFormat as (string | null)[][] | null;
    if (!values || !types || !formats) {
      if (rowCount > 1) return undefined;
      throw new WorkbookProblem(
        `Row ${area.firstRow + 1} of ${sheetNamed(outline.name)} is more than Excel hands over at once. ` +
          "Look for cells with very long text and shorten them.",
      );
    }
    return values.map((_, index) =>
      rowOf(
        area.firstColumn,
        values[index]!.map((value, column) => cellValue(value, types[index]![column])),
        formats[index]!,
        hidden?.value[index]?.rowHidden ?? false,
      ),
    );
  });
}

/** A cell as Excel tells of it: empty ones come as empty text, errors as text of the type Error. */
export function cellValue(value: unknown, type: string | undefined): CellValue {
  if (type === "Error") return { error: String(value) };
  return value === "" ? null : (value as CellValue);
}

function rowOf(
  offset: number,
  cells: readonly CellValue[],
  cellFormats: readonly (string | null)[],
  hidden: boolean,
): SheetRow {
  let end = cells.length;
  while (end > 0 && cells[end - 1] === null) end -= 1;
  if (end === 0 && !hidden) return BLANK_ROW;

  const values: CellValue[] = Array.from({ length: end === 0 ? 0 : offset + end }, () => null);
  const formats: (string | undefined)[] = values.map(() => undefined);
  let formatted = false;
  for (let column = 0; column < end; column += 1) {
    const value = cells[column]!;
    values[offset + column] = value;
    const format = cellFormats[column];
    if (value === null || !format || format === "General") continue;
    formats[offset + column] = format;
    formatted = true;
  }
  return { values, ...(formatted && { formats }), ...(hidden && { hidden }) };
}
