import { describe, expect, it } from "vitest";
import { evaluate } from "../../../src/functions/evaluate";
import {
  newForm,
  nextCylinder,
  onCounter,
  shownIn,
  writeField,
  type FieldName,
  type FillForm,
} from "../../../src/counter/form";
import { asPasted, leftBlank, logRow } from "../../../src/counter/write/logRow";
import { fillModel, type FillModel } from "../../../src/counter/plan/model";
import { OUTSIDE } from "../../../src/counter/receive/outside";
import { CAUTIONS } from "../../../src/counter/words";
import { ownSheetOf } from "../../../src/sheet/ownSheet";
import { planSheet } from "../../../src/counter/plan/planSheet";
import { readSignature } from "../../../src/log/cells/words";
import { LogWords } from "../../../src/log/vocabularies/logWords";
import { cardOf } from "../../../src/counter/print/card";
import { cardSheet } from "../../../src/counter/print/cardSheet";
import { fillCard } from "../../../src/counter/print/fillCard";
import { LABEL_STOCK, labelSheet } from "../../../src/counter/print/labels";
import { labelsSheet } from "../../../src/counter/print/labelsSheet";
import { documentOf } from "../../../src/counter/print/page";
import { styledCell, type DraftCell } from "../../../src/sheet/draft/draft";
import { LOOKS } from "../../../src/sheet/draft/looks";
import type { Field, LogColumn } from "../../../src/log/log";
import { Temporal } from "temporal-polyfill";

const written = (fields: Partial<Record<FieldName, string>>, units: "us" | "metric" = "us"): FillForm =>
  Object.entries(fields).reduce(
    (form, [name, text]) => writeField(form, name as FieldName, text),
    newForm(units),
  );

const FILL = { startPressure: "500", startMix: "air", endPressure: "3000", endMix: "EAN32" } as const;
const PAPER_MM = { A4: [210, 297], Letter: [215.9, 279.4] } as const;

describe("the fill card", () => {
  const model = fillModel(written({ ...FILL, gasTemperature: "110" }), undefined, "US");
  const card = cardOf(model, undefined, "us", "2026-10-31")!;
  const printed = fillCard(card);
  const [, ...byFunction] = evaluate("FILLSTEPS", [500, "air", 3000, 32, "psi"]);
  const stops = byFunction.map((row) => Number(row[3]).toFixed(0));
  it("has the stops of FILLSTEPS, a box for each, and says that nothing is known of the cylinder", () => {
    expect(card.steps.map(({ stop }) => stop)).toEqual(stops);
    for (const stop of stops) expect(printed.body).toContain(`>${stop} <small>psi`);
    expect(printed.body.match(/class="box"/g)).toHaveLength(stops.length);
    expect(printed.body).toMatch(/Not known:/);
    expect(printed.body).toMatch(/analyse every cylinder/);
  });
  it("as a sheet says the same, word for word and figure for figure, on one page, and is known as ours", () => {
    const sheet = cardSheet(card);
    const values = sheet.rows.map(({ cells }) => ({ values: cells.map((cell) => styledCell(cell).value) }));
    const said = values.flatMap((row) => row.values).map((value) => String(value ?? ""));
    const lines = [
      ...card.facts.flat(),
      ...card.steps.flatMap(({ what, change, stop, warm }) => [`${what}\n${change}`, stop, warm!]),
      ...card.blanks.flatMap(({ heading, labels }) => [heading, ...labels]),
      ...[card.way, card.against!, card.stopsHold, ...card.cautions],
    ];
    expect(lines.filter((line) => !said.includes(line))).toEqual([]);
    expect(
      sheet.rows.flatMap(({ cells }) => cells).filter((cell) => styledCell(cell).value === "☐"),
    ).toHaveLength(stops.length);
    expect(sheet.page).toMatchObject({ paper: "Letter", onePage: true });
    expect(ownSheetOf({ rows: values })).toBe("fill card");
  });
  it("has a blank to write in for every reading, analysis, name and signature", () => {
    const blank = (cell: DraftCell | undefined) =>
      styledCell(cell).value === null && styledCell(cell).style?.fill === LOOKS.fillIn.fill;
    const rows = cardSheet(card).rows.map(({ cells }) => cells);
    const labels = card.blanks.flatMap(({ labels: each }) => each);
    for (const label of labels)
      expect(blank(rows.find(([first]) => styledCell(first).value === label)![1])).toBe(true);
    const steps = rows.filter((cells) => cells.some((cell) => styledCell(cell).value === "☐"));
    expect(steps.map((cells) => cells.filter(blank).length)).toEqual(stops.map(() => 3));
  });
  it("writes what was typed as text, never as markup", () => {
    const page = documentOf({ ...printed, title: "<script>" });
    expect(page).not.toContain("<script>");
  });
  it("is none without a plan", () => {
    expect(cardOf(fillModel(newForm("us"), undefined, "US"), undefined, "us", "")).toBeUndefined();
  });
});

