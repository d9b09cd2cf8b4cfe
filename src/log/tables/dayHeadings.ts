import { dateFormatOf } from "../../sheet/numberFormat";
import { isBlank, type SheetRow } from "../../sheet/sheet";
import { dateTextOf } from "../cells/dateText";
import { withFilled, type FilledSheet, type Filling } from "./filledCells";
import { roleOf, type Role } from "../headings/headingFields";
import { meaningOf, type HeadingMeaning } from "../headings/headingText";
import { namesTotals } from "../rows/rowKind";
import { LATEST_YEAR_UNKNOWN } from "../settle/dates";
import type { Table } from "./table";

/** What the reading of such a day says of it. */
export const FROM_DAY_ABOVE = "from the day above";

/** A sheet in which rows have the day that is written above them, and its tables, of which that day is a heading. */
export interface DatedSheet {
  readonly filled: FilledSheet;
  readonly tables: readonly Table[];
}

/**
 * A day alone in its row holds for the fills below that have none of their own: so are days headed where a date is
 * written once a day. A fill with a day of its own, or a sum, ends it. A day above fills that all have their own heads
 * nothing, and stays what it was; nor does one above the headings, which may be the day of printing.
 *
 * Where no column holds dates, the days stand in one more, to the right of all.
 */
export function datedByHeadings(given: FilledSheet, tables: readonly Table[]): DatedSheet {
  const fillings: Filling[] = [];
  const dated = tables.map((table) => {
    const dates = columnOf(table, "date");
    const found = fillingsOf(given, table, dates ?? table.meanings.length);
    if (found.length === 0) return table;
    fillings.push(...found);
    return {
      ...table,
      meanings: dates === undefined ? [...table.meanings, DAY_ABOVE] : table.meanings,
      headingRows: new Set([...table.headingRows, ...found.map(({ of }) => of.row)]),
    };
  });
  return { filled: withFilled(given, fillings, FROM_DAY_ABOVE), tables: dated };
}

/** The heading over days that have no column. */
const DAY_ABOVE: HeadingMeaning = { ...meaningOf("Date"), heading: "Day above the fills" };

function fillingsOf({ sheet }: FilledSheet, table: Table, dates: number): readonly Filling[] {
  const names = [columnOf(table, "serial"), columnOf(table, "shopNumber")].filter((at) => at !== undefined);
  if (table.firstHeading === undefined || names.length === 0) return [];
  const fillings: Filling[] = [];
  let day: Filling["of"] | undefined;
  for (let at = table.firstHeading; at <= table.lastRow; at++) {
    const row = sheet.rows[at]!;
    const alone = table.headingRows.has(at) ? undefined : onlyCell(row);
    if (alone !== undefined && isDay(row, alone)) day = { row: at, column: alone };
    else if (day === undefined || table.headingRows.has(at) || alone !== undefined) continue;
    else if (!isBlank(row.values[dates]) || namesSum(row)) day = undefined;
    else if (names.some((column) => !isBlank(row.values[column])))
      fillings.push({ row: at, column: dates, of: day });
  }
  return fillings;
}

function columnOf({ meanings }: Table, role: Role): number | undefined {
  const at = meanings.findIndex((meaning) => meaning.heading !== "" && roleOf(meaning)?.role === role);
  return at < 0 ? undefined : at;
}

function onlyCell({ values }: SheetRow): number | undefined {
  let only: number | undefined;
  for (let column = 0; column < values.length; column++) {
    if (isBlank(values[column])) continue;
    if (only !== undefined) return undefined;
    only = column;
  }
  return only;
}

/** A whole day: a month alone is a title. */
function isDay({ values, formats }: SheetRow, column: number): boolean {
  const value = values[column];
  if (typeof value === "number") {
    const shows = dateFormatOf(formats?.[column]);
    return shows !== undefined && shows.month && shows.day;
  }
  const said = typeof value === "string" ? dateTextOf(value, LATEST_YEAR_UNKNOWN) : undefined;
  return said?.kind === "day" || said?.kind === "either";
}

function namesSum({ values }: SheetRow): boolean {
  return values.some((value) => typeof value === "string" && namesTotals(value));
}
