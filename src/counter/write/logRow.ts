import { Temporal } from "temporal-polyfill";
import type { Receipt } from "../receive/receipt";
import { figure } from "../../words/figures";
import { nameMix } from "../../gas/nameMix";
import type { Mixture } from "../../gas/mixture";
import { gaugeReading, temperature, type Units } from "../../gas/units";
import type { Field, FillMethod, LogColumn } from "../../log/log";
import type { CellWrite } from "../../sheet/sheet";
import { writtenIn, type FillForm } from "../form";
import { lacksCertification } from "./handedOver";
import type { FillModel } from "../plan/model";
import { isLookedOver, OUTSIDE_TITLE } from "../receive/outside";
import type { RankedWay } from "../plan/ways";
import { mod } from "../../depth/mod";
import { roundDepthDown } from "../../depth/roundDown";

/** A fill as the person's own columns hold it; what was not written here stays blank. */
export function logRow(columns: readonly LogColumn[], fill: FillForLog): readonly CellWrite[] {
  const seen = new Set<Field>();
  return columns.flatMap((column): CellWrite[] => {
    const { field } = column;
    if (field === undefined || seen.has(field)) return [];
    const cell = CELLS[field]?.(fill, column, columns);
    if (cell === undefined) return [];
    seen.add(field);
    return [{ column: column.column, ...cell }];
  });
}

/** All that is known of the fill when its row is written. */
export interface FillForLog {
  readonly form: FillForm;
  readonly model: FillModel;
  readonly receipt: Receipt | undefined;
  readonly now: Temporal.PlainDateTime;
  /** Where the log numbers its fills one by one. */
  readonly nextNumber: number | undefined;
}

/** Columns that would be the person's to fill in, with why they stay blank; so that no gap is a surprise later. */
export function leftBlank(columns: readonly LogColumn[], row: readonly CellWrite[]): readonly string[] {
  return columns.flatMap(({ column, heading, field }) => {
    const why = field && WHY_BLANK[field];
    const isFirst = columns.find((each) => each.field === field)?.column === column;
    return why !== undefined && isFirst && !row.some((cell) => cell.column === column)
      ? [`${heading} (${why})`]
      : [];
  });
}

const WHY_BLANK: Partial<Record<Field, string>> = {
  number: "not of plain running numbers",
  source: "bank or compressor not named",
  filledBy: "nobody named",
  externalCheck: `not every box of “${OUTSIDE_TITLE}” is ticked`,
};

type Cell = Omit<CellWrite, "column">;

const TIME_FORMAT = "hh:mm";
const MINUTES_A_DAY = 1440;

/** Days that a spreadsheet counts from 1899-12-30. */
const SERIAL_ORIGIN = Temporal.PlainDate.from("1899-12-30");

type Worked = (row: FillForLog, column: LogColumn, columns: readonly LogColumn[]) => Cell | undefined;

/** What stands in each field of a log; a field that is not named is left for the person. */
const CELLS: Partial<Record<Field, Worked>> = {
  number: ({ nextNumber }) => (nextNumber === undefined ? undefined : { value: nextNumber }),
  date: ({ now }) => ({ value: SERIAL_ORIGIN.until(now.toPlainDate()).days, format: "yyyy-mm-dd" }),
  time: ({ now }) => ({ value: (now.hour * 60 + now.minute) / MINUTES_A_DAY, format: TIME_FORMAT }),
  serial: ({ receipt, form }) => textCell(receipt?.serial ?? writtenIn(form, "asked").text),
  shopNumber: ({ receipt }) => textCell(receipt?.shopNumber ?? ""),
  owner: ({ receipt }) => textCell(receipt?.owner ?? ""),
  startPressure: ({ model: { wanted }, form }, column) =>
    wanted && pressureCell(wanted.startBar, column, form),
  startMix: ({ model: { wanted } }, _, columns) =>
    wanted && mixCell(wanted.startMix, has("startHelium", columns)),
  startHelium: ({ model: { wanted } }) => wanted && heliumCell(wanted.startMix),
  orderedMix: ({ model: { wanted } }, _, columns) =>
    wanted && mixCell(wanted.endMix, has("orderedHelium", columns)),
  orderedHelium: ({ model: { wanted } }) => wanted && heliumCell(wanted.endMix),
  method: ({ model: { chosen } }) => chosen && { value: methodOf(chosen) },
  source: ({ form }) => textCell(writtenIn(form, "filledFrom").text),
  oxygenAdded: (row, column) => addedCell("oxygen", row, column),
  heliumAdded: (row, column) => addedCell("helium", row, column),
  endPressure: endCell,
  settledPressure: endCell,
  gasTemperatureK: ({ model: { heat } }, { unit }) =>
    heat && { value: Number(figure(temperature(heat.warmK, unit === "°F" ? "us" : "metric"), 0)) },
  analysedMix: ({ model: { analysis } }, _, columns) =>
    analysis && mixCell(analysis.mix, has("analysedHelium", columns)),
  analysedHelium: ({ model: { analysis } }) => analysis && heliumCell(analysis.mix),
  analysedBy: ({ form }) => textCell(writtenIn(form, "initials").text),
  // Whoever analysed need not be who filled: it is asked.
  filledBy: ({ form }) => textCell(writtenIn(form, "filledBy").text),
  externalCheck: ({ form }) => (isLookedOver(form) ? { value: "yes" } : undefined),
  modOnLabelM: ({ model }, column) => model.analysis && modCell(model.analysis.mix, column, model),
  receivedBy: ({ form }) => textCell(writtenIn(form, "customerName").text),
  // The audit reads a no as what it is: handed over without.
  certification: ({ form, model }) =>
    lacksCertification(form, model) ? { value: "no" } : textCell(writtenIn(form, "certification").text),
  price: ({ form }) => numberCell(writtenIn(form, "price").text),
  remarks: ({ form, model }, _, columns) => {
    const lacks = lacksCertification(form, model) && !has("certification", columns);
    const { text } = writtenIn(form, "remarks");
    return textCell([text.trim(), lacks ? "certification not seen" : ""].filter(Boolean).join("; "));
  },
};

