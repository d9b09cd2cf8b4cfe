import { Temporal } from "temporal-polyfill";
import { costLog, lacksOf, type CostedLog, type Lack } from "../../costs/costLog";
import { gasBook, type GasBook } from "../../costs/gasBook/gasBook";
import { isStockSheet, readStockSheet } from "../../costs/gasBook/stockSheet";
import { meterSteps, type Bank, type MeteredLog } from "../../costs/meterLog";
import { isPriceSheet, readPriceSheet, type PriceDoubt } from "../../costs/prices/priceSheet";
import { priceListOf } from "../../costs/prices/readPriceList";
import type { PriceList } from "../../costs/prices/priceList";
import { monthsOf, ofMonth } from "../../costs/report";
import { GROUPINGS, groupedBy, sumOf, type CostGroup, type CostSum, type Grouping } from "../../costs/sums";
import { whatIf, type Scenario } from "../../costs/whatIf";
import { countryRules } from "../../cylinders/countryRules";
import { columnOf } from "../../log/columnOf";
import type { SheetChoice } from "../../log/context";
import { countryContext } from "../../log/countryContext";
import type { Log } from "../../log/log";
import { readLogSteps } from "../../log/readLog";
import { costSheets } from "../../reports/costs/costSheets";
import { howItWasWorkedOut } from "../../reports/costs/howItWasWorkedOut";
import type { SheetDraft } from "../../sheet/draft/draft";
import type { CellAddress, Sheet } from "../../sheet/sheet";
import type { Desk, DeskStep } from "../kit/deskEngine";
import { told } from "../kit/told";

/** What is wanted, as plain values: it travels to a worker. */
export interface CostOrder {
  readonly country: string;
  readonly units: "us" | "metric";
  readonly choices: readonly SheetChoice[];
  /** Banks that the shop has told of, and what they hold. */
  readonly banks: readonly Bank[];
  /** ISO date of today. */
  readonly today: string;
  /** `2026-10`; absent for all fills. */
  readonly month?: string | undefined;
  readonly scenario?: Scenario | undefined;
  /** Lay out the sheets as well, with or without customers. */
  readonly write?: { readonly customers: boolean } | undefined;
}

/** Why fills were not costed, with the first few cells to look at. */
export interface LackTold {
  readonly why: string;
  readonly count: number;
  readonly cells: readonly CellAddress[];
}

/** What it came to, as plain values. */
export interface CostAnswer {
  /** The sheet with the prices; absent where there is none. */
  readonly priceSheet?: string;
  /** Further sheets that look like price lists, and were not used. */
  readonly otherPriceSheets: readonly string[];
  readonly priceDoubts: readonly PriceDoubt[];
  readonly stockSheet?: string;
  readonly book?: GasBook;
  readonly fills: number;
  readonly months: readonly string[];
  readonly sum: CostSum;
  readonly groups: Readonly<Record<Grouping, readonly CostGroup[]>>;
  readonly notCosted: number;
  readonly lacks: readonly LackTold[];
  readonly leftOut: readonly string[];
  readonly notes: readonly string[];
  readonly whatIf?: {
    readonly before: CostSum;
    readonly after: CostSum;
    readonly cannot: readonly LackTold[];
  };
  readonly drafts?: readonly SheetDraft[];
}

const CELLS_TOLD = 6;
const NO_PRICES: PriceList = { banked: [], charges: { byMix: [], byKind: {}, byGas: {} }, doubts: [] };

/** The sheets of a workbook, and what they come to: read once, asked often. */
export class CostDesk implements Desk<CostOrder, CostAnswer> {
  private read: { readonly key: string; readonly log: Log; readonly metered: MeteredLog } | undefined;

  constructor(private readonly sheets: readonly Sheet[]) {}

