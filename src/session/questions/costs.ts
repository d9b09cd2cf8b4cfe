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
import { columnOf } from "../../log/columnOf";
import type { Log } from "../../log/log";
import { costSheets } from "../../reports/costs/costSheets";
import { howItWasWorkedOut } from "../../reports/costs/howItWasWorkedOut";
import type { SheetDraft } from "../../sheet/draft/draft";
import type { CellAddress } from "../../sheet/sheet";
import type { LogBook } from "../logBook";
import type { Terms } from "../terms";
import { told, type ToldSteps } from "../worker/told";

/** What is wanted, as plain values: it travels to a worker. */
export interface CostOrder {
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

/** What the fills of the log came to: gas, cost and charge. */
export function* costs(book: LogBook, order: CostOrder): ToldSteps<CostAnswer> {
  const { units } = book.terms;
  const log = yield* fillsOf(book);
  const metered = yield* book.kept(
    "metered",
    told("Working out the gas", 0.3, 0.8, meterSteps(log, units, banksOf(book.terms))),
  );
  yield { doing: "Working out the costs", share: 0.8 };
  const [priceSheet, ...others] = book.sheets.filter(isPriceSheet);
  const rows = priceSheet && readPriceSheet(priceSheet, units);
  const prices = rows ? priceListOf(rows, units) : NO_PRICES;
  const all = costLog(metered, prices);
  const costed = ofMonth(all, order.month);
  const stockSheet = book.sheets.find(isStockSheet);
  // The book runs over its own time, whichever month is looked at.
  const stock =
    stockSheet && rows
      ? gasBook(readStockSheet(stockSheet, units, book.context.dateOrder), rows, all, units)
      : undefined;
  const report = {
    units,
    paper: book.rules.habits.paper,
    log: costed,
    prices,
    ...(order.month !== undefined && { month: order.month }),
    ...(stock && { book: stock }),
  };
  yield { doing: "Adding up", share: 0.9 };
  return {
    ...(priceSheet && { priceSheet: priceSheet.name }),
    otherPriceSheets: others.map(({ name }) => name),
    priceDoubts: prices.doubts,
    ...(stockSheet && { stockSheet: stockSheet.name }),
    ...(stock && { book: stock }),
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

/** The log, but a price list or a stock list is none, whatever its columns look like. */
function* fillsOf(book: LogBook): ToldSteps<Log> {
  const log = yield* book.log(0, 0.3);
  const lists = new Set(
    book.sheets.filter((sheet) => isPriceSheet(sheet) || isStockSheet(sheet)).map(({ name }) => name),
  );
  const isOfLog = ({ sheet }: { readonly sheet: string }) => !lists.has(sheet);
  return {
    ...log,
    sheets: log.sheets.filter(({ name }) => !lists.has(name)),
    fills: log.fills.filter(isOfLog),
    cylinders: log.cylinders.filter(isOfLog),
  };
}

/** Banks that the shop has told of, and what they hold. */
function banksOf({ sources = [] }: Terms): readonly Bank[] {
  return sources.map(({ name, mix }) => ({ name, mix }));
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
