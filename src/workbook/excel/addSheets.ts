import { styledAreas } from "../../sheet/draft/areas";
import {
  storedValue,
  styledCell,
  type CellLink,
  type PageDraft,
  type SheetDraft,
  type StyledCell,
} from "../../sheet/draft/draft";
import { cellName, type CellValue } from "../../sheet/sheet";
import { tabNames } from "../../sheet/tabNames";
import { writeCharts } from "./charts";
import { applyStyle } from "./look";
import { rangeOf } from "./ranges";
import type { Session } from "./session";

const ABOUT = "the new sheets";
/** Cells sent at once: well under the 5 MB that a request may have, and soon made. */
const BLOCK_CELLS = 5000;
/** Looks, heights and links sent at once: office.js makes an object of each, and holds the screen while it does. */
const OBJECTS_AT_ONCE = 200;
/** A character of the standard font in points, as Excel counts column widths here. */
const CHARACTER_PT = 5.25;
const MM_PT = 72 / 25.4;
/** Text that Excel would not take for a number, a date, a truth or a formula when it is typed. */
const PLAIN_TEXT = /^(?!true$|false$)\p{L}[^\d]*$/iu;

interface Names {
  readonly sheets: readonly string[];
  readonly tables: Set<string>;
}

/** Writes new sheets into the workbook that is open; takes them out again where one of them fails. */
export async function addSheets(
  session: Session,
  drafts: readonly SheetDraft[],
  dateSystem: 1900 | 1904,
  progress: (share: number) => void,
  signal: AbortSignal | undefined,
): Promise<readonly string[]> {
  signal?.throwIfAborted();
  const taken = await namesIn(session);
  const names = tabNames(
    drafts.map(({ name }) => name),
    taken.sheets,
  );
  let begun = 0;
  try {
    for (const [index, draft] of drafts.entries()) {
      begun = index + 1;
      const name = names[index]!;
      await session.act(ABOUT, (context) =>
        writeSheet(context, name, draft, dateSystem, taken.tables, signal),
      );
      progress(begun / drafts.length);
    }
    await session.act(ABOUT, async (context) => {
      if (names[0] !== undefined) context.workbook.worksheets.getItem(names[0]).activate();
      await context.sync();
    });
  } catch (error) {
    await takeOut(session, names.slice(0, begun));
    throw error;
  }
  return names;
}

function namesIn(session: Session): Promise<Names> {
  return session.read(ABOUT, async (context) => {
    const { worksheets, tables } = context.workbook;
    worksheets.load("items/name");
    tables.load("items/name");
    await context.sync();
    return {
      sheets: worksheets.items.map(({ name }) => name),
      tables: new Set(tables.items.map(({ name }) => name.toLowerCase())),
    };
  });
}

/** What cannot be taken out stays: the first problem is the one to tell. */
async function takeOut(session: Session, names: readonly string[]): Promise<void> {
  await session
    .act(ABOUT, async (context) => {
      const sheets = names.map((name) => context.workbook.worksheets.getItemOrNullObject(name));
      await context.sync();
      for (const sheet of sheets) if (!sheet.isNullObject) sheet.delete();
      await context.sync();
    })
    .catch(() => undefined);
}

async function writeSheet(
  context: Excel.RequestContext,
  name: string,
  draft: SheetDraft,
  dateSystem: 1900 | 1904,
  tablesTaken: Set<string>,
  signal: AbortSignal | undefined,
): Promise<void> {
  const sheet = context.workbook.worksheets.add(name);
  sheet.showGridlines = false;
  await writeCells(context, sheet, draft, dateSystem, signal);
  await writeLook(context, sheet, draft, signal);
  writePage(sheet, draft.page);
  writeTables(sheet, draft, tablesTaken);
  writeCharts(sheet, draft.charts);
  await context.sync();
}

async function writeCells(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  { rows }: SheetDraft,
  dateSystem: 1900 | 1904,
  signal: AbortSignal | undefined,
): Promise<void> {
  const width = Math.max(1, ...rows.map(({ cells }) => cells.length));
  const blockRows = Math.max(1, Math.floor(BLOCK_CELLS / width));
  for (let first = 0; first < rows.length; first += blockRows) {
    const block = rows
      .slice(first, first + blockRows)
      .map(({ cells }) => Array.from({ length: width }, (_blank, column) => styledCell(cells[column])));
    const range = sheet.getRangeByIndexes(first, 0, block.length, width);
    range.numberFormat = block.map((cells) => cells.map(({ format }) => format ?? "General"));
    range.formulas = block.map((cells) => cells.map((cell) => typed(cell, dateSystem)));
    await sent(context);
    signal?.throwIfAborted();
  }
}