function has(field: Field, columns: readonly LogColumn[]): boolean {
  return columns.some((column) => column.field === field);
}

function endCell({ model: { analysis, wanted }, form }: FillForLog, column: LogColumn): Cell | undefined {
  const endBar = analysis?.pressureBar ?? wanted?.endBar;
  return endBar === undefined ? undefined : pressureCell(endBar, column, form);
}

function textCell(text: string): Cell | undefined {
  return text.trim() === "" ? undefined : { value: text.trim() };
}

function numberCell(text: string): Cell | undefined {
  const number = Number(text.replace(",", "."));
  return text.trim() !== "" && Number.isFinite(number) ? { value: number } : textCell(text);
}

/** In the column's unit, as a gauge is read. */
function pressureCell(bar: number, column: LogColumn, form: FillForm): Cell {
  const units = unitsOf(column, form);
  return { value: Number(figure(gaugeReading(bar, units), units === "us" ? 0 : 1)) };
}

function unitsOf({ unit }: LogColumn, { units }: FillForm): Units {
  return unit === "psi" ? "us" : unit === "bar" ? "metric" : units;
}

/** Nitrox as a number of per cent; a trimix as text, since two numbers with a slash would become a date. */
function mixCell(mix: Mixture, heliumApart: boolean): Cell {
  if (mix.helium < 0.0005 && nameMix(mix) === "air") return heliumApart ? { value: 20.9 } : { value: "air" };
  if (mix.helium < 0.0005 || heliumApart) return { value: Number(figure(mix.oxygen * 100, 1)) };
  return { value: nameMix(mix) };
}

function heliumCell({ helium }: Mixture): Cell {
  return { value: Number(figure(helium * 100, 1)) };
}

function modCell(mix: Mixture, { unit }: LogColumn, { station, analysis }: FillModel): Cell | undefined {
  if (analysis?.depths.mod === undefined) return undefined;
  return { value: roundDepthDown(mod(mix, unit === "ft" ? "us" : "metric", station.maxPpO2)) };
}

function addedCell(
  gas: "oxygen" | "helium",
  { model: { chosen }, form }: FillForLog,
  column: LogColumn,
): Cell | undefined {
  let before = chosen?.order?.startPressureBar ?? 0;
  for (const { step, stopBar } of chosen?.plan?.steps ?? []) {
    if (step === gas) {
      if (column.adds === "stop") return pressureCell(stopBar, column, form);
      const units = unitsOf(column, form);
      const rise = gaugeReading(stopBar, units) - gaugeReading(before, units);
      return { value: Number(figure(rise, units === "us" ? 0 : 1)) };
    }
    before = stopBar;
  }
  return undefined;
}

/** As the log calls it. Pure oxygen in the cylinder is partial pressure, whatever came after. */
export function methodOf({ key, plan }: RankedWay): FillMethod {
  const steps = plan?.steps ?? [];
  if (steps.some(({ step }) => step === "oxygen" || step === "helium")) return "partial pressure";
  if (key.includes("continuous")) return "continuous";
  const top = steps.find(({ step }) => step === "top");
  return !top || nameMix(top.gas) === "air" ? "air" : "premix";
}

/** The row as it is pasted into the sheet: cells apart by tabs, from the first column on. */
export function asPasted(row: readonly CellWrite[]): string {
  const width = Math.max(0, ...row.map(({ column }) => column + 1));
  const cells = Array.from({ length: width }, () => "");
  for (const cell of row) cells[cell.column] = pastedText(cell);
  return cells.join("\t");
}

function pastedText({ value, format }: CellWrite): string {
  if (format === undefined) return String(value as string | number);
  const number = value as number;
  return format === TIME_FORMAT
    ? new Temporal.PlainTime()
        .add({ minutes: Math.round(number * MINUTES_A_DAY) })
        .toString({ smallestUnit: "minute" })
    : SERIAL_ORIGIN.add({ days: number }).toString();
}
