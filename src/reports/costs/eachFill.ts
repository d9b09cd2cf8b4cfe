import { columnOf } from "../../log/columnOf";
import type { Field, Fill, LogSheet } from "../../log/log";
import type { CostReport } from "../../costs/report";
import type { CostedFill } from "../../costs/costLog";
import { nameMix } from "../../gas/nameMix";
import { gaugeReading, UNIT_NAMES, volume } from "../../gas/units";
import { serialOfEpochDay } from "../../sheet/serialDate";
import { dayNumber } from "../../cylinders/calendar";
import type { CellLink, DraftCell, SheetDraft } from "../../sheet/draft/draft";
import type { Block, TableColumn } from "../../sheet/draft/blocks";
import { FORMATS } from "../../sheet/draft/looks";
import { rowsTaken, sheetOf } from "../../sheet/draft/sheetOf";
import { cellName, columnLetters } from "../../sheet/sheet";
import { costPage, periodInWords, type CostSheetOptions } from "./page";

/** A column of the table, and what stands in it below: the sum, and what one of it costs. */
interface FillColumn extends TableColumn {
  cell(fill: CostedFill, row: number): DraftCell;
  readonly sums?: (fill: CostedFill) => number;
  /** What one of it costs, for quantities. */
  readonly price?: number;
}