describe("label sheets", () => {
  it.each(LABEL_STOCK)("$name fits its paper", (stock) => {
    const [width, height] = PAPER_MM[stock.paper];
    const right = stock.leftMm + stock.across * stock.widthMm + (stock.across - 1) * stock.gapAcrossMm;
    expect(right).toBeLessThanOrEqual(width);
    expect(stock.topMm + stock.down * stock.heightMm).toBeLessThanOrEqual(height);
  });
  it("a sheet begun goes on where it was left", () => {
    const { body } = labelSheet(["EAN32 · MOD 111 ft at ppO2 1.4"], LABEL_STOCK[0]!, 3);
    expect(body).toContain("left:110.4mm;top:63.5mm");
  });

  const [[text]] = evaluate("LABELTEXT", [3000, "TX 10/50", "R.", "2026-10-31", "GP1001", "psi"]) as [
    [string],
  ];
  it.each(LABEL_STOCK)(
    "$name as a sheet: cells as large as the labels, from the first label's corner on",
    (stock) => {
      const labels = Array.from({ length: stock.across * stock.down }, () => text);
      const { rows, widths, page } = labelsSheet(labels, stock);
      // Seven pixels of 1/96 inch to a digit of the usual font: ECMA-376 part 1, 18.3.1.13.
      const widthsMm = widths.map((width) => (width! * 7 * 25.4) / 96);
      expect(widthsMm[0]).toBeCloseTo(stock.widthMm, 9);
      expect(widthsMm.reduce((sum, width) => sum + width, 0)).toBeCloseTo(
        stock.across * stock.widthMm + (stock.across - 1) * stock.gapAcrossMm,
        9,
      );
      const heightMm = rows.reduce((sum, { heightPt }) => sum + (heightPt! * 25.4) / 72, 0);
      expect(heightMm).toBeCloseTo(stock.down * stock.heightMm, 9);
      expect(page.stock).toEqual({ leftMm: stock.leftMm, topMm: stock.topMm });
      // Excel takes no row higher than this.
      expect(Math.max(...rows.map(({ heightPt }) => heightPt!))).toBeLessThanOrEqual(409);
      const letters = rows.flatMap(({ cells, heightPt }) =>
        cells.map((cell) => [styledCell(cell).style?.sizePt ?? 0, heightPt!]),
      );
      expect(letters.every(([sizePt, heightPt]) => sizePt! * 1.2 <= heightPt!)).toBe(true);
    },
  );
  it("as a sheet holds all that LABELTEXT says, at the label where the stock was left", () => {
    const { rows } = labelsSheet([text], LABEL_STOCK[0]!, 3);
    const values = rows.map(({ cells }) => cells.map((cell) => styledCell(cell).value));
    expect(
      values
        .slice(0, 3)
        .flat()
        .every((value) => value === null),
    ).toBe(true);
    const label = values.slice(3).map((row) => row[2]);
    expect(label[0]).toBe("TX 10/50");
    expect(label.join(" ")).toMatch(/MOD \d+ ft at ppO2 1\.4\s+not to be breathed above \d+ ft/);
    expect(
      label
        .join(" · ")
        .split(/ · |  /)
        .sort(),
    ).toEqual(text.split(" · ").sort());
  });
});

