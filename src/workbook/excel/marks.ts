import { cellName, type CellAddress } from "../../sheet/sheet";
import { CELLS_PER_MARK, isMarkRule, isSameValue, MARK_LOOK, MARK_RULE } from "../marking";
import type { CellToMark } from "../workbook";
import { sheetNamed } from "./outline";
import { mustBeOpen } from "./protection";
import { cellValue } from "./rows";
import type { Session } from "./session";

/** Cells looked at in one request. */
const CELLS_AT_ONCE = 500;

/** Marks cells by conditional formats. */
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
      isSameValue(cellValue(range.values[0]![0], range.valueTypes[0]![0]), held),
    );
    for (let first = 0; first < same.length; first += CELLS_PER_MARK) {
      const names = same.slice(first, first + CELLS_PER_MARK).map(({ cell }) => cellName(cell));
      addMark(sheet.getRanges(names.join(",")));
    }
    await context.sync();
    const marked = new Set(same.map(({ cell }) => cell));
    return cells.map(({ cell }) => cell).filter((cell) => !marked.has(cell));
  });
}

function addMark(ranges: Excel.RangeAreas): void {
  const { custom } = ranges.conditionalFormats.add("Custom");
  custom.rule.formula = `=${MARK_RULE}`;
  custom.format.fill.color = MARK_LOOK.fill;
  custom.format.font.color = MARK_LOOK.fontColour;
  custom.format.font.bold = MARK_LOOK.bold;
  custom.format.font.underline = "Single";
}

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
    const ours = custom.filter(({ rule }) => isMarkRule(rule.formula));
    if (ours.length === 0) return 0;
    await mustBeOpen(context, sheet, name);
    for (const { format } of ours) format.delete();
    await context.sync();
    return ours.length;
  });
}