/** The fills one by one: quantities and prices with formulas between them, so that both can be played with. */
export function eachFillSheet(report: CostReport, { customers, sheets }: CostSheetOptions): SheetDraft {
  const { log, prices, units, month } = report;
  const { volume: volumeUnit, pressure } = UNIT_NAMES[units];
  const perUnit = (perL: number | undefined): number => (perL ?? 0) / volume(1, units);
  const before: readonly Block[] = [
    { kind: "title", lines: [`Cost of each fill, ${periodInWords(report)}`] },
    {
      kind: "quiet",
      lines: [
        "Total: each quantity times the price of one at the foot of its column, and what has a price by the fill. Change a price there, or a quantity, and the sums follow.",
      ],
    },
  ];
  const headingRow = rowsTaken(before);
  const priceRow = headingRow + log.costed.length + 2;
  const quantity = (heading: string, of: (fill: CostedFill) => number, price: number): FillColumn => ({
    heading,
    format: FORMATS.twoDecimals,
    cell: of,
    sums: of,
    price,
  });
  const money = (heading: string, of: (fill: CostedFill) => number): FillColumn => ({
    heading,
    format: FORMATS.money,
    cell: of,
    sums: of,
  });
  const everyPart: readonly FillColumn[] = [
    quantity(
      `Oxygen (${volumeUnit})`,
      (fill) => volume(fill.expense.quantities.oxygenL, units),
      perUnit(prices.oxygen?.perL),
    ),
    quantity(
      `Helium (${volumeUnit})`,
      (fill) => volume(fill.expense.quantities.heliumL, units),
      perUnit(prices.helium?.perL),
    ),
    quantity(
      `Air (${volumeUnit})`,
      (fill) => volume(fill.expense.quantities.airL, units),
      perUnit(prices.air?.perL),
    ),
    {
      ...quantity(
        "Compressor (h)",
        (fill) => fill.expense.quantities.compressorHours,
        prices.compressor?.perHour ?? 0,
      ),
      format: "0.000",
    },
    money("Ready-made gas", (fill) => fill.expense.parts["ready-made gas"]),
    money("Booster", (fill) => fill.expense.parts.booster),
    money("Labour", (fill) => fill.expense.parts.labour),
  ];
  // A column of nothing but zeros, or of what has no price, would only make the print smaller.
  const parts = everyPart.filter(
    ({ sums, price }) => price !== 0 && log.costed.some((fill) => (sums?.(fill) ?? 0) !== 0),
  );
  const facts: readonly FillColumn[] = [
    { heading: "Date", format: FORMATS.date, cell: ({ metered }) => dateCell(metered.fill) },
    { heading: "Fill", cell: ({ metered }) => linkTo(metered.fill, "number", sheets) },
    { heading: "Cylinder", cell: ({ metered }) => metered.size },
    ...(customers
      ? [{ heading: "Customer", cell: ({ metered }: CostedFill) => metered.customer || null }]
      : []),
    { heading: "Mix", cell: ({ metered }) => nameMix(metered.mix) },
    { heading: "Method", cell: ({ metered }) => metered.method },
    {
      heading: `From (${pressure})`,
      format: FORMATS.whole,
      cell: ({ metered }) => gaugeReading(metered.state.startBar, units),
    },
    {
      heading: `To (${pressure})`,
      format: FORMATS.whole,
      cell: ({ metered }) => gaugeReading(metered.state.endBar, units),
    },
  ];
  const first = facts.length;
  const totalAt = first + parts.length;
  const total: FillColumn = {
    ...money("Total", ({ expense }) => expense.total),
    cell: ({ expense }, row) => ({
      value: expense.total,
      formula: totalFormula(parts, first, row, priceRow),
    }),
  };
  const charged: FillColumn = {
    ...money("Charged", chargedFor),
    cell: ({ charge }) =>
      charge.kind === "charged" ? charge.amount : charge.kind === "unbilled" ? 0 : "not known",
  };
  const margin: FillColumn = {
    ...money("Margin", ({ charge, expense }) =>
      charge.kind === "not known" ? 0 : chargedFor({ charge }) - expense.total,
    ),
    cell: ({ charge, expense }, row) => {
      const [chargedCell, totalCell] = [totalAt + 1, totalAt].map((column) => cellName({ row, column }));
      return charge.kind === "not known"
        ? "not known"
        : { value: chargedFor({ charge }) - expense.total, formula: `${chargedCell}-${totalCell}` };
    },
  };
  const columns: readonly FillColumn[] = [...facts, ...parts, total, charged, margin];
  const firstRow = headingRow + 1;
  const sums = columns.map(({ sums }, column): DraftCell => {
    if (column === 0) return "Sum";
    if (!sums) return null;
    const letters = columnLetters(column);
    return {
      value: log.costed.reduce((sum, fill) => sum + sums(fill), 0),
      formula: `SUBTOTAL(109,${letters}${firstRow + 1}:${letters}${firstRow + log.costed.length})`,
    };
  });
  const ones = columns.map(({ price }, column): DraftCell => {
    if (column === 0) return "Price of one";
    return price === undefined ? null : { value: price, format: "0.0000" };
  });
  return sheetOf(
    `Cost of each fill ${month ?? "all"}`,
    [
      ...before,
      {
        kind: "table",
        name: "Cost_of_each_fill",
        columns,
        rows: log.costed.map((fill, at) => columns.map((column) => column.cell(fill, firstRow + at))),
        empty: "No fill was costed.",
        below: [sums, ones],
      },
    ],
    costPage(report),
  );
}

function totalFormula(parts: readonly FillColumn[], first: number, row: number, priceRow: number): string {
  return parts
    .map(({ price }, at) => {
      const letters = columnLetters(first + at);
      const here = `${letters}${row + 1}`;
      return price === undefined ? here : `${here}*${letters}$${priceRow + 1}`;
    })
    .join("+");
}

function chargedFor({ charge }: Pick<CostedFill, "charge">): number {
  return charge.kind === "charged" ? charge.amount : 0;
}

export function dateCell({ fields: { date } }: Fill): DraftCell {
  return date.kind === "value" ? serialOfEpochDay(dayNumber(date.value), 1900) : "not readable";
}

/** The fill's number, or its cell, leading to the cell of a field. */
export function linkTo(fill: Fill, field: Field, sheets: readonly LogSheet[]): DraftCell {
  const sheet = sheets.find(({ name }) => name === fill.sheet);
  const column = (sheet && columnOf(sheet, field, fill.row)?.column) ?? 0;
  const link: CellLink = { cell: { sheet: fill.sheet, row: fill.row, column } };
  const { number } = fill.fields;
  const value = number.kind === "value" ? number.value : `${fill.sheet}!${cellName(link.cell)}`;
  return { value, link };
}