/** Excel takes only so much at once. */
async function sent(context: Excel.RequestContext): Promise<void> {
  await context.sync();
}

/** A cell as it would be typed; the apostrophe before a text keeps it a text. */
function typed(cell: StyledCell, dateSystem: 1900 | 1904): string | number | boolean {
  if (cell.formula !== undefined) return `=${cell.formula}`;
  const value: CellValue = storedValue(cell, dateSystem);
  if (value === null) return "";
  if (typeof value === "object") return value.error;
  return typeof value === "string" && !PLAIN_TEXT.test(value) ? `'${value}` : value;
}

async function writeLook(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  draft: SheetDraft,
  signal: AbortSignal | undefined,
): Promise<void> {
  let waiting = 0;
  for (const write of looksOf(sheet, draft)) {
    write();
    if (++waiting % OBJECTS_AT_ONCE > 0) continue;
    await sent(context);
    signal?.throwIfAborted();
  }
}

/** All that a sheet has besides what stands in its cells, one object after another. */
function* looksOf(sheet: Excel.Worksheet, draft: SheetDraft): Generator<() => void> {
  for (const area of draft.merges) yield () => rangeOf(sheet, area).merge(false);
  for (const { style, area } of styledAreas(draft)) yield () => applyStyle(rangeOf(sheet, area), style);
  for (const [column, width] of draft.widths.entries()) {
    if (width === undefined) continue;
    yield () => (sheet.getRangeByIndexes(0, column, 1, 1).format.columnWidth = width * CHARACTER_PT);
  }
  for (const [row, { cells, heightPt }] of draft.rows.entries()) {
    if (heightPt !== undefined)
      yield () => (sheet.getRangeByIndexes(row, 0, 1, 1).format.rowHeight = heightPt);
    for (const [column, cell] of cells.entries()) {
      const { link, value } = styledCell(cell);
      if (link && link.file === undefined) yield () => writeLink(sheet, row, column, link, value);
    }
  }
  if (draft.frozenRows > 0) yield () => sheet.freezePanes.freezeRows(draft.frozenRows);
}

function writeLink(
  sheet: Excel.Worksheet,
  row: number,
  column: number,
  link: CellLink,
  value: CellValue,
): void {
  const place = `'${link.cell.sheet.replaceAll("'", "''")}'!${cellName(link.cell)}`;
  sheet.getRangeByIndexes(row, column, 1, 1).hyperlink = {
    documentReference: place,
    textToDisplay: String(value ?? place),
  };
}

function writeTables(sheet: Excel.Worksheet, { tables }: SheetDraft, taken: Set<string>): void {
  for (const { name, area } of tables) {
    const table = sheet.tables.add(rangeOf(sheet, area), true);
    let free = name;
    for (let n = 2; taken.has(free.toLowerCase()); n++) free = `${name}_${n}`;
    taken.add(free.toLowerCase());
    table.name = free;
    table.style = "TableStyleLight1";
    table.showBandedRows = false;
  }
}

function writePage(
  sheet: Excel.Worksheet,
  { paper, landscape, onePage, titleRows, stock, footer }: PageDraft,
): void {
  const { pageLayout } = sheet;
  pageLayout.orientation = landscape ? "Landscape" : "Portrait";
  pageLayout.paperSize = paper;
  pageLayout.zoom = stock
    ? { scale: 100 }
    : { horizontalFitToPages: 1, ...(onePage && { verticalFitToPages: 1 }) };
  if (stock) {
    pageLayout.leftMargin = stock.leftMm * MM_PT;
    pageLayout.topMargin = stock.topMm * MM_PT;
    pageLayout.rightMargin = 0;
    pageLayout.bottomMargin = 0;
    pageLayout.headerMargin = 0;
    pageLayout.footerMargin = 0;
    return;
  }
  pageLayout.headersFooters.defaultForAllPages.leftFooter = `&8${footer.replaceAll("&", "&&")}`;
  pageLayout.headersFooters.defaultForAllPages.rightFooter = "&8&P / &N";
  if (titleRows) pageLayout.setPrintTitleRows(`$${titleRows.first + 1}:$${titleRows.last + 1}`);
}
