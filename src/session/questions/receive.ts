import { Temporal } from "temporal-polyfill";
import { shopFor } from "../../audit/shop/shopFor";
import { isPriceSheet } from "../../costs/prices/priceSheet";
import { readPriceList } from "../../costs/prices/readPriceList";
import { receive as receiptOf, type Receipt } from "../../counter/receive/receipt";
import { waitingIn, type Waiting } from "../../counter/receive/waitingRows";
import type { EnteredCylinder } from "../../counter/form";
import type { ListedPrices } from "../../counter/plan/prices";
import { enteredSheet } from "../../counter/receive/enteredSheet";
import type { Log } from "../../log/log";
import { readLogSteps } from "../../log/readLog";
import type { Sheet } from "../../sheet/sheet";
import type { LogBook } from "../logBook";
import { sheetReading, type SheetReading } from "../reading";
import { auditOptionsOf } from "../terms";
import { told, type ToldSteps } from "../worker/told";

/** Which cylinders are on the counter. */
export interface Received {
  /** Serials or shop numbers. */
  readonly asked: readonly string[];
  /** Cylinders that somebody wrote down beside the workbook. */
  readonly entered?: readonly EnteredCylinder[] | undefined;
  /** Rows whose cylinders are to be received as well; from 0. */
  readonly waiting?: { readonly sheet: string; readonly rows: readonly number[] } | undefined;
}

export interface OnTheCounter {
  /** What is on record of the cylinders asked for, in the order asked. */
  readonly receipts: readonly Receipt[];
  /** What the rows asked for say of cylinders that wait to be filled. */
  readonly waiting?: Waiting;
  /** How the sheets were understood. */
  readonly sheets: readonly SheetReading[];
  /** The price list of the workbook, and the sheet it stands on: of several the first, as for the costs of the log. */
  readonly prices?: ListedPrices;
}

/** What the log and its registers say of cylinders that were brought in. */
export function* receive(
  book: LogBook,
  { asked, entered = [], waiting: rows }: Received,
): ToldSteps<OnTheCounter> {
  const read = yield* book.log(0, 0.9);
  const { terms, rules } = book;
  const register = enteredSheet(entered, terms.units);
  const log = register ? yield* withEntered(book, read, register) : read;
  const { shop } = shopFor(rules, auditOptionsOf(terms));
  const waiting = rows && waitingIn(log, shop, rows.sheet, rows.rows);
  const serials = waiting?.cylinders.map(({ serial }) => serial) ?? [];
  const today = Temporal.PlainDate.from(terms.today);
  const prices = book.sheets.find(isPriceSheet);
  return {
    receipts: [...new Set([...asked, ...serials])].map((each) => receiptOf(log, shop, each, today)),
    ...(waiting && { waiting }),
    sheets: log.sheets.map(sheetReading),
    ...(prices && { prices: { sheet: prices.name, list: readPriceList(prices, terms.units) } }),
  };
}

function* withEntered(book: LogBook, log: Log, entered: Sheet): ToldSteps<Log> {
  const own = yield* told("Reading the rows", 0.9, 1, readLogSteps([entered], book.context));
  return {
    ...log,
    cylinders: [...log.cylinders, ...own.cylinders],
    sheets: [...log.sheets, ...own.sheets],
    unreadable: [...log.unreadable, ...own.unreadable],
  };
}
