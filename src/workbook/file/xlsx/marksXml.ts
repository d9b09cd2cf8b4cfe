import type { Area } from "../../../sheet/sheet";
import { CELLS_PER_MARK, MARK_RULE } from "../../marking";
import { escapeXml } from "../xml";
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
