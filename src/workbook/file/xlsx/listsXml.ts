import type { ListDraft } from "../../../sheet/draft/draft";
import { columnLetters } from "../../../sheet/sheet";
import { escapeXml } from "../xml";
import { areaName, quotedSheet } from "./names";

/** Drop-downs as data validations that warn (ECMA-376 part 1, 18.3.1.32). */
export function listsXml(lists: readonly ListDraft[]): string {
  if (lists.length === 0) return "";
  const entries = lists.map(({ area, words, says }) => {
    const column = columnLetters(words.area.firstColumn);
    const source = `${quotedSheet(words.sheet)}!$${column}$${words.area.firstRow + 1}:$${column}$${words.area.lastRow + 1}`;
    return (
      `<dataValidation type="list" errorStyle="warning" allowBlank="1" showErrorMessage="1" error="${escapeXml(says)}" sqref="${areaName(area)}">` +
      `<formula1>${escapeXml(source)}</formula1></dataValidation>`
    );
  });
  return `<dataValidations count="${lists.length}">${entries.join("")}</dataValidations>`;
}
