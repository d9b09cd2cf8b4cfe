import { gaugeReading, UNIT_NAMES, temperature, type Units } from "../../gas/units";
import { figure } from "../../words/figures";
import { nameMix } from "../../gas/nameMix";
import type { Mixture } from "../../gas/mixture";
import type { Block } from "../../sheet/draft/blocks";
import type { DraftCell, SheetDraft } from "../../sheet/draft/draft";
import { rowsTaken, sheetOf } from "../../sheet/draft/sheetOf";
import type { FillModel } from "./model";
import { CAUTIONS } from "../words";

/** A plan as a sheet of the workbook: what is given in cells, the answers as formulas of them, to go on from. */
export function planSheet(model: FillModel, units: Units): SheetDraft | undefined {
  const { chosen, wanted, station } = model;
  if (!chosen?.order || !chosen.plan || !wanted) return undefined;
  const unit = UNIT_NAMES[units];
  const gauge = (bar: number) => Number(figure(gaugeReading(bar, units), 3));
  const given: readonly (readonly [string, DraftCell])[] = [
    [`Start pressure, ${unit.pressure}`, gauge(wanted.startBar)],
    ["Start mix", mixCell(wanted.startMix)],
    [`End pressure, ${unit.pressure}`, gauge(wanted.endBar)],
    ["End mix", mixCell(wanted.endMix)],
    ["Units", unit.pressure],
    ["Top gas", mixCell(chosen.order.topMix)],
    [`Settled at, ${unit.temperature}`, Number(figure(temperature(station.temperatureK, units), 2))],
    ["Oxygen supply, %", Number(figure(station.oxygenSupply.oxygen * 100, 2))],
    ["Order", chosen.order.order],
  ];
  const top: readonly Block[] = [
    { kind: "title", lines: ["Fill plan"] },
    { kind: "quiet", lines: [chosen.title] },
  ];
  const first = rowsTaken(top) + 1;
  const cells = given.map((_, index) => `B${first + index}`);
  const stops = chosen.plan.steps.map(({ step, stopBar }): readonly [string, DraftCell] => [
    step === "drain" ? `Drain to, ${unit.pressure}` : `Stop ${step} at, ${unit.pressure}`,
    {
      value: gaugeReading(stopBar, units),
      formula: `BRIM.STOPAT("${step}",${cells.join(",")})`,
      format: units === "us" ? "0" : "0.0",
    },
  ]);
  const mod: readonly [string, DraftCell] = [
    `MOD as planned, ${unit.depth}`,
    {
      value: model.depths?.mod ?? null,
      formula: `ROUNDDOWN(BRIM.MOD(B${first + 3},"${unit.depth}",${station.maxPpO2})+0.000000001,0)`,
    },
  ];
  const answers = [...stops, ...(model.depths?.mod === undefined ? [] : [mod])];
  const blocks: readonly Block[] = [
    ...top,
    { kind: "facts", facts: given },
    ...(answers.length === 0 ? [] : [{ kind: "facts", facts: answers } as const]),
    { kind: "quiet", lines: CAUTIONS },
  ];
  return sheetOf("Fill plan", blocks, {
    paper: model.paper,
    landscape: false,
    footer: "Fill plan",
    own: "fill plan",
  });
}

/** As the functions take it: per cent as a number, trimix as text. */
function mixCell(mix: Mixture): DraftCell {
  if (nameMix(mix) === "air") return "air";
  if (mix.helium < 0.0005) return Number(figure(mix.oxygen * 100, 2));
  return `TX ${figure(mix.oxygen * 100, 2)}/${figure(mix.helium * 100, 2)}`;
}
