import { describe, expect, it } from "vitest";
import { isStockSheet, readStockSheet } from "../../src/costs/gasBook/stockSheet";
import { isPriceSheet } from "../../src/costs/prices/priceSheet";
import { readPriceList } from "../../src/costs/prices/readPriceList";
import { ofMonth } from "../../src/costs/report";
import { sumOf } from "../../src/costs/sums";
import { readLog } from "../../src/log/readLog";
import { costSheets } from "../../src/reports/costs/costSheets";
import { emptyPriceList, emptyStockSheet } from "../../src/reports/costs/emptyLists";
import { draftValue, styledCell, type SheetDraft } from "../../src/sheet/draft/draft";
import { ownSheetOf } from "../../src/sheet/ownSheet";
import { columnIndex, type CellValue, type Sheet } from "../../src/sheet/sheet";
import { smallReport } from "../costs/reports";
import { priceSheet } from "../costs/lists";
import { smallLog } from "../pane/fakeWorkbook";

const { report, log } = smallReport();
const sheets = costSheets(report, { customers: true, sheets: log.sheets });
const named = (name: RegExp): SheetDraft => sheets.find((sheet) => name.test(sheet.name))!;
const values = ({ rows }: SheetDraft): CellValue[][] => rows.map(({ cells }) => cells.map(draftValue));

/** A sheet as it reads once it is written. */
function written(draft: SheetDraft): Sheet {
  return {
    name: draft.name,
    hidden: false,
    dateSystem: 1900,
    merges: draft.merges,
    rows: draft.rows.map(({ cells }) => ({
      values: cells.map(draftValue),
      formats: cells.map((cell) => styledCell(cell).format),
    })),
  };
}

describe("the sheets of fill costs", () => {
  it("are known as ours, and are no log and no price list; those to fill in are the shop's", () => {
    expect(readLog(sheets.map(written)).sheets.map(({ leftOut, why }) => [leftOut, why])).toEqual(
      sheets.map(({ name }) => [
        true,
        `“${name}” was left out: Brimbook wrote it (fill costs), and it is no log.`,
      ]),
    );
    expect(sheets.map(written).filter((sheet) => isPriceSheet(sheet) || isStockSheet(sheet))).toEqual([]);
    for (const draft of [emptyPriceList("us", "Letter"), emptyStockSheet("us", "Letter")])
      expect(ownSheetOf(written(draft))).toBeUndefined();
  });

  it("hold every fill once: costed, or not costed with the reason", () => {
    const each = named(/^Cost of each fill/);
    const [table] = each.tables;
    expect(table!.area.lastRow - table!.area.firstRow).toBe(report.log.costed.length);
    const notCosted = values(named(/^Not costed/)).flat();
    expect(notCosted).toContain("cylinder is not in the register, so no size");
    expect(report.log.costed.length + report.log.notCosted.length).toBe(log.fills.length);
  });

  it("say what a plain recomputation of their own formulas says", () => {
    const each = named(/^Cost of each fill/);
    const cells = values(each);
    const at = (name: string): number => {
      const [, letters, row] = /^([A-Z]+)\$?(\d+)$/.exec(name)!;
      const value = cells[Number(row) - 1]![columnIndex(letters!)];
      return typeof value === "number" ? value : 0;
    };
    let formulas = 0;
    for (const { cells: row } of each.rows) {
      for (const cell of row) {
        const { formula, value } = styledCell(cell);
        if (formula === undefined) continue;
        formulas++;
        const range = /^SUBTOTAL\(109,([A-Z]+)(\d+):[A-Z]+(\d+)\)$/.exec(formula);
        const recomputed = range
          ? Array.from({ length: Number(range[3]) - Number(range[2]) + 1 }, (_, n) =>
              at(`${range[1]}${Number(range[2]) + n}`),
            ).reduce((sum, one) => sum + one, 0)
          : formula
              .split("+")
              .map((term) =>
                term.includes("-")
                  ? term
                      .split("-")
                      .map(at)
                      .reduce((one, other) => one - other)
                  : term
                      .split("*")
                      .map(at)
                      .reduce((one, other) => one * other),
              )
              .reduce((sum, one) => sum + one, 0);
        expect(recomputed).toBeCloseTo(value as number, 9);
      }
    }
    // A total and a margin for each fill, and nine sums.
    expect(formulas).toBe(report.log.costed.length * 2 + 9);
  });

  it("add up to the sums of the cover, whichever way", () => {
    const sum = sumOf(report.log.costed);
    const cover = named(/^Fill costs/);
    const cells = values(cover);
    const fact = (label: string) => cells.find(([first]) => first === label)![1];
    expect(fact("Cost")).toBe(sum.cost);
    expect(fact("Margin")).toBe(sum.margin);
    expect(fact("Unbilled")).toBe(1);
    expect(fact("Not costed")).toBe(1);
    expect(cover.tables.map(({ name }) => name.replace(/_/g, " "))).toHaveLength(4);
    for (const { area } of cover.tables) {
      const column = cells[area.firstRow]!.indexOf("Cost");
      const total = cells
        .slice(area.firstRow + 1, area.lastRow + 1)
        .reduce((so, row) => so + (row[column] as number), 0);
      expect(total).toBeCloseTo(sum.cost, 9);
    }
  });

  it("name customers only where asked", () => {
    const without = JSON.stringify(costSheets(report, { customers: false, sheets: log.sheets }));
    expect(without).not.toMatch(/C-0\d\d/);
    expect(JSON.stringify(sheets)).toMatch(/C-031/);
  });

  it("lead from a fill and from a price to its cell", () => {
    const links = sheets.flatMap(({ rows }) =>
      rows.flatMap(({ cells }) => cells.map((cell) => styledCell(cell).link?.cell.sheet)),
    );
    expect(links).toContain("October");
    expect(links).toContain("Prices");
  });

  it("ask our own functions where a person would play", () => {
    const formulas = named(/^Work out a fill/).rows.flatMap(({ cells }) =>
      cells.map((cell) => styledCell(cell).formula ?? ""),
    );
    expect(formulas.filter((formula) => formula.includes("BRIM.GASUSED("))).toHaveLength(3);
    expect(formulas.filter((formula) => formula.includes("BRIM.FILLCOST("))).toHaveLength(1);
    // The prices stand where the formula looks for them.
    const [, first, last] = /\$A\$(\d+):\$B\$(\d+)/.exec(
      formulas.find((formula) => formula.includes("FILLCOST"))!,
    )!;
    const table = values(named(/^Work out a fill/)).slice(Number(first) - 1, Number(last));
    expect(table.map(([name]) => name)).toEqual(["oxygen", "helium", "top", "per fill"]);
    expect(table.every((row) => typeof row[1] === "number")).toBe(true);
  });

  it("of one month leave the others out, and keep what has no readable date in sight", () => {
    const october = ofMonth(report.log, "2026-10");
    expect(october.costed).toHaveLength(5);
    expect(october.notCosted).toHaveLength(1);
    expect(ofMonth(report.log, "2026-11").costed).toHaveLength(1);
  });

  it("have tables whose headings are told apart", () => {
    for (const { rows, tables } of sheets)
      for (const { area } of tables) {
        const headings = rows[area.firstRow]!.cells.map(draftValue);
        expect(new Set(headings).size).toBe(headings.length);
      }
  });
});