describe("the plan as a sheet", () => {
  it("shows its title and its cautions whole", () => {
    const draft = planSheet(fillModel(written({ ...FILL, endMix: "TX 21/35" }), undefined, "US"), "us")!;
    const widths = draft.widths.map((width) => width!);
    const isAcross = (row: number) =>
      draft.merges.some(
        (area) => area.firstRow === row && area.firstColumn === 0 && area.lastColumn === widths.length - 1,
      );
    const lines = draft.rows.flatMap(({ cells, heightPt }, row) => {
      const { value, style } = styledCell(cells[0]);
      return cells.length === 1
        ? [{ text: value as string, style, heightPt: heightPt!, across: isAcross(row) }]
        : [];
    });
    expect(lines[1]!.text).toMatch(/^Partial pressure: helium and oxygen/);
    expect(lines.length).toBeGreaterThan(CAUTIONS.length + 1);
    const total = widths.reduce((sum, width) => sum + width, 0);
    for (const { text, style, heightPt, across } of lines) {
      const sizePt = style?.sizePt ?? 11;
      expect(across).toBe(true);
      const inOneLine = Math.ceil((text.length * sizePt) / 11 / total);
      expect(heightPt).toBeGreaterThanOrEqual(inOneLine * sizePt * 1.2);
    }
  });
  it("has formulas whose answers are those already in the cells", () => {
    const draft = planSheet(fillModel(written({ ...FILL, endMix: "TX 21/35" }), undefined, "US"), "us")!;
    const cells = draft.rows.map((row) => row.cells.map(styledCell));
    const at = (reference: string) => cells[Number(reference.slice(1)) - 1]![1]!.value;
    const formulas = cells.flatMap((row) => (row[1]?.formula?.startsWith("BRIM.STOPAT") ? [row[1]] : []));
    expect(formulas.length).toBeGreaterThanOrEqual(3);
    for (const { formula, value } of formulas) {
      const [, step, references] = /^BRIM\.STOPAT\("(\w+)",(.*)\)$/.exec(formula!)!;
      const given = references!.split(",").map(at);
      const [[answer]] = evaluate("STOPAT", [step!, ...given]) as [[number]];
      expect(answer).toBeCloseTo(value as number, 2);
    }
    expect(ownSheetOf({ rows: cells.map((row) => ({ values: row.map(({ value }) => value) })) })).toBe(
      "fill plan",
    );
  });
});

