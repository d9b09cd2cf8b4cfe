import { unzipSync, strFromU8 } from "fflate";
import { expect, test } from "vitest";
import { evaluate } from "../../src/functions/evaluate";
import { newForm, writeField, type FieldName, type FillForm } from "../../src/counter/form";
import { fillModel } from "../../src/counter/plan/model";
import { cardOf } from "../../src/counter/print/card";
import { cardSheet } from "../../src/counter/print/cardSheet";
import { LABEL_STOCK } from "../../src/counter/print/labels";
import { labelsSheet } from "../../src/counter/print/labelsSheet";
import type { SheetDraft } from "../../src/sheet/draft/draft";
import { FileWorkbook } from "../../src/workbook/file/fileWorkbook";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { convert } from "./libreOffice";

async function fileOf(draft: SheetDraft): Promise<Uint8Array> {
  const workbook = new FileWorkbook({ sheets: [], settings: new Map(), leftOut: [] });
  await workbook.addSheets([draft]);
  return writeXlsx(workbook.content);
}

async function pagesOf(bytes: Uint8Array): Promise<number> {
  const pdf = new TextDecoder("latin1").decode(await convert(bytes, "xlsx", "pdf"));
  return pdf.match(/\/Type\s*\/Page[^s]/g)?.length ?? 0;
}

const form = (fields: Partial<Record<FieldName, string>>): FillForm =>
  Object.entries(fields).reduce(
    (so, [name, text]) => writeField(so, name as FieldName, text),
    newForm("metric"),
  );

test("LibreOffice prints a fill card on one page, drain, warm readings, warnings and all", async () => {
  const wanted = form({
    ...{ startPressure: "150", startMix: "EAN40", endPressure: "232", endMix: "TX 12/60" },
    ...{ gasTemperature: "45", size: "12" },
  });
  const card = cardOf(fillModel(wanted, undefined, "GB"), undefined, "metric", "2026-10-31")!;
  expect(card.steps.length).toBeGreaterThanOrEqual(3);
  expect(await pagesOf(await fileOf(cardSheet(card)))).toBe(1);
});

test("LibreOffice keeps the rows of a label sheet as high as the labels, and its margins", async () => {
  const stock = LABEL_STOCK[0]!;
  const [[text]] = evaluate("LABELTEXT", [3000, 31.8, "R.", "2026-10-31", "GP1001", "psi"]) as [[string]];
  const labels = Array.from({ length: stock.across * stock.down }, () => text);
  const saved = unzipSync(await convert(await fileOf(labelsSheet(labels, stock)), "xlsx", "xlsx"));
  const xml = strFromU8(saved["xl/worksheets/sheet1.xml"]!);
  const heights = [...xml.matchAll(/<row [^>]*\bht="([\d.]+)"/g)].map(([, height]) => Number(height));
  const sheetMm = (heights.slice(0, 3 * stock.down).reduce((sum, height) => sum + height, 0) * 25.4) / 72;
  expect(Math.abs(sheetMm - stock.down * stock.heightMm)).toBeLessThan(0.5);
  const [, left, top] = /<pageMargins left="([\d.]+)"[^>]* top="([\d.]+)"/.exec(xml)!;
  expect(Number(left) * 25.4).toBeCloseTo(stock.leftMm, 1);
  expect(Number(top) * 25.4).toBeCloseTo(stock.topMm, 1);
});
