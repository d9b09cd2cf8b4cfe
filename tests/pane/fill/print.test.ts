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
} from "../../../src/pane/fill/form";
import { asPasted, logRow } from "../../../src/pane/fill/logRow";
import { fillModel } from "../../../src/pane/fill/model";
import { ownSheetOf } from "../../../src/sheet/ownSheet";
import { planSheet } from "../../../src/pane/fill/planSheet";
import { fillCard } from "../../../src/pane/fill/print/fillCard";
import { LABEL_STOCK, labelSheet } from "../../../src/pane/fill/print/labels";
import { documentOf } from "../../../src/pane/fill/print/page";
import { styledCell } from "../../../src/sheet/draft/draft";
import type { Field, LogColumn } from "../../../src/log/log";
import { Temporal } from "temporal-polyfill";

const written = (fields: Partial<Record<FieldName, string>>, units: "us" | "metric" = "us"): FillForm =>
  Object.entries(fields).reduce(
    (form, [name, text]) => writeField(form, name as FieldName, text),
    newForm(units),
  );

const FILL = { startPressure: "500", startMix: "air", endPressure: "3000", endMix: "EAN32" } as const;
const PAPER_MM = { A4: [210, 297], letter: [215.9, 279.4] } as const;

describe("the fill card", () => {
  const card = fillCard(fillModel(written(FILL), undefined, "US"), undefined, "us", "2026-10-31")!;
  it("has the stops of FILLSTEPS, a box for each, and says that nothing is known of the cylinder", () => {
    const [, ...rows] = evaluate("FILLSTEPS", [500, "air", 3000, 32, "psi"]);
    for (const row of rows) expect(card.body).toContain(`>${Number(row[3]).toFixed(0)} <small>psi`);
    expect(card.body.match(/class="box"/g)).toHaveLength(rows.length);
    expect(card.body).toMatch(/Not known:/);
    expect(card.body).toMatch(/analyse every cylinder/);
  });
  it("writes what was typed as text, never as markup", () => {
    const page = documentOf({ ...card, title: "<script>" });
    expect(page).not.toContain("<script>");
  });
  it("is none without a plan", () => {
    expect(fillCard(fillModel(newForm("us"), undefined, "US"), undefined, "us", "")).toBeUndefined();
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
});

describe("the plan as a sheet", () => {
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
  const today = Temporal.PlainDate.from("2026-10-31");
  it("gives each column its own unit, and oxygen and helium apart where the log has them so", () => {
    const form = written({ ...FILL, endMix: "TX 21/35", analysedOxygen: "20.6", analysedHelium: "35.4" });
    const columns = [
      column("date", 0),
      column("endPressure", 1, "bar"),
      column("analysedMix", 2),
      column("analysedHelium", 3),
      column("modOnLabelM", 4, "m"),
    ];
    const row = logRow(columns, form, fillModel(form, undefined, "US"), undefined, today);
    expect(asPasted(row)).toBe("2026-10-31\t206.8\t20.6\t35.4\t57");
  });
  it("writes a trimix as text, since two numbers with a slash become a date", () => {
    const form = written({ ...FILL, analysedOxygen: "10", analysedHelium: "50" });
    const row = logRow([column("analysedMix", 0)], form, fillModel(form, undefined, "US"), undefined, today);
    expect(row).toEqual([{ column: 0, value: "TX 10/50" }]);
  });
  it("gives the oxygen added as its column asks: how much, or where it stopped", () => {
    const form = written(FILL);
    const model = fillModel(form, undefined, "US");
    const [[stop]] = evaluate("STOPAT", ["oxygen", 500, "air", 3000, 32, "psi"]) as [[number]];
    const added = (adds: "increment" | "stop") =>
      logRow([{ ...column("oxygenAdded", 0, "psi"), adds }], form, model, undefined, today)[0]!.value;
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