describe("the row for the log", () => {
  const column = (field: Field, index: number, unit?: LogColumn["unit"]): LogColumn => ({
    column: index,
    heading: field,
    field,
    unit,
    confidence: 1,
    examples: [],
  });
  const now = Temporal.PlainDateTime.from("2026-10-31T14:35");
  const forLog = (form: FillForm, model: FillModel, nextNumber?: number) => ({
    form, model, receipt: undefined, now, nextNumber,
  }); // prettier-ignore
  it("writes number, time of day, source, filler and that the outside was looked over; else says what it left blank", () => {
    const columns = (["number", "date", "time", "source", "filledBy", "analysedBy", "externalCheck"] as const)
      .map((field, index) => column(field, index)); // prettier-ignore
    const form = written({ ...FILL, initials: "A.", filledBy: "F.", filledFrom: "Bank 2" });
    const ticked = OUTSIDE.map(([name]) => name);
    const model = fillModel(form, undefined, "US");
    const all = logRow(columns, forLog({ ...form, ticked }, model, 232));
    expect(asPasted(all)).toBe("232\t2026-10-31\t14:35\tBank 2\tF.\tA.\tyes");
    expect(readSignature({ value: "yes", format: undefined, dateSystem: 1900 }, new LogWords()).kind).toBe(
      "value",
    );
    expect(leftBlank(columns, all)).toEqual([]);
    const some = written({ ...FILL, initials: "A." });
    const row = logRow(columns, forLog({ ...some, ticked: ticked.slice(1) }, model));
    expect(asPasted(row)).toBe("\t2026-10-31\t14:35\t\t\tA.");
    expect(leftBlank(columns, row)).toEqual([
      "number (not of plain running numbers)",
      "source (bank or compressor not named)",
      "filledBy (nobody named)",
      "externalCheck (not every box of “Look at the outside” is ticked)",
    ]);
  });
  it("gives each column its own unit, and oxygen and helium apart where the log has them so", () => {
    const form = written({ ...FILL, endMix: "TX 21/35", analysedOxygen: "20.6", analysedHelium: "35.4" });
    const columns = [
      column("date", 0),
      column("endPressure", 1, "bar"),
      column("analysedMix", 2),
      column("analysedHelium", 3),
      column("modOnLabelM", 4, "m"),
    ];
    const row = logRow(columns, forLog(form, fillModel(form, undefined, "US")));
    expect(asPasted(row)).toBe("2026-10-31\t206.8\t20.6\t35.4\t57");
  });
  it("writes a trimix as text, since two numbers with a slash become a date", () => {
    const form = written({ ...FILL, analysedOxygen: "10", analysedHelium: "50" });
    const row = logRow([column("analysedMix", 0)], forLog(form, fillModel(form, undefined, "US")));
    expect(row).toEqual([{ column: 0, value: "TX 10/50" }]);
  });
  it("says no in the log's column where nobody saw the certification that the mix needs, which the audit finds", () => {
    const row = (fields: Partial<Record<FieldName, string>>, columns: readonly LogColumn[]) => {
      const form = written({ ...FILL, ...fields });
      return asPasted(logRow(columns, forLog(form, fillModel(form, undefined, "US"))));
    };
    const both = [column("certification", 0), column("remarks", 1)];
    expect(row({}, both)).toBe("no");
    expect(row({ certification: "N-4711" }, both)).toBe("N-4711");
    expect(row({ endMix: "air" }, both)).toBe("");
    expect(row({ remarks: "new O-ring" }, [column("remarks", 0)])).toBe("new O-ring; certification not seen");
    expect(readSignature({ value: "no", format: undefined, dateSystem: 1900 }, new LogWords())).toEqual({
      kind: "blank",
    });
  });
  it("gives the oxygen added as its column asks: how much, or where it stopped", () => {
    const form = written(FILL);
    const model = fillModel(form, undefined, "US");
    const [[stop]] = evaluate("STOPAT", ["oxygen", 500, "air", 3000, 32, "psi"]) as [[number]];
    const added = (adds: "increment" | "stop") =>
      logRow([{ ...column("oxygenAdded", 0, "psi"), adds }], forLog(form, model))[0]!.value;
    expect(added("stop")).toBe(Math.round(stop));
    expect(added("increment")).toBe(Math.round(stop - 500));
  });
});

describe("the form", () => {
  it("goes to the other units and back without losing a digit", () => {
    const form = written({ ...FILL, gasTemperature: "105", compressorFlow: "5.5", priceOxygen: "0.37" });
    const back: FillForm = { ...form, units: "metric" };
    expect(shownIn(back, "endPressure")).toBe("206.8");
    expect(shownIn(back, "gasTemperature")).toBe("40.6");
    expect(shownIn(back, "compressorFlow")).toBe("155.74");
    const names = ["endPressure", "gasTemperature", "compressorFlow", "priceOxygen"] as const;
    expect(names.map((name) => shownIn({ ...back, units: "us" }, name))).toEqual([
      "3000",
      "105",
      "5.5",
      "0.37",
    ]);
  });
  it("a plan is the same in either units, as what was typed is what counts", () => {
    const form = written({ ...FILL, temperature: "70" });
    const stops = (units: "us" | "metric") =>
      fillModel({ ...form, units }, undefined, "US").chosen!.plan!.steps;
    expect(stops("metric")).toEqual(stops("us"));
  });
  it("another cylinder on the counter clears the fill and keeps the station", () => {
    const form = onCounter(written({ ...FILL, topMix: "EAN28" }), "GP1");
    expect(onCounter(form, "GP1").written.startMix?.text).toBe("air");
    const other = onCounter(form, "GP2");
    expect(other.written.startMix).toBeUndefined();
    expect(other.written.topMix?.text).toBe("EAN28");
    expect(nextCylinder(form).written.asked).toBeUndefined();
  });
});
