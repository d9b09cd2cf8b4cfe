import type { Temporal } from "temporal-polyfill";
import { dateTextOf, monthOf } from "../../log/cells/dateText";
import type { Field, LogColumn } from "../../log/log";
import { showsDate } from "../../sheet/numberFormat";
import { epochDayOfSerial, plainDateOf } from "../../sheet/serialDate";
import type { Sheet, SheetRow } from "../../sheet/sheet";

/** What the rows of a log sheet say of the row that is to follow them. */
export interface LogPlace {
  /** The next of its plain running numbers; undefined where the column holds anything else. */
  readonly nextNumber: number | undefined;
  /** That the sheet is of another month than the fill; a sentence. */
  readonly otherMonth: string | undefined;
}

export function logPlace(sheet: Sheet, columns: readonly LogColumn[], today: Temporal.PlainDate): LogPlace {
  const dated = sheet.rows.flatMap((row) => {
    const day = dayIn(row, columnFor("date", columns), sheet);
    return day ? [{ row, day }] : [];
  });
  const number = columnFor("number", columns);
  return {
    nextNumber: number === undefined ? undefined : nextOf(dated.map(({ row }) => row.values[number])),
    otherMonth: otherMonth(
      sheet.name,
      dated.map(({ day }) => day),
      today,
    ),
  };
}

function columnFor(field: Field, columns: readonly LogColumn[]): number | undefined {
  return columns.find((column) => column.field === field)?.column;
}

function dayIn(row: SheetRow, column: number | undefined, sheet: Sheet): Temporal.PlainDate | undefined {
  if (column === undefined) return undefined;
  const value = row.values[column];
  if (typeof value === "number" && showsDate(row.formats?.[column])) {
    const day = epochDayOfSerial(value, sheet.dateSystem);
    return day === undefined ? undefined : plainDateOf(day);
  }
  const said = typeof value === "string" ? dateTextOf(value, LATEST_YEAR) : undefined;
  return said?.kind === "day" ? plainDateOf(said.day) : undefined;
}

/** A two-digit year is of this century. */
const LATEST_YEAR = 2099;

/** One more than the last, where they are whole numbers that run on by one there; a guess would be a number given twice. */
function nextOf(numbers: readonly unknown[]): number | undefined {
  const [before, last] = numbers.slice(-2);
  const areWhole = numbers.every((each): each is number => Number.isInteger(each));
  if (!areWhole || typeof last !== "number" || last !== Number(before) + 1) return undefined;
  return numbers.every((each) => each <= last) ? last + 1 : undefined;
}

function otherMonth(
  name: string,
  days: readonly Temporal.PlainDate[],
  today: Temporal.PlainDate,
): string | undefined {
  const named = monthNamed(name);
  const isOther = (month: number | undefined, year: number | undefined) =>
    (month !== undefined && month !== today.month) || (year !== undefined && year !== today.year);
  const fill = `this fill is of ${monthText(today)}`;
  if (isOther(named.month, named.year)) return `The sheet is named “${name}”, and ${fill}.`;
  const [first] = days;
  if (!first || named.month !== undefined || !isOther(first.month, first.year)) return undefined;
  const isOneMonth = days.every(({ month, year }) => month === first.month && year === first.year);
  return isOneMonth ? `The sheet holds fills of ${monthText(first)} alone, and ${fill}.` : undefined;
}

/** `October 2026`, `Okt`, `2026-10`, `2026`: what month and year a sheet is named for, as far as it says. */
function monthNamed(name: string): { readonly month?: number; readonly year?: number } {
  const plain = name.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  const year = /(?<!\d)20\d{2}(?!\d)/.exec(plain)?.[0];
  const word = plain.match(/[a-z]+/g)?.flatMap((each) => monthOf(each) ?? [])[0];
  const digits = /(?<!\d)20\d{2}[-_. ](0?[1-9]|1[0-2])(?!\d)|(?<!\d)(0?[1-9]|1[0-2])[-_. ]20\d{2}(?!\d)/.exec(
    plain,
  );
  const month = word ?? (digits ? Number(digits[1] ?? digits[2]) : undefined);
  return { ...(month !== undefined && { month }), ...(year !== undefined && { year: Number(year) }) };
}

function monthText(day: Temporal.PlainDate): string {
  return day.toLocaleString("en-GB", { month: "long", year: "numeric" });
}