describe.each(["us", "metric"] as const)("the empty lists in %s units", (units) => {
  /** Every cell to be filled in gets a number. */
  const filledIn = (draft: SheetDraft): Sheet => {
    const sheet = written(draft);
    const rows = sheet.rows.map((row, at) => ({
      ...row,
      values: row.values.map((value, column) => {
        const { style } = styledCell(draft.rows[at]!.cells[column]);
        return value === null && style?.fill !== undefined ? columnNumber(column) : value;
      }),
    }));
    return { ...sheet, rows };
  };
  // Holds 8,000; full at 200, sent back at 10; losses 4 %; whatever else 20.
  const columnNumber = (column: number): number => [20, 20, 20, 20, 20, 8000, 200, 10, 0.04][column] ?? 20;

  it("are price lists and stock sheets by their headings, and say nothing while empty", () => {
    expect(isPriceSheet(written(emptyPriceList(units, "A4")))).toBe(true);
    expect(isStockSheet(written(emptyStockSheet(units, "A4")))).toBe(true);
    expect(readPriceList(written(emptyPriceList(units, "A4")), units)).toEqual({
      banked: [],
      charges: { byMix: [], byKind: {}, byGas: {} },
      doubts: [],
    });
    expect(readStockSheet(written(emptyStockSheet(units, "A4")), units, undefined)).toMatchObject({
      rows: [],
      doubts: [],
    });
  });

  it("filled in, are read without a doubt: every row counts", () => {
    const list = readPriceList(filledIn(emptyPriceList(units, "A4")), units);
    expect(list.doubts).toEqual([]);
    expect(
      list.oxygen && list.helium && list.compressor?.filter?.weighted && list.booster && list.labour,
    ).toBeTruthy();
    expect(list.charges.byKind).toEqual({ air: 20, nitrox: 20, trimix: 20 });
    expect(list.charges.byGas.helium!.perL).toBeGreaterThan(0);
  });

  it("are no part of a log, empty or filled in", () => {
    const lists = [emptyPriceList(units, "A4"), emptyStockSheet(units, "A4")];
    const read = readLog(
      [...smallLog().slice(0, 2), ...lists.map(written), ...lists.map(filledIn), priceSheet()],
      { units },
    );
    expect(read.sheets.map(({ kind }) => kind)).toEqual([
      "fills",
      "register",
      "neither",
      "neither",
      "neither",
      "neither",
      "neither",
    ]);
    expect(read.fills).toHaveLength(4);
  });
});
