import { cellName, type CellAddress, type CellValue } from "../../sheet/sheet";
import type { CellToMark } from "../workbook";
import { sheetNamed } from "./outline";
import { mustBeOpen } from "./protection";
import { cellValue } from "./rows";
import type { Session } from "./session";

/** Always true, and ours to be known by: conditional formats have no names. */
const RULE = '=LEN("Brimbook")=8';
const IS_OURS = /"Brimbook"/;

/** Cells looked at in one request, and cells marked by one format: their names make one text of a limited length. */
const CELLS_AT_ONCE = 500;
const CELLS_PER_FORMAT = 50;

const FILL = "#F6D9A8";
const INK = "#5A2D00";

/** Marks cells by conditional formats, which lie over a cell's own look and leave it as it is. */
export async function markCells(
  session: Session,
  cells: readonly CellToMark[],
): Promise<readonly CellAddress[]> {
  await clearMarks(session);
  const leftOut: CellAddress[] = [];
  for (const [name, ofSheet] of bySheet(cells)) {
    for (let first = 0; first < ofSheet.length; first += CELLS_AT_ONCE) {
      leftOut.push(...(await markOn(session, name, ofSheet.slice(first, first + CELLS_AT_ONCE))));
    }
  }
  return leftOut;
}

function bySheet(cells: readonly CellToMark[]): Map<string, CellToMark[]> {
  const sheets = new Map<string, CellToMark[]>();
  for (const each of cells) {
    const { sheet } = each.cell;
    sheets.set(sheet, [...(sheets.get(sheet) ?? []), each]);
  }
  return sheets;
}

/** Others may have edited the log since: only a cell that still holds what was judged is marked. */
function markOn(session: Session, name: string, cells: readonly CellToMark[]): Promise<CellAddress[]> {
  return session.change(sheetNamed(name), async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(name);
    await context.sync();
    if (sheet.isNullObject) return cells.map(({ cell }) => cell);
    await mustBeOpen(context, sheet, name);
    const looked = cells.map((each) => {
      const range = sheet.getRangeByIndexes(each.cell.row, each.cell.column, 1, 1);
      range.load("values,valueTypes");
      return { ...each, range };
    });
    await context.sync();
    const same = looked.filter(({ range, held }) =>
      alike(cellValue(range.values[0]![0], range.valueTypes[0]![0]), held),
    );
    for (let first = 0; first < same.length; first += CELLS_PER_FORMAT) {
      const names = same.slice(first, first + CELLS_PER_FORMAT).map(({ cell }) => cellName(cell));
      addMark(sheet.getRanges(names.join(",")));
    }
    await context.sync();
    const marked = new Set(same.map(({ cell }) => cell));
    return cells.map(({ cell }) => cell).filter((cell) => !marked.has(cell));
  });
}

/** By weight and line as well as by colour. */
function addMark(ranges: Excel.RangeAreas): void {
  const { custom } = ranges.conditionalFormats.add("Custom");
  custom.rule.formula = RULE;
  custom.format.fill.color = FILL;
  custom.format.font.color = INK;
  custom.format.font.bold = true;
  custom.format.font.underline = "Single";
}

const alike = (one: CellValue, other: CellValue) => JSON.stringify(one) === JSON.stringify(other);

/** Takes our conditional formats away, from hidden sheets too, and no other. */
export async function clearMarks(session: Session): Promise<number> {
  const names = await session.read("the list of sheets", async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/name");
    await context.sync();
    return worksheets.items.map(({ name }) => name);
  });
  let cleared = 0;
  for (const name of names) cleared += await clearOn(session, name);
  return cleared;
}

function clearOn(session: Session, name: string): Promise<number> {
  return session.change(sheetNamed(name), async (context) => {
    const sheet = context.workbook.worksheets.getItem(name);
    // eslint-disable-next-line office-addins/load-object-before-read -- a collection is reached without a load
    const formats = sheet.getRange().conditionalFormats;
    formats.load("items/id,items/type");
    await context.sync();
    const custom = formats.items
      .filter(({ type }) => type === "Custom")
      .map((format) => {
        const { rule } = format.custom;
        rule.load("formula");
        return { format, rule };
      });
    if (custom.length === 0) return 0;
    await context.sync();
    const ours = custom.filter(({ rule }) => IS_OURS.test(rule.formula));
    if (ours.length === 0) return 0;
    await mustBeOpen(context, sheet, name);
    for (const { format } of ours) format.delete();
    await context.sync();
    return ours.length;
  });
}
