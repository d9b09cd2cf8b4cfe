import { dateFormatOf } from "../../sheet/numberFormat";
import { isBlank, type CellValue, type SheetRow } from "../../sheet/sheet";
import { plain } from "../cells/cell";
import { CYLINDER_FIELDS, isCylinderOnly } from "../fieldKinds";
import type { Field, RowKind, SheetKind } from "../log";
import type { Reading } from "../reading";
import type { RowReadings } from "./records";

/** A row's kind, and why where it could not be read. */
export type RowVerdict =
  { readonly kind: Exclude<RowKind, "unreadable"> } | { readonly kind: "unreadable"; readonly why?: string };

/** Fields of which two that can be read make a fill. */
const CORE_OF_FILL: readonly Field[] = [
  "date",
  "serial",
  "shopNumber",
  "startPressure",
  "endPressure",
  "settledPressure",
  "startMix",
  "orderedMix",
  "analysedMix",
  "method",
  "filledBy",
];

/** What proves that gas went in. */
const PROOF_OF_FILL: readonly Field[] = [
  "endPressure",
  "settledPressure",
  "analysedMix",
  "oxygenAdded",
  "heliumAdded",
];

const TOTALS =
  /^(?:(?:grand|sub-?|running|monthly|weekly|daily|monats|jahres|zwischen|gesamt)[ -]?)*(?:totals?|totaux|sum|summe|gesamt|somme|suma|average|avg|mean|count|mittelwert|durchschnitt|schnitt|moyenne|promedio|media)\b|^\d+ fills?\b|^fills?:? *\d+$/;
/** Says that nothing was filled, wherever it stands: “Not filled, hydro out”; not “not filled to 3000”. */
const NOT_FILLED =
  /\b(?:not filled|unfilled|(?:fill|filling) (?:refused|rejected|declined|cancell?ed)|(?:refused|rejected|declined|cancell?ed) fill|nicht gefullt|keine fullung|non gonfle|no llenad[oa])\b(?! (?:to|up|full|fully|completely|bis|voll)\b)|^no fill(?=$|[^a-z ]| [^a-z])/;
/** Says so where it begins a remark and stands alone: “Refused: no visual”; not “refused to sign”. */
const CALLED_OFF =
  /^(?:refused|rejected|turned away|declined|void(?:ed)?|cancell?ed|abgelehnt|storniert|refusee?|annulee?|rechazad[oa]|anulad[oa])(?=$|[^a-z ]| [^a-z])/;
/** May say so, or that somebody refused something else. */
const MAY_BE_CALLED_OFF =
  /no fill|refused|rejected|turned away|declined|\bvoid|cancel|abgelehnt|storniert|refuse|annule|rechazad|anulad/;

/** What a row of a table counts as. Headings are known before; what is left is judged by what could be read. */
export function rowKindOf(
  row: SheetRow,
  readings: RowReadings,
  furtherTests: number,
  sheetKind: SheetKind,
  sums: (row: SheetRow) => boolean,
): RowVerdict {
  const isRow = sheetKind === "register" ? isCylinder(readings, furtherTests) : isFill(readings);
  if (isRow && !mayBeTotals(readings)) return ofRow(row, readings, sheetKind);
  const texts = textsOf(row);
  if (texts.some(namesTotals)) return { kind: "totals" };
  if (isRow) return ofRow(row, readings, sheetKind);
  const said = row.values.filter(saysSomething);
  if (said.length === 0 || onlyNumbered(said, readings)) return { kind: "blank" };
  if (said.length === 1 && isTitle(row)) return { kind: "heading" };
  if (!texts.some(hasLetters) && sums(row)) return { kind: "totals" };
  if (sheetKind === "register" && hasNoSerial(readings, furtherTests)) return { kind: "cylinder" };
  return { kind: sheetKind !== "register" && saysNotFilled(row, readings) ? "not filled" : "unreadable" };
}

function isFill(readings: RowReadings): boolean {
  let core = 0;
  for (const field of CORE_OF_FILL) if (isRead(readings[field])) core++;
  return core >= 2;
}

/** A cylinder is named, or has no name and is described all the same. */
function isCylinder(readings: RowReadings, furtherTests: number): boolean {
  const named = isRead(readings.serial) || isRead(readings.shopNumber);
  return named && describedBy(readings) + furtherTests > 0;
}

function hasNoSerial(readings: RowReadings, furtherTests: number): boolean {
  const described = describedBy(readings) + furtherTests;
  return readings.serial.kind === "unreadable" ? described > 0 : described > 1;
}

const DESCRIBING = CYLINDER_FIELDS.filter(isCylinderOnly);

function describedBy(readings: RowReadings): number {
  return DESCRIBING.filter((field) => readings[field].kind !== "blank").length;
}

/** A row that says itself that nothing was filled is no fill, though a date and a serial stand in it. */
function ofRow(row: SheetRow, readings: RowReadings, sheetKind: SheetKind): RowVerdict {
  if (sheetKind === "register") return { kind: "cylinder" };
  if (saysNotFilled(row, readings)) return { kind: "not filled" };
  const remark = remarkIn(readings);
  return isProven(readings) || !MAY_BE_CALLED_OFF.test(plain(remark))
    ? { kind: "fill" }
    : {
        kind: "unreadable",
        why: `The remarks say “${remark.slice(0, 60)}”, and no end pressure stands here: not taken for a fill.`,
      };
}

function saysNotFilled(row: SheetRow, readings: RowReadings): boolean {
  return (
    !isProven(readings) &&
    (CALLED_OFF.test(plain(remarkIn(readings))) || textsOf(row).some((text) => NOT_FILLED.test(plain(text))))
  );
}

function remarkIn({ remarks }: RowReadings): string {
  return remarks.kind === "value" ? remarks.value : "";
}

function textsOf({ values }: SheetRow): readonly string[] {
  return values.filter((value): value is string => typeof value === "string" && !isBlank(value));
}

function isProven(readings: RowReadings): boolean {
  return PROOF_OF_FILL.some((field) => isRead(readings[field]));
}

/** Customers may be called Total Diving: only a row without a cylinder or without a date can be a sum. */
function mayBeTotals(readings: RowReadings): boolean {
  return readings.date.kind !== "value" || !(isRead(readings.serial) || isRead(readings.shopNumber));
}

/** `Total`, `Sum of the week`, `26 fills`. */
export function namesTotals(text: string): boolean {
  return text.length < 40 && TOTALS.test(plain(text));
}

/** Words alone in a row; or a month alone, as a spreadsheet turns the title “August 2026” into a date. */
function isTitle({ values, formats }: SheetRow): boolean {
  const column = values.findIndex(saysSomething);
  const said = values[column];
  if (typeof said === "string") return hasLetters(said);
  const shows = typeof said === "number" ? dateFormatOf(formats?.[column]) : undefined;
  return shows !== undefined && shows.month && !shows.day;
}

function hasLetters(text: string): boolean {
  return /\p{L}/u.test(text);
}

/** A form numbered in advance, with a formula or a tick box here and there, holds nothing yet. */
function onlyNumbered(said: readonly CellValue[], readings: RowReadings): boolean {
  const [only, ...others] = said;
  return (
    others.length === 0 &&
    readings.number.kind !== "blank" &&
    /^[a-z]{0,3}[-. ]?\d+$/i.test(String(only).trim())
  );
}

function saysSomething(value: CellValue): boolean {
  return !isBlank(value) && value !== false && value !== 0;
}

function isRead(reading: Reading<unknown>): boolean {
  return reading.kind === "value" || reading.kind === "ambiguous";
}