  *answer(order: CostOrder): Generator<DeskStep, CostAnswer, undefined> {
    const { units } = order;
    const { log, metered } = yield* this.metered(order);
    yield { doing: "Working out the costs", share: 0.8 };
    const [priceSheet, ...others] = this.sheets.filter(isPriceSheet);
    const rows = priceSheet && readPriceSheet(priceSheet, units);
    const prices = rows ? priceListOf(rows, units) : NO_PRICES;
    const all = costLog(metered, prices);
    const costed = ofMonth(all, order.month);
    const stockSheet = this.sheets.find(isStockSheet);
    // The book runs over its own time, whichever month is looked at.
    const book =
      stockSheet && rows
        ? gasBook(readStockSheet(stockSheet, units, contextOf(order).dateOrder), rows, all, units)
        : undefined;
    const report = {
      units,
      paper: countryRules(order.country).habits.paper,
      log: costed,
      prices,
      ...(order.month !== undefined && { month: order.month }),
      ...(book && { book }),
    };
    yield { doing: "Adding up", share: 0.9 };
    return {
      ...(priceSheet && { priceSheet: priceSheet.name }),
      otherPriceSheets: others.map(({ name }) => name),
      priceDoubts: prices.doubts,
      ...(stockSheet && { stockSheet: stockSheet.name }),
      ...(book && { book }),
      fills: costed.costed.length + costed.notCosted.length,
      months: monthsOf(all),
      sum: sumOf(costed.costed),
      groups: groupsOf(costed),
      notCosted: costed.notCosted.length,
      lacks: lacksOf(costed.notCosted).map((lack) => lackTold(lack, log)),
      leftOut: costed.leftOut,
      notes: howItWasWorkedOut(report),
      ...(order.scenario && { whatIf: whatIfOf(metered, prices, order, order.scenario, log) }),
      ...(order.write && {
        drafts: costSheets(report, { customers: order.write.customers, sheets: log.sheets }),
      }),
    };
  }

  private *metered(order: CostOrder): Generator<DeskStep, { log: Log; metered: MeteredLog }, undefined> {
    const { units, choices, country, today, banks } = order;
    const key = JSON.stringify([units, choices, country, today, banks]);
    if (this.read?.key === key) return this.read;
    const lists = this.sheets.filter((sheet) => isPriceSheet(sheet) || isStockSheet(sheet));
    const reading = readLogSteps(
      this.sheets.filter((sheet) => !lists.includes(sheet)),
      { ...contextOf(order), units, choices, asOf: Temporal.PlainDate.from(today) },
    );
    const log = yield* told("Reading the rows", 0, 0.3, reading);
    const metered = yield* told("Working out the gas", 0.3, 0.8, meterSteps(log, units, banks));
    this.read = { key, log, metered };
    return this.read;
  }
}

function contextOf({ country }: CostOrder) {
  return countryContext(countryRules(country));
}

function groupsOf({ costed }: CostedLog): Record<Grouping, readonly CostGroup[]> {
  const names = Object.keys(GROUPINGS) as Grouping[];
  return Object.fromEntries(names.map((name) => [name, groupedBy(name, costed)])) as unknown as Record<
    Grouping,
    readonly CostGroup[]
  >;
}

function whatIfOf(
  metered: MeteredLog,
  prices: PriceList,
  { month }: CostOrder,
  scenario: Scenario,
  log: Log,
) {
  const inMonth =
    month === undefined
      ? metered
      : { ...metered, metered: metered.metered.filter((each) => each.month === month) };
  const { before, after, cannot } = whatIf(inMonth, prices, scenario);
  return { before, after, cannot: cannot.map((lack) => lackTold(lack, log)) };
}

function lackTold({ why, fills }: Lack, log: Log): LackTold {
  return {
    why,
    count: fills.length,
    cells: fills.slice(0, CELLS_TOLD).map(({ fill, field }) => {
      const sheet = log.sheets.find(({ name }) => name === fill.sheet);
      const column = sheet && (columnOf(sheet, field, fill.row) ?? columnOf(sheet, "date", fill.row));
      return { sheet: fill.sheet, row: fill.row, column: column?.column ?? 0 };
    }),
  };
}
