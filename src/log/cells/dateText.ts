import { civilOf, epochDayOf, type EpochDay } from "../../sheet/serialDate";
import { MONTH_NAMES } from "../vocabularies/languages";
import { spellingsOf } from "../vocabularies/spelling";
import { plain } from "./cell";

/** What a text says of a day. */
export type DateText =
  /** Clear by itself: ISO, a month in words, or a part above 12. */
  | { readonly kind: "day"; readonly day: EpochDay; readonly order?: "day first" | "month first" }
  /** Both orders give a day. */
  | {
      readonly kind: "either";
      readonly dayFirst: EpochDay;
      readonly monthFirst: EpochDay;
      readonly dotted: boolean;
    }
  /** The calendar has no such day. */
  | { readonly kind: "impossible"; readonly order?: "day first" | "month first" }
  | { readonly kind: "no year" }
  | { readonly kind: "month only" };

const TIME_BEHIND =
  /(?:t|,? ?(?:um |at )?)\d{1,2}(?::|h)\d{2}(?::\d{2}(?:[.,]\d+)?)? ?(?:[ap]\.?m\.?|z|uhr|h)?$|(?<=\d{4}) \d{1,2} ?[ap]\.?m\.?$/;
const WEEKDAY =
  /^(?:mon|tue|wed|thu|fri|sat|sun|mo|di|mi|do|fr|sa|so|lun|mar|mer|jeu|ven|sam|dim|mie|jue|vie|sab|dom)[a-z]*[.,]? (?=\d|[a-z]{3})/;

const ISO = /^(\d{4})[-/. ](\d{1,2})[-/. ](\d{1,2})$/;
const COMPACT = /^((?:19|20)\d{2})(\d{2})(\d{2})$/;
const NUMERIC = /^(\d{1,2}) ?([-/. ]) ?(\d{1,2}) ?[-/. ] ?(\d{4}|\d{2}|'\d{2})$/;
const DAY_WORD =
  /^(\d{1,2})(?:st|nd|rd|th|er|\.|º)?[-/. ]*(?:of |de )?([a-z]{3,12})\.?[-/., ]*(?:de )?(\d{4}|'?\d{2})$/;
const WORD_DAY = /^([a-z]{3,12})\.?[-/. ]*(\d{1,2})(?:st|nd|rd|th)?,? (\d{4})$/;
const WORD_YEAR_DAY = /^(\d{4})[-/. ]([a-z]{3,12})\.?[-/. ](\d{1,2})$/;
const NO_YEAR = /^\d{1,2}[-/.] ?\d{1,2}\.?$|^\d{1,2}\.?[- ]?[a-z]{3,12}\.?$|^[a-z]{3,12}\.? \d{1,2}$/;
const MONTH_ONLY = /^\d{4}[-/.]\d{1,2}$|^\d{1,2}[-/.]\d{4}$|^[a-z]{3,12}\.?[- ]\d{4}$/;

/**
 * What a text says of a day, or undefined where it is no date. Two-digit years are those that end not later than
 * `latestYear`.
 */
export function dateTextOf(raw: string, latestYear: number): DateText | undefined {
  const text = plain(raw).replace(TIME_BEHIND, "").replace(WEEKDAY, "").trim();
  const year = (digits: string): number => fullYear(digits, latestYear);

  const iso = ISO.exec(text) ?? COMPACT.exec(text);
  if (iso) return dayOrImpossible(epochDayOf(Number(iso[1]), Number(iso[2]), Number(iso[3])));

  const numeric = NUMERIC.exec(text);
  if (numeric) {
    const [, first = "", separator, second = "", last = ""] = numeric;
    return inTwoOrders(Number(first), Number(second), year(last), separator === ".");
  }

  const dayWord = DAY_WORD.exec(text);
  const wordDay = WORD_DAY.exec(text);
  const yearWord = WORD_YEAR_DAY.exec(text);
  const [word, day, written] = dayWord
    ? [dayWord[2], dayWord[1], dayWord[3]]
    : wordDay
      ? [wordDay[1], wordDay[2], wordDay[3]]
      : [yearWord?.[2], yearWord?.[3], yearWord?.[1]];
  if (word !== undefined && day !== undefined && written !== undefined) {
    const month = monthOf(word);
    return month === undefined ? undefined : dayOrImpossible(epochDayOf(year(written), month, Number(day)));
  }
  if (MONTH_ONLY.test(text)) return { kind: "month only" };
  if (NO_YEAR.test(text) && (/^\d+[-/.]/.test(text) || monthOf(text.replace(/[^a-z]/g, "")) !== undefined))
    return { kind: "no year" };
  return undefined;
}

function inTwoOrders(first: number, second: number, year: number, dotted: boolean): DateText {
  const dayFirst = epochDayOf(year, second, first);
  const monthFirst = epochDayOf(year, first, second);
  if (dayFirst !== undefined && monthFirst !== undefined) {
    return dayFirst === monthFirst
      ? { kind: "day", day: dayFirst }
      : { kind: "either", dayFirst, monthFirst, dotted };
  }
  if (dayFirst !== undefined) return { kind: "day", day: dayFirst, order: "day first" };
  if (monthFirst !== undefined) return { kind: "day", day: monthFirst, order: "month first" };
  if (second > 12 && first <= 12) return { kind: "impossible", order: "month first" };
  if (first > 12 && second <= 12) return { kind: "impossible", order: "day first" };
  return { kind: "impossible" };
}

function dayOrImpossible(day: EpochDay | undefined): DateText {
  return day === undefined ? { kind: "impossible" } : { kind: "day", day };
}

/** A two-digit year is the latest that is not after the year the field can reach. */
export function fullYear(digits: string, latestYear: number): number {
  const number = Number(digits.replace("'", ""));
  if (digits.replace("'", "").length === 4) return number;
  const inThisCentury = Math.floor(latestYear / 100) * 100 + number;
  return inThisCentury <= latestYear ? inThisCentury : inThisCentury - 100;
}

/** The names of each month in every language, without accents. */
const MONTHS: readonly (readonly string[])[] = Array.from({ length: 12 }, (_, month) =>
  Object.values(MONTH_NAMES).flatMap((months) => (months[month] ?? []).flatMap(spellingsOf).map(plain)),
);

const MONTH_OF = new Map<string, number | undefined>();

/** The month that a name, or its first three or more letters, stands for; undefined where they fit none or two. */
export function monthOf(name: string): number | undefined {
  if (name.length < 3 || name.length > LONGEST_MONTH) return undefined;
  if (!MONTH_OF.has(name)) {
    const fits = (test: (month: string) => boolean): readonly number[] =>
      MONTHS.flatMap((names, index) => (names.some(test) ? [index + 1] : []));
    const whole = fits((month) => month === name);
    const months = whole.length > 0 ? whole : fits((month) => month.startsWith(name));
    if (MONTH_OF.size > MOST_NAMES) MONTH_OF.clear();
    MONTH_OF.set(name, months.length === 1 ? months[0] : undefined);
  }
  return MONTH_OF.get(name);
}

const LONGEST_MONTH = 12;
/** A hostile column of names must not fill the memory. */
const MOST_NAMES = 2000;

/** The day that is meant if a spreadsheet took its day and month for each other; undefined where it could not. */
export function theOtherWayRound(day: EpochDay): EpochDay | undefined {
  const civil = civilOf(day);
  return civil.day > 12 || civil.day === civil.month
    ? undefined
    : epochDayOf(civil.year, civil.day, civil.month);
}
