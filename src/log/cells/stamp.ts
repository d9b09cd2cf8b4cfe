import { Temporal } from "temporal-polyfill";
import { possibleStamps } from "../../cylinders/readTestStamp";
import { stampText, type TestStamp } from "../../cylinders/testStamp";
import { Refusal } from "../../gas/refusal";
import { dateFormatOf, showsDate } from "../../sheet/numberFormat";
import { civilOf, epochDayOfSerial, plainDateOf, type EpochDay } from "../../sheet/serialDate";
import type { DateOrder, StampOrder } from "../context";
import { ambiguous, BLANK, unreadable, value, type Reading } from "../reading";
import { isTooLong, ofNoUse, plain, sayingNothing, shown, tidy, type Cell } from "./cell";
import { dateTextOf, monthOf } from "./dateText";

/** What the column says of its stamps. */
export interface StampColumn {
  /** `unknown` where the column may show either. */
  readonly means: TestStamp["means"] | "unknown";
  readonly stampOrder: StampOrder | "both" | undefined;
  readonly dateOrder: DateOrder | "both" | undefined;
  /** It holds months (stamps), so that a day in it is suspect. */
  readonly holdsMonths: boolean;
  /** The latest month a test can have been done; of a due date, the latest it can fall due. */
  readonly latest: Temporal.PlainYearMonth;
}

const FIRST_YEAR = 1930;
const OUT_OF_TEST =
  /^(?:out|out of (?:test|date|hydro)|expired|overdue|failed|abgelaufen|perime|caducad[oa])$/;

/** Reads a test as stamped, stickered or written: text, or a date cell. */
export function readStamp(cell: Cell, column: StampColumn): Reading<TestStamp> {
  if (isClear(column)) return readMeaning(cell, column);
  const asTest = readMeaning(cell, { ...column, means: "test" });
  if (asTest.kind !== "value" || asTest.value.means === "due") return asTest;
  return ambiguous(
    [asTest.value, { ...asTest.value, means: "due" }],
    `“${shown(cell)}”: the last test, or the next one due?`,
    "stamp means",
  );
}

/** A column of tests of which it is known whether they are done or due. */
interface ClearColumn extends StampColumn {
  readonly means: TestStamp["means"];
}

function isClear(column: StampColumn): column is ClearColumn {
  return column.means !== "unknown";
}

function readMeaning(cell: Cell, column: ClearColumn): Reading<TestStamp> {
  if (typeof cell.value === "number") return fromNumber(cell.value, cell, column);
  if (typeof cell.value !== "string") return ofNoUse(cell, "a test date");
  const text = plain(cell.value);
  const nothing = sayingNothing(text);
  if (nothing) return nothing;
  if (OUT_OF_TEST.test(text))
    return unreadable(`“${shown(cell)}”: out of test, with no date. Write the date of the last test.`);
  return (
    fromFullDate(cell, column) ??
    fromDayAndMonthName(text, column) ??
    fromStamp(dueInFront(tidy(cell.value)), column)
  );
}

/** `10/24 exp` says the same as `exp 10/24`. */
function dueInFront(text: string): string {
  return text.replace(/^(.*\d) ?\(?(exp|expires|due)\.?\)?$/i, "$2 $1");
}

/** Every test in a cell, the latest first; one reading where the cell holds one. */
export function readStamps(cell: Cell, column: StampColumn): readonly Reading<TestStamp>[] {
  const whole = readStamp(cell, column);
  if (whole.kind !== "unreadable" || typeof cell.value !== "string" || isTooLong(cell.value)) return [whole];
  const parts = cell.value.split(/\s*[,;&\n]\s*/).filter((part) => part.trim() !== "");
  const readings = parts.map((part) => readStamp({ ...cell, value: part }, column));
  const clear = readings.flatMap((each) => (each.kind === "value" ? [each] : []));
  if (clear.length < 2 || clear.length < readings.length) return [whole];
  return clear.sort((one, other) => Temporal.PlainYearMonth.compare(other.value.month, one.value.month));
}

function fromNumber(number: number, cell: Cell, column: ClearColumn): Reading<TestStamp> {
  if (number === 0) return BLANK;
  const isDate = showsDate(cell.format);
  if (!isDate && Number.isInteger(number) && number > 190000 && number < 210013)
    return fromStamp(`${Math.floor(number / 100)}/${number % 100}`, column);
  if (!isDate && number < 10000) return fromDecimals(number, cell, column);
  const day = epochDayOfSerial(number, cell.dateSystem);
  if (day === undefined || civilOf(day).year < FIRST_YEAR)
    return unreadable(`${shown(cell)} is not a test date. Write it such as 2019/10.`);
  const shows = dateFormatOf(cell.format);
  return fromDay(
    day,
    column,
    shows !== undefined && !shows.day,
    isDate ? undefined : `${shown(cell)}, a date that lost its format`,
  );
}

