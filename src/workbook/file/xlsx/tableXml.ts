import type { TableDraft } from "../../../sheet/draft/draft";
import type { SheetContent } from "../content";
import { escapeXml } from "../xml";
import { areaName, SPREADSHEET } from "./names";

/** A table as it is written: its part's number, name and headings. */
export interface NumberedTable {
  readonly number: number;
  readonly name: string;
  readonly draft: TableDraft;
  readonly headings: readonly string[];
}

/**
 * Numbers the tables of a workbook, sheet by sheet. One whose headings are no longer headings, as somebody has written
 * over them, is left out: a spreadsheet would call the file damaged.
 */
export function numberTables(sheets: readonly SheetContent[]): readonly (readonly NumberedTable[])[] {
  const taken = new Set<string>();
  let number = 0;
  return sheets.map((sheet) =>
    (sheet.report?.tables ?? []).flatMap((draft) => {
      const headings = headingsOf(draft, sheet);
      return headings ? [{ number: ++number, name: freeName(draft.name, taken), draft, headings }] : [];
    }),
  );
}

function headingsOf({ area }: TableDraft, { rows }: SheetContent): readonly string[] | undefined {
  const cells = rows[area.firstRow]?.values.slice(area.firstColumn, area.lastColumn + 1) ?? [];
  const headings = cells.filter((cell) => typeof cell === "string" && /^[^\u0000-\u001F]+$/.test(cell));
  const different = new Set(headings.map((heading) => String(heading).toLowerCase()));
  const whole = different.size === area.lastColumn - area.firstColumn + 1 && area.lastRow > area.firstRow;
  return whole ? headings.map(String) : undefined;
}

/** Letters, digits and underscores; one at least, so that it cannot be taken for a cell. */
function freeName(wanted: string, taken: Set<string>): string {
  const allowed = wanted.replace(/[^A-Za-z0-9]+/g, "_").replace(/^(?=\d|$)/, "_");
  const base = allowed.includes("_") ? allowed : `${allowed}_`;
  let name = base;
  for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${base}_${n}`;
  taken.add(name.toLowerCase());
  return name;
}

/** A table's part (ECMA-376 part 1, 18.5). Its cells bring their own look. */
export function tableXml({ number, name, draft, headings }: NumberedTable): string {
  const area = areaName(draft.area);
  const columns = headings.map(
    (heading, index) => `<tableColumn id="${index + 1}" name="${escapeXml(heading)}"/>`,
  );
  return (
    `<table xmlns="${SPREADSHEET}" id="${number}" name="${name}" displayName="${name}" ref="${area}" totalsRowShown="0">` +
    `<autoFilter ref="${area}"/><tableColumns count="${columns.length}">${columns.join("")}</tableColumns>` +
    `<tableStyleInfo showFirstColumn="0" showLastColumn="0" showRowStripes="0" showColumnStripes="0"/></table>`
  );
}
