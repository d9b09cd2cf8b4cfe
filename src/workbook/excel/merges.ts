import type { Area } from "../../sheet/sheet";
import type { Outline } from "./outline";
import { areaOf, sheetNamed } from "./outline";
import type { Session } from "./session";

/** Rows in which a heading can stand; their merges are asked for alone where Excel cannot tell all. */
const HEADING_ROWS = 30;

/**
 * The merged areas of a sheet. Excel refuses where there are more than 512, and older ones cannot tell at all:
 * then as many as it does tell, headings first. Merges help to read headings and carry no entries of their own.
 */
export async function readMerges(session: Session, outline: Outline): Promise<Area[]> {
  const { used } = outline;
  if (!used || !session.supports("1.13")) return [];
  const headings = { ...used, lastRow: Math.min(used.lastRow, HEADING_ROWS - 1) };
  return mergesIn(session, outline, used)
    .catch(() => mergesIn(session, outline, headings))
    .catch(() => []);
}

function mergesIn(session: Session, outline: Outline, area: Area): Promise<Area[]> {
  return session.read(sheetNamed(outline.name), async (context) => {
    const sheet = context.workbook.worksheets.getItem(outline.name);
    const range = sheet.getRangeByIndexes(0, 0, area.lastRow + 1, area.lastColumn + 1);
    const merged = range.getMergedAreasOrNullObject();
    await context.sync();
    if (merged.isNullObject) return [];
    const { areas } = merged;
    areas.load("items/rowIndex,items/columnIndex,items/rowCount,items/columnCount");
    await context.sync();
    return areas.items.map(areaOf);
  });
}
