import { Temporal } from "temporal-polyfill";
import { auditSteps } from "../../audit/audit";
import type { AuditResult, Finding } from "../../audit/judge/finding";
import { dueListSteps, type DueLists } from "../../audit/lists/dueLists";
import { housePatternSteps, type HousePatterns } from "../../audit/lists/housePatterns";
import type { Log } from "../../log/log";
import type { CellAddress, CellValue, Sheet } from "../../sheet/sheet";
import type { LogBook } from "../logBook";
import { sheetReading, type LogReading } from "../reading";
import { auditOptionsOf } from "../terms";
import { told, type ToldSteps } from "../worker/told";

/** A log, read and judged. */
export interface CheckReport extends LogReading, AuditResult {
  /** Whose rules it was judged by, as a code. */
  readonly country: string;
  /** What else is to be known of each finding, in the order of the findings. */
  readonly facts: readonly FindingFacts[];
  /** Which cylinders are out of date today or fall due. */
  readonly due: DueLists;
  /** Ordered against analysed. */
  readonly patterns: HousePatterns;
  /** What the state of the workbook before this one did not have, and what it had besides. */
  readonly came: readonly Finding[];
  readonly went: readonly Finding[];
}

export interface FindingFacts {
  /** What its cell held when it was judged. */
  readonly held: CellValue;
  /** Who filled, as the log names them; empty where it does not, or the finding is about the register. */
  readonly filledBy: string;
}

/** What is wrong with the log, what falls due, and how every sheet was understood. */
export function* check(book: LogBook): ToldSteps<CheckReport> {
  const { sheets, rules, terms } = book;
  const options = auditOptionsOf(terms);
  const log = yield* book.log(0, 0.5);
  const leftOut = yield* book.leftOut();
  const result = yield* told("Judging the fills", 0.5, 0.9, auditSteps(log, rules, options));
  const asOf = Temporal.PlainDate.from(terms.today);
  const due = yield* told("Looking what falls due", 0.9, 0.95, dueListSteps(log, rules, asOf, options));
  const patterns = yield* told("Comparing ordered and analysed", 0.95, 1, housePatternSteps(log));
  return {
    country: terms.country,
    sheets: inTabOrder(sheets, [...log.sheets, ...leftOut].map(sheetReading)),
    unreadable: log.unreadable,
    ...result,
    facts: factsOf(result.findings, sheets, log),
    due,
    patterns,
    ...comeAndGone(book, result.findings),
  };
}

function inTabOrder<Named extends { readonly name: string }>(
  sheets: readonly Sheet[],
  readings: readonly Named[],
): readonly Named[] {
  const places = new Map(sheets.map(({ name }, at) => [name, at]));
  return [...readings].sort((one, other) => (places.get(one.name) ?? 0) - (places.get(other.name) ?? 0));
}

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

/** Against the last state that was checked. A row that only moved takes its findings along. */
function comeAndGone(book: LogBook, found: readonly Finding[]): Pick<CheckReport, "came" | "went"> {
  const { remembered } = book;
  const last = remembered.findings;
  const before = last === undefined ? found : last.of === book ? last.before : last.found;
  remembered.findings = { of: book, found, before };
  return { came: besides(found, before), went: besides(before, found) };
}

/** Those of the first list that the second has not, as often as it has not. */
function besides(list: readonly Finding[], other: readonly Finding[]): readonly Finding[] {
  if (list === other) return [];
  const left = new Map<string, number>();
  for (const finding of other) left.set(keyOf(finding), (left.get(keyOf(finding)) ?? 0) + 1);
  return list.filter((finding) => {
    const key = keyOf(finding);
    const count = left.get(key) ?? 0;
    left.set(key, count - 1);
    return count <= 0;
  });
}

function keyOf({ rule, severity, cell, serial, fillDate, message }: Finding): string {
  return [rule, severity, cell.sheet, serial, fillDate, message].join("\n");
}
