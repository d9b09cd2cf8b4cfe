import { Temporal } from "temporal-polyfill";
import { showsDate } from "../sheet/numberFormat";
import { civilOf, epochDayOfSerial } from "../sheet/serialDate";
import type { Sheet } from "../sheet/sheet";
import type { Cell } from "./cells/cell";
import { dateTextOf } from "./cells/dateText";
import type { PressureUnit } from "./cells/pressure";
import type { ColumnProposal } from "./columns";
import type { DateOrder, LogContext } from "./context";
import { KINDS, UNSETTLED, type ColumnSettings } from "./fieldKinds";
import type { ColumnQuestion, Field } from "./log";

/** How a column's cells are to be read, and what has to be asked first. */
export interface SettledColumn {
  readonly settings: ColumnSettings;
  readonly question?: ColumnQuestion;
}

const LAST_YEAR = 2099;

/** Settles units and orders of a sheet's columns from headings, cells, neighbours and what is known of the shop. */
export function settleColumns(
  sheet: Sheet,
  firstRow: number,
  proposals: readonly ColumnProposal[],
  context: LogContext,
): ReadonlyMap<number, SettledColumn> {
  const latest = context.asOf ?? latestFillDate(sheet, firstRow, proposals);
  const latestYear = latest?.year ?? LAST_YEAR;
  const sheetUnit = unitOfNeighbours(proposals);
  const settled = new Map<number, SettledColumn>();
  for (const proposal of proposals) {
    const { field, meaning } = proposal;
    if (field === undefined) continue;
    const due = meaning.concepts.has("due");
    const dateOrder = orderOf(proposal, latestYear) ?? context.dateOrder;
    const unit =
      pressureUnitOf(proposal) ??
      sheetUnit ??
      (context.units === "us" ? "psi" : context.units === "metric" ? "bar" : undefined);
    const settings: ColumnSettings = {
      ...UNSETTLED,
      pressure: { unit, pairs: pairsOf(field) },
      date: { order: dateOrder, swapped: false, latestYear },
      stamp: {
        means: due ? "due" : "test",
        stampOrder: context.stampOrder,
        dateOrder,
        holdsMonths: false,
        latest: new Temporal.PlainYearMonth(due ? LAST_YEAR : latestYear, due ? 12 : (latest?.month ?? 12)),
      },
      oxygenService: {
        asks: meaning.concepts.has("clean")
          ? "oxygen clean"
          : meaning.concepts.has("nitrox")
            ? "nitrox"
            : "grade",
      },
      temperatureUnit:
        meaning.unit === "°F" || meaning.unit === "°C"
          ? meaning.unit
          : context.units === "us"
            ? "°F"
            : context.units === "metric"
              ? "°C"
              : undefined,
      depthUnit:
        meaning.unit === "ft" || meaning.unit === "m"
          ? meaning.unit
          : context.units === "us"
            ? "ft"
            : context.units === "metric"
              ? "m"
              : undefined,
    };
    settled.set(proposal.column, { settings });
  }
  return settled;
}

function pairsOf(field: Field): ColumnSettings["pressure"]["pairs"] {
  if (field === "servicePressure") return "service / test";
  return field === "endPressure" || field === "settledPressure" ? "hot / cold" : undefined;
}

function pressureUnitOf(proposal: ColumnProposal): PressureUnit | undefined {
  if (proposal.field === undefined || KINDS[proposal.field] !== "pressure") return undefined;
  const { unit } = proposal.meaning;
  if (unit === "psi" || unit === "bar") return unit;
  const numbers = proposal.sample.cells.flatMap(({ value }) => (typeof value === "number" ? [value] : []));
  const high = numbers.filter((number) => number > 450).length;
  return numbers.length > 0 && high / numbers.length > 0.5 ? "psi" : undefined;
}

function unitOfNeighbours(proposals: readonly ColumnProposal[]): PressureUnit | undefined {
  const units = new Set(proposals.map(pressureUnitOf).filter((unit) => unit !== undefined));
  return units.size === 1 ? [...units][0] : undefined;
}

function orderOf(proposal: ColumnProposal, latestYear: number): DateOrder | "both" | undefined {
  const orders = new Set<DateOrder>();
  for (const { value } of proposal.sample.cells) {
    const said = typeof value === "string" ? dateTextOf(value, latestYear) : undefined;
    if ((said?.kind === "day" || said?.kind === "impossible") && said.order) orders.add(said.order);
  }
  return orders.size > 1 ? "both" : [...orders][0];
}

function latestFillDate(
  sheet: Sheet,
  firstRow: number,
  proposals: readonly ColumnProposal[],
): Temporal.PlainDate | undefined {
  const column = proposals.find((proposal) => proposal.field === "date")?.column;
  if (column === undefined) return undefined;
  let latest: number | undefined;
  for (let at = firstRow; at < sheet.rows.length; at++) {
    const row = sheet.rows[at]!;
    const day = clearDay({
      value: row.values[column] ?? "",
      format: row.formats?.[column],
      dateSystem: sheet.dateSystem,
    });
    if (day !== undefined && (latest === undefined || day > latest)) latest = day;
  }
  if (latest === undefined) return undefined;
  const civil = civilOf(latest);
  return new Temporal.PlainDate(civil.year, civil.month, civil.day);
}

function clearDay(cell: Cell): number | undefined {
  if (typeof cell.value === "number")
    return showsDate(cell.format) ? epochDayOfSerial(cell.value, cell.dateSystem) : undefined;
  if (typeof cell.value !== "string" || !/\d{4}/.test(cell.value)) return undefined;
  const said = dateTextOf(cell.value, LAST_YEAR);
  return said?.kind === "day" ? said.day : undefined;
}
