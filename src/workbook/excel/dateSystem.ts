import type { SheetRow } from "../../sheet/sheet";
import { sheetNamed } from "./outline";
import type { Session } from "./session";

type DateSystem = 1900 | 1904;

/** The serial of a day is so much less in a workbook that counts from 1904. */
const SHIFT_DAYS = 1462;
/** Dates that are looked at as they are shown. */
const WITNESSES = 8;

/** A date whose cell shows its year, in two digits or four. */
interface Witness {
  readonly row: number;
  readonly column: number;
  readonly serial: number;
  readonly yearDigits: 2 | 4;
}

/**
 * The day a workbook counts its dates from. Excel has no property for it, so evidence decides: the years that
 * dates show in their cells; else what Excel's own DATE makes of 1 January 1904; else 1900, the usual.
 */
export async function dateSystemOf(
  session: Session,
  sheetName: string,
  rows: readonly SheetRow[],
): Promise<DateSystem> {
  const { witnesses, anyDates } = findDates(rows);
  const shown = witnesses.length > 0 ? await byShownYears(session, sheetName, witnesses) : undefined;
  return shown ?? (anyDates ? await dateSystemByFunction(session) : undefined) ?? 1900;
}

function findDates(rows: readonly SheetRow[]): { witnesses: Witness[]; anyDates: boolean } {
  const witnesses: Witness[] = [];
  let anyDates = false;
  for (const [row, { values, formats }] of rows.entries()) {
    for (const [column, format] of formats?.entries() ?? []) {
      const serial = values[column];
      if (typeof serial !== "number" || serial < 1 || !format) continue;
      const codes = dateCodes(format);
      anyDates ||= /[dy]/.test(codes);
      const year = /y+/.exec(codes)?.[0];
      if (year) witnesses.push({ row, column, serial, yearDigits: year.length > 2 ? 4 : 2 });
      if (witnesses.length === WITNESSES) return { witnesses, anyDates };
    }
  }
  return { witnesses, anyDates };
}

/** A number format without quoted text, escaped letters, colours and locales. */
const dateCodes = (format: string) => format.toLowerCase().replace(/"[^"]*"|\\.|\[[^\]]*\]/g, "");

/** The system under which every witness shows its right year, unless that holds for both or for none. */
async function byShownYears(
  session: Session,
  sheetName: string,
  witnesses: readonly Witness[],
): Promise<DateSystem | undefined> {
  const texts = await session.read(sheetNamed(sheetName), async (context) => {
    const sheet = context.workbook.worksheets.getItem(sheetName);
    const cells = witnesses.map((witness) => {
      const cell = sheet.getRangeByIndexes(witness.row, witness.column, 1, 1);
      cell.load("text");
      return cell;
    });
    await context.sync();
    return cells.map((cell) => cell.text[0]![0]!);
  });
  const holds = (shift: number) =>
    witnesses.every(({ serial, yearDigits }, index) => {
      const year = String(yearOf(serial + shift)).slice(-yearDigits);
      return texts[index]!.match(/\d+/g)?.includes(year) ?? false;
    });
  const [from1900, from1904] = [holds(0), holds(SHIFT_DAYS)];
  return from1900 === from1904 ? undefined : from1900 ? 1900 : 1904;
}

/** The year of a serial counted from 1900. */
const yearOf = (serial: number) => new Date((serial - 25_569) * 86_400_000).getUTCFullYear();

/**
 * What Excel's own DATE and YEAR tell of the workbook; undefined where they tell nothing, or not the same. Which year
 * day 0 falls in, and which number 1 January 1904 has, both depend on it.
 */
export async function dateSystemByFunction(session: Session): Promise<DateSystem | undefined> {
  try {
    return await session.read("the dates of this workbook", async (context) => {
      const { functions } = context.workbook;
      const newYear1904 = functions.date(1904, 1, 1);
      const yearOfDay0 = functions.year(0);
      newYear1904.load("value");
      yearOfDay0.load("value");
      await context.sync();
      const told = `${newYear1904.value} ${yearOfDay0.value}`;
      return told === "0 1904" ? 1904 : told === `${SHIFT_DAYS} 1900` ? 1900 : undefined;
    });
  } catch {
    return undefined;
  }
}

/** Has every formula calculated again. */
export function calculateAgain(session: Session): Promise<void> {
  return session.read("the formulas", async (context) => {
    context.workbook.application.calculate("Full");
    await context.sync();
  });
}
