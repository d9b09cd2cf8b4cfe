import { Temporal } from "temporal-polyfill";
import { refuse, unknown } from "../gas/refusal";
import { stampText, type TestStamp } from "./testStamp";

/** How two bare numbers stand for a month: as the US stamps, or as most of Europe does since 2002. */
export type StampOrder = "month first" | "year first";

/**
 * A test date as it is stamped, stickered or typed: `9 A1 32 06`, `9-A123-06`, `Sep-06`, `2019/10`, `R 10/19`,
 * `V4 02`, `03 23+`, `5-25S`, `exp 10/24`, `12/03/2021`.
 *
 * The US mark is month, requalifier's number in a square, two-digit year (49 CFR 180.213(d)); UK marks since 2002
 * are year then month. Two-digit years up to 49 are 2000s, the others 1900s (common practice, no source).
 *
 * @throws Refusal `unknown` when it could be one of two dates (`06/09` without an order), naming both;
 * `unusable` when it is no date at all.
 */
export function readTestStamp(text: string, order?: StampOrder): TestStamp {
  const [first, second] = possibleStamps(text, order);
  if (first === undefined) return notAStamp(text);
  if (second === undefined) return first;
  return unknown(
    `"${text.trim()}" can be ${stampText(first)} or ${stampText(second)}: write the year with four digits, such as ${stampText(first).replace("-", "/")}.`,
  );
}

/**
 * Every date that a stamp can stand for: one as a rule, two where the order of month and year (or of day and month)
 * is open.
 * @throws Refusal when it is no date at all.
 */
export function possibleStamps(text: string, order?: StampOrder): readonly TestStamp[] {
  const stamp = tidied(text);
  if (stamp.length > LONGEST) return notAStamp(text);
  const { date, ...beside } = takeMarksOff(stamp);
  const found = FORMS.map((form) => form(date, order)).find((dates) => dates.length > 0);
  if (found === undefined) return notAStamp(text);
  return found.map((when) => ({ ...when, ...beside }));
}

/** No stamp is longer, whatever stands in the cell. */
const LONGEST = 40;

type When = Pick<TestStamp, "month" | "day">;
type Form = (date: string, order: StampOrder | undefined) => readonly When[];

/** Tried in turn; the first that fits decides. */
const FORMS: readonly Form[] = [fullDate, monthWithLongYear, namedMonth, usMark, twoNumbers];

/** `2021-03-12`, `12/03/2021`: with a part above 12 there is no doubt, else the order decides. */
function fullDate(date: string, order: StampOrder | undefined): readonly When[] {
  const isoLike = /^(\d{4})[-/. ](\d{1,2})[-/. ](\d{1,2})$/.exec(date);
  if (isoLike) return days([numbers(isoLike)]);
  const yearLast = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})$/.exec(date);
  if (!yearLast) return [];
  const [first = 0, second = 0] = numbers(yearLast);
  const year = fullYear(yearLast[3]!);
  const monthFirst: Triple = [year, first, second];
  const dayFirst: Triple = [year, second, first];
  if (order === "month first" && first <= 12) return days([monthFirst]);
  return days(first === second ? [monthFirst] : [dayFirst, monthFirst]);
}

/** `2019/10`, `10-2019`, `2019 10`: a four-digit year leaves no doubt. A maker's or tester's mark may stand between. */
function monthWithLongYear(date: string): readonly When[] {
  const yearFirst = /^((?:19|20)\d{2})(?:[-/. ]{1,3}|[-/. ]*[A-Z]{1,4}[-/. ]*)(\d{1,2})$/.exec(date);
  if (yearFirst) return months([[Number(yearFirst[1]), Number(yearFirst[2])]]);
  const monthFirst = /^(\d{1,2})[-/. ]{1,3}((?:19|20)\d{2})$/.exec(date);
  return monthFirst ? months([[Number(monthFirst[2]), Number(monthFirst[1])]]) : [];
}

/** `Sep-06`, `Sept 2006`, `15 Oct 2019`, and the names of months in German, French and Spanish. */
function namedMonth(date: string): readonly When[] {
  const parts = /^(?:(\d{1,2})[-/. ]*)?([A-ZÄÉÛ]{3,10})[-/. ]*(?:(\d{1,2}),? )?(\d{4}|\d{2})$/.exec(date);
  const month = parts ? monthNamed(parts[2]!) : undefined;
  if (!parts || month === undefined) return [];
  const year = fullYear(parts[4]!);
  const day = parts[1] ?? parts[3];
  return day === undefined ? months([[year, month]]) : days([[year, month, Number(day)]]);
}

/** `9 A1 32 06`, `9A12306`, `09/A123/06`, `8 C6 94`: month, the square with the tester's number, year. */
function usMark(date: string): readonly When[] {
  const mark = /^(\d{1,2})[-/. ]*[A-Z]\d?[-/. ]*\d{0,3}[-/. ]*(\d{4}|\d{2})$/.exec(date);
  return mark ? months([[fullYear(mark[2]!), Number(mark[1])]]) : [];
}

