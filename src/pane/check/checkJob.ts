import { Temporal } from "temporal-polyfill";
import { auditSteps } from "../../audit/audit";
import { dueListSteps } from "../../audit/lists/dueLists";
import type { AuditResult } from "../../audit/judge/finding";
import { housePatternSteps } from "../../audit/lists/housePatterns";
import { receive } from "../../counter/receive/receipt";
import { shopFor } from "../../audit/shop/shopFor";
import type { AuditOptions } from "../../audit/shop/shop";
import { waitingIn } from "../../counter/receive/waitingRows";
import { isPriceSheet } from "../../costs/prices/priceSheet";
import { readPriceList } from "../../costs/prices/readPriceList";
import { countryRules } from "../../cylinders/countryRules";
import type { Units } from "../../gas/units";
import type { SheetChoice } from "../../log/context";
import { countryContext } from "../../log/countryContext";
import type { Log, LogSheet, RowCounts, RowKind } from "../../log/log";
import { readLogSteps } from "../../log/readLog";
import type { CellAddress, CellValue, Sheet } from "../../sheet/sheet";
import { told, type Told } from "../kit/told";
import { answerSteps, type Question } from "./questions";
import type { CheckReport, FindingFacts, SheetReading } from "./report";

/** What is wanted of the sheets, as plain values: it travels to a worker. */
export interface CheckOrder {
  readonly country: string;
  readonly units: "us" | "metric";
  readonly choices: readonly SheetChoice[];
  /** What the shop has set for itself. */
  readonly shop?: Pick<AuditOptions, "house" | "airTests" | "sources">;
  /** ISO date of today: no fill and no test lies after it. */
  readonly today: string;
  /** False to see only how the sheets were understood. */
  readonly judge: boolean;
  /** Serials or shop numbers of cylinders on the counter. */
  readonly receive?: readonly string[];
  /** Rows whose cylinders are to be received as well; from 0. */
  readonly waiting?: { readonly sheet: string; readonly rows: readonly number[] };
  /** A question to answer instead of a check. */
  readonly ask?: Question;
}

/** Reads the sheets as one log and, where ordered, judges it; a step at a time. */
export function* checkSteps(
  sheets: readonly Sheet[],
  order: CheckOrder,
): Generator<Told, CheckReport, undefined> {
  const asOf = Temporal.PlainDate.from(order.today);
  const rules = countryRules(order.country);
  const context = { ...countryContext(rules), units: order.units, choices: order.choices, asOf };
  const log = yield* told("Reading the rows", 0, 0.5, readLogSteps(sheets, context));
  const reading = {
    country: order.country,
    sheets: log.sheets.map(sheetReading),
    unreadable: log.unreadable,
  };
  if (order.receive) {
    const { shop } = shopFor(rules, { ...order.shop, asOf: order.today });
    const waiting = order.waiting && waitingIn(log, shop, order.waiting.sheet, order.waiting.rows);
    const serials = waiting?.cylinders.map(({ serial }) => serial) ?? [];
    const asked = [...new Set([...order.receive, ...serials])];
    const receipts = asked.map((each) => receive(log, shop, each, asOf));
    return {
      ...reading,
      ...NOTHING_JUDGED,
      facts: [],
      receipts,
      ...(waiting && { waiting }),
      ...pricesOn(sheets, order.units),
    };
  }
  const options = { ...order.shop, asOf: order.today };
  if (order.ask) {
    const answer = yield* answerSteps(log, rules, options, order.ask);
    return { ...reading, ...NOTHING_JUDGED, facts: [], answer };
  }
  if (!order.judge) return { ...reading, ...NOTHING_JUDGED, facts: [] };
  const result = yield* told("Judging the fills", 0.5, 0.9, auditSteps(log, rules, options));
  const due = yield* told("Looking what falls due", 0.9, 0.95, dueListSteps(log, rules, asOf, options));
  const patterns = yield* told("Comparing ordered and analysed", 0.95, 1, housePatternSteps(log));
  return { ...reading, ...result, facts: factsOf(result.findings, sheets, log), due, patterns };
}

/** Of several price lists the first counts, as for the costs of the log. */
function pricesOn(sheets: readonly Sheet[], units: Units): Pick<CheckReport, "prices"> {
  const sheet = sheets.find(isPriceSheet);
  return sheet ? { prices: { sheet: sheet.name, list: readPriceList(sheet, units) } } : {};
}

const NOTHING_JUDGED: AuditResult = {
  findings: [],
  notChecked: [],
  fullyJudged: false,
  recall: [],
  doNotFill: [],
  overrides: [],
};

function factsOf(
  findings: AuditResult["findings"],
  sheets: readonly Sheet[],
  { fills }: Log,
): readonly FindingFacts[] {
  const fillers = new Map<string, Map<number, string>>();
  for (const { cell } of findings)
    fillers.set(cell.sheet, (fillers.get(cell.sheet) ?? new Map<number, string>()).set(cell.row, ""));
  for (const { sheet, row, fields } of fills) {
    const onSheet = fillers.get(sheet);
    if (onSheet?.has(row) && fields.filledBy.kind === "value") onSheet.set(row, fields.filledBy.value.trim());
  }
  return findings.map(({ cell }) => ({
    held: holds(sheets, cell),
    filledBy: fillers.get(cell.sheet)?.get(cell.row) ?? "",
  }));
}

function holds(sheets: readonly Sheet[], { sheet, row, column }: CellAddress): CellValue {
  return sheets.find(({ name }) => name === sheet)?.rows[row]?.values[column] ?? null;
}

const COUNTED_AS: Readonly<Record<RowKind, Exclude<keyof RowCounts, "total">>> = {
  fill: "fills",
  cylinder: "cylinders",
  "not filled": "notFilled",
  "struck out": "struckOut",
  blank: "blank",
  heading: "headings",
  totals: "totals",
  unreadable: "unreadable",
};

function sheetReading({
  name,
  kind,
  why,
  columns,
  rowKinds,
  hiddenRows,
  headingsChanged,
}: LogSheet): SheetReading {
  const rows = {
    total: rowKinds.length,
    fills: 0,
    cylinders: 0,
    notFilled: 0,
    struckOut: 0,
    blank: 0,
    headings: 0,
    totals: 0,
    unreadable: 0,
  };
  for (const rowKind of rowKinds) rows[COUNTED_AS[rowKind]] += 1;
  return { name, kind, why, columns, rows, hiddenRows, headingsChanged };
}