/** 10.19 kept as a number was 10.19 or 10/19 when it was typed, and 10.2 was 10.20. */
function fromDecimals(number: number, cell: Cell, column: ClearColumn): Reading<TestStamp> {
  if (Number.isInteger(number))
    return number >= 1900 && number < 2100
      ? unreadable(`“${shown(cell)}” is a year without its month. Write both, such as ${number}/10.`)
      : unreadable(`“${shown(cell)}” is not a test date. Write it such as 2019/10.`);
  const read = fromStamp(number.toFixed(2).replace(".", "/"), column);
  const choices = read.kind === "value" ? [read.value] : read.kind === "ambiguous" ? read.choices : [];
  return choices.length > 0
    ? ambiguous(choices, `“${shown(cell)}” is kept as a number. Write the month such as 2019/10.`)
    : ofNoUse(cell, "a test date");
}

function fromFullDate(cell: Cell, column: ClearColumn): Reading<TestStamp> | undefined {
  const said = dateTextOf(String(cell.value), column.latest.year);
  if (said?.kind === "day") return fromDay(said.day, column, false);
  if (said?.kind === "impossible")
    return unreadable(`“${shown(cell)}”: the calendar has no such day. Correct it.`);
  if (said?.kind !== "either") return undefined;
  const order = said.dotted && column.dateOrder === undefined ? "day first" : column.dateOrder;
  if (order === "day first") return fromDay(said.dayFirst, column, false);
  if (order === "month first") return fromDay(said.monthFirst, column, false);
  const choices = [said.dayFirst, said.monthFirst].map((day) => dayStamp(day, column));
  return ambiguous(choices, `“${shown(cell)}”: day or month first?`, "date order");
}

/** `19-Oct` is how a spreadsheet shows 10/19 once it has taken it for a day of this year. */
function fromDayAndMonthName(text: string, column: ClearColumn): Reading<TestStamp> | undefined {
  const [, number, name = ""] = /^(\d{2})[-/. ]?([a-z]{3,})\.?$/.exec(text) ?? [];
  const month = monthOf(name);
  if (number === undefined || month === undefined) return undefined;
  return ambiguous(
    [monthStamp(2000 + Number(number), month, column)],
    `“${text}”: a stamp that the spreadsheet took for a day? Write the month and the year, such as 20${number}/${month}.`,
    "swallowed stamp",
  );
}

function fromStamp(text: string, column: ClearColumn): Reading<TestStamp> {
  let stamps: readonly TestStamp[];
  try {
    stamps = possibleStamps(text, column.stampOrder === "both" ? undefined : column.stampOrder);
  } catch (thrown) {
    if (thrown instanceof Refusal) return unreadable(thrown.message);
    throw thrown;
  }
  const meant = stamps.map((stamp) => (stamp.means === "due" ? stamp : { ...stamp, means: column.means }));
  const possible = meant.filter((stamp) => Temporal.PlainYearMonth.compare(stamp.month, column.latest) <= 0);
  const choices = possible.length > 0 ? possible : meant;
  const [first, second] = choices;
  if (first === undefined) return unreadable(`“${text}” is not a test date. Write it such as 2019/10.`);
  if (second !== undefined)
    return ambiguous(
      choices,
      `“${text}” can be ${choices.map(stampText).join(" or ")}. Write the year with four digits.`,
      first.day ? "date order" : "stamp order",
    );
  return value(first);
}

/** A true date. In a column of months, its day may have been a year: 10/19 typed, 19 October kept. */
function fromDay(day: EpochDay, column: ClearColumn, monthShown: boolean, note?: string): Reading<TestStamp> {
  const civil = civilOf(day);
  if (civil.day === 1 && (monthShown || column.holdsMonths))
    return value(monthStamp(civil.year, civil.month, column), note);
  const asWritten = dayStamp(day, column);
  if (!column.holdsMonths || civil.day === 1) return value(asWritten, note);
  const swallowed = monthStamp(2000 + civil.day, civil.month, column);
  const possible =
    Temporal.PlainYearMonth.compare(swallowed.month, column.latest) <= 0 &&
    (column.means === "due" || Temporal.PlainYearMonth.compare(swallowed.month, asWritten.month) < 0);
  return possible
    ? ambiguous(
        [swallowed, asWritten],
        `The spreadsheet holds ${stampText(asWritten)}; probably the stamp ${civil.month}/${civil.day} was typed, that is ${stampText(swallowed)}. Write it such as ${stampText(swallowed).replace("-", "/")}.`,
        "swallowed stamp",
      )
    : value(asWritten, note);
}

function monthStamp(year: number, month: number, column: ClearColumn): TestStamp {
  return { month: new Temporal.PlainYearMonth(year, month), means: column.means, plus: false, marks: [] };
}

function dayStamp(day: EpochDay, column: ClearColumn): TestStamp {
  const date = plainDateOf(day);
  return { month: date.toPlainYearMonth(), day: date, means: column.means, plus: false, marks: [] };
}