/** `06/09`, `9 06`, `13/7`: the year has two digits, the month is at most 12; where both fit, both are possible. */
function twoNumbers(date: string, order: StampOrder | undefined): readonly When[] {
  const pair = /^(\d{1,2})[-/. ]{1,3}(\d{1,2})$/.exec(date);
  if (!pair) return [];
  const [, first = "", second = ""] = pair;
  const monthFirst = second.length === 2 ? months([[fullYear(second), Number(first)]]) : [];
  const yearFirst = first.length === 2 ? months([[fullYear(first), Number(second)]]) : [];
  if (monthFirst.length === 0 || yearFirst.length === 0) return [...monthFirst, ...yearFirst];
  if (first === second) return monthFirst;
  if (order === undefined) return [...yearFirst, ...monthFirst];
  return order === "month first" ? monthFirst : yearFirst;
}

type Pair = readonly [year: number, month: number];
type Triple = readonly [year: number, month: number, day: number];

function months(pairs: readonly Pair[]): readonly When[] {
  return pairs
    .filter(([, month]) => month >= 1 && month <= 12)
    .map(([year, month]) => ({ month: Temporal.PlainYearMonth.from({ year, month }) }));
}

function days(triples: readonly (Triple | readonly number[])[]): readonly When[] {
  return triples.flatMap(([year = 0, month = 0, day = 0]) => {
    if (month < 1 || month > 12 || day < 1) return [];
    const date = Temporal.PlainDate.from({ year, month, day });
    return date.day === day ? [{ month: date.toPlainYearMonth(), day: date }] : [];
  });
}

function numbers(match: RegExpExecArray): readonly number[] {
  return match.slice(1).map(Number);
}

/** Scuba cylinders are younger than 1950, and no test is due beyond 2049. */
function fullYear(digits: string): number {
  const year = Number(digits);
  if (digits.length === 4) return year;
  return year < 50 ? 2000 + year : 1900 + year;
}

const MONTH_NAMES: Readonly<Record<string, number>> = {
  JAN: 1, ENE: 1, FEB: 2, FEV: 2, "FÉV": 2, MAR: 3, MRZ: 3, "MÄR": 3, APR: 4, AVR: 4, ABR: 4, MAY: 5, MAI: 5,
  JUN: 6, JUI: 6, JUL: 7, JUIL: 7, AUG: 8, AOU: 8, "AOÛ": 8, AGO: 8, SEP: 9, OCT: 10, OKT: 10, NOV: 11,
  DEC: 12, DEZ: 12, DIC: 12, "DÉC": 12,
}; // prettier-ignore

/** Three letters tell months apart, but for juin and juillet. */
function monthNamed(name: string): number | undefined {
  return name.startsWith("JUIL") ? 7 : MONTH_NAMES[name.slice(0, 3)];
}

/** Words before a date that say it is the next one, not the last. */
const NEXT = /^(?:EXPIRES|EXPIRY|EXP|DUE|NEXT|UNTIL|VALID(?: UNTIL| TO)?|TEST BY|BIS)[.:]?\s*/;
/** Words before a date that only repeat the heading. */
const HEADING = /^(?:LAST|HYDROSTATIC|HYDRO|HYD|TESTED|TEST)[.: ]+(?=\d|[A-Z]{3})/;
/** A letter before the date: R hydro and RR visual (Belgium), V visual, a Swiss cross, a Japanese station's code. */
const BEFORE = /^(RR|R|VISUAL|VIP|VIS|V|\+|[A-Z]{2}(?= \d))[ .:]*(?=\d)/;
/** Symbols behind the date: 49 CFR 180.213(f), the Japanese L and S, the European V, star and plus. */
const BEHIND = /[ -]*(UE|AE|VE|FS|S|E|V|L|\*|★|☆|STAR|\+)$/;

function takeMarksOff(text: string): { date: string } & Pick<TestStamp, "means" | "plus" | "marks"> {
  const stamp = text.replace(HEADING, "");
  let date = stamp.replace(NEXT, "");
  const means = date === stamp ? "test" : "due";
  const marks: string[] = [];
  const before = BEFORE.exec(date);
  if (before) {
    date = date.slice(before[0].length);
    const mark = before[1]!;
    marks.push(mark === "+" ? "cross" : mark.startsWith("V") ? "V" : mark);
  }
  let plus = false;
  for (let behind = BEHIND.exec(date); behind; behind = BEHIND.exec(date)) {
    date = date.slice(0, behind.index);
    const mark = behind[1]!;
    if (mark === "+") plus = true;
    else marks.unshift(/[*★☆]|STAR/.test(mark) ? "star" : mark);
  }
  return { date, means, plus, marks };
}

function tidied(text: string): string {
  return text
    .normalize("NFC")
    .replace(/[\s  ]+/g, " ")
    .trim()
    .toUpperCase();
}

function notAStamp(text: string): never {
  const shown = text.trim().slice(0, LONGEST);
  if (/^(?:19|20)\d{2}$/.test(shown)) {
    return unknown(`"${shown}" gives a year without its month: write both, such as ${shown}/10.`);
  }
  return refuse(`"${shown}" is not a test date: write month and year, such as 2019/10 or 9 A1 32 06.`);
}
