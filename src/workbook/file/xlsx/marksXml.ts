import { cellName, type Area } from "../../../sheet/sheet";
import { CELLS_PER_MARK, MARK_RULE } from "../../marking";
import { escapeXml } from "../xml";
import type { ConditionDraft } from "../../../sheet/draft/draft";
import { areaName } from "./names";
import type { StyleNumbers } from "./stylesXml";

/** Marked cells as conditional formats (ECMA-376 part 1, 18.3.1.18). */
export function marksXml(marks: readonly Area[], styles: StyleNumbers): string {
  if (marks.length === 0) return "";
  const look = styles.markNumber();
  const rule = `<cfRule type="expression" dxfId="${look}" priority="1"><formula>${escapeXml(MARK_RULE)}</formula></cfRule>`;
  let xml = "";
  for (let first = 0; first < marks.length; first += CELLS_PER_MARK) {
    const cells = marks
      .slice(first, first + CELLS_PER_MARK)
      .map(areaName)
      .join(" ");
    xml += `<conditionalFormatting sqref="${cells}">${rule}</conditionalFormatting>`;
  }
  return xml;
}

/** Looks that depend on how a cell's text begins, behind the marks. */
export function conditionsXml(conditions: readonly ConditionDraft[], styles: StyleNumbers): string {
  return conditions
    .map(({ area, begins, look }, index) => {
      const first = cellName({ row: area.firstRow, column: area.firstColumn });
      const text = escapeXml(begins.replaceAll('"', '""'));
      return (
        `<conditionalFormatting sqref="${areaName(area)}">` +
        `<cfRule type="beginsWith" dxfId="${styles.conditionNumber(look)}" priority="${index + 2}" operator="beginsWith" text="${escapeXml(begins)}">` +
        `<formula>LEFT(${first},${begins.length})="${text}"</formula></cfRule></conditionalFormatting>`
      );
    })
    .join("");
}
