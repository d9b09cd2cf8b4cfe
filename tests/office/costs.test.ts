import { describe, expect, test } from "vitest";
import { costSheets } from "../../src/reports/costs/costSheets";
import { styledCell, type DraftCell, type SheetDraft } from "../../src/sheet/draft/draft";
import { FileWorkbook } from "../../src/workbook/file/fileWorkbook";
import { openFile } from "../../src/workbook/file/openFile";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { smallReport } from "../costs/reports";
import { convert } from "./libreOffice";

const { report, log } = smallReport();
const drafts = costSheets(report, { customers: true, sheets: log.sheets });

/** A draft whose formulas have no answers yet: LibreOffice has to work them out. */
function unanswered(draft: SheetDraft): SheetDraft {
  const blank = (cell: DraftCell): DraftCell => {
    const styled = styledCell(cell);
    return styled.formula === undefined ? cell : { ...styled, value: null };
  };
  return { ...draft, rows: draft.rows.map((row) => ({ ...row, cells: row.cells.map(blank) })) };
}

describe("the sheets of fill costs in LibreOffice", () => {
  test("open, calculate to the figures that we say, and hold no error", async () => {
    const book = new FileWorkbook({ sheets: [], settings: new Map(), leftOut: [] });
    await book.addSheets(drafts.map(unanswered));
    const saved = await convert(await writeXlsx(book.content), "xlsx", "ods");
    const { sheets } = (await openFile(saved, "book.ods")).content;
    expect(sheets.map(({ name }) => name)).toEqual(drafts.map(({ name }) => name));
    let compared = 0;
    for (const [at, { rows, name }] of drafts.entries()) {
      for (const [row, { cells }] of rows.entries()) {
        for (const [column, cell] of cells.entries()) {
          const { value, formula } = styledCell(cell);
          const calculated = sheets[at]!.rows[row]?.values[column] ?? null;
          expect(typeof calculated === "object" && calculated !== null, `${name} ${row} ${column}`).toBe(
            false,
          );
          if (formula === undefined || value === null) continue;
          compared++;
          expect(calculated as number).toBeCloseTo(value as number, 6);
        }
      }
    }
    expect(compared).toBe(report.log.costed.length * 2 + 9);
  });

  test("print", async () => {
    const book = new FileWorkbook({ sheets: [], settings: new Map(), leftOut: [] });
    await book.addSheets(drafts);
    const pdf = await convert(await writeXlsx(book.content), "xlsx", "pdf");
    expect(new TextDecoder("latin1").decode(pdf.slice(0, 5))).toBe("%PDF-");
  });
});
