import type { ICellData } from "@univerjs/core";
import { expect, test } from "vitest";
import { allAtOnce } from "../../../src/sheet/steps";
import { targetOf } from "../../../src/workbook/grid/links";
import { ownDataOf, withOwnData } from "../../../src/workbook/grid/ownCellData";
import { gridSheet } from "../../../src/workbook/grid/toGrid";

const cell = { sheet: "Fill log", row: 4, column: 2 };

test("a cell's mark and link come and go by themselves, and leave it as it was", () => {
  const data: ICellData = { v: 3000, custom: { theirs: 1 } };
  withOwnData(data, { link: { cell } });
  withOwnData(data, { marked: true });
  expect(ownDataOf(data)).toEqual({ marked: true, link: { cell } });
  withOwnData(data, { marked: undefined });
  expect(ownDataOf(data)).toEqual({ link: { cell } });
  withOwnData(data, { link: undefined });
  expect(data).toEqual({ v: 3000, custom: { theirs: 1 } });
});

test("a blank cell without anything of ours is blank", () => {
  const data: ICellData = {};
  withOwnData(data, { marked: true });
  withOwnData(data, { marked: undefined });
  expect(data).toEqual({});
  expect(ownDataOf(undefined)).toEqual({});
});

test("links and marks of a sheet are put on its cells, on blank ones too", () => {
  const sheet = gridSheet({
    name: "Findings",
    hidden: false,
    dateSystem: 1900,
    merges: [],
    columns: [],
    frozenRows: 0,
    frozenColumns: 0,
    rows: [{ values: ["Fill log!C5"] }],
    links: [{ row: 0, column: 0, link: { cell } }],
    marks: [{ firstRow: 0, lastRow: 1, firstColumn: 0, lastColumn: 0 }],
  });
  const { cellData } = allAtOnce(sheet);
  expect(ownDataOf(cellData![0]![0])).toEqual({ marked: true, link: { cell } });
  expect(cellData![1]![0]).toEqual({ custom: { brimbook: { marked: true } } });
});

test("a link to another file leads nowhere here", () => {
  expect(targetOf({ cell })).toEqual(cell);
  expect(targetOf({ cell, file: "fill log.xlsx" })).toBeUndefined();
  expect(targetOf(undefined)).toBeUndefined();
});
