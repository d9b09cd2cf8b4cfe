import { paddedDigits, showsDate } from "../../sheet/numberFormat";
import { unreadable, value, type Reading } from "../reading";
import { ofNoUse, plain, sayingNothing, shown, tidy, type Cell } from "./cell";

const NO_SERIAL = /^(?:no (?:number|serial|s\/?n|#)|none|ohne|keine?|sans|sin)\b/;
const BETWEEN_TWINS = /\s+\/\s+|\s*[+&,;\n]\s*|\s+(?:and|und|et|y)\s+/i;

/**
 * Reads a cylinder's serial number, or both of a twin set, as written: people look their log up by what stands there.
 * Letters, zeros in front and an E that looks like a power of ten are safe. Serials are compared by `serialKey`.
 */
export function readSerial(cell: Cell): Reading<readonly string[]> {
  if (typeof cell.value === "number") return fromNumber(cell.value, cell);
  if (typeof cell.value !== "string") return ofNoUse(cell, "a serial number");
  const text = tidy(withoutUnit(cell).replace(/\r?\n/g, " / "));
  const lower = plain(text);
  if (NO_SERIAL.test(lower)) return unreadable(`“${shown(cell)}”: no serial. Look at the shoulder again.`);
  const nothing = sayingNothing(lower);
  if (nothing) return nothing;
  const serials = apart(text).map(withoutLabel);
  if (serials.some((serial) => serialKey(serial) === ""))
    return unreadable(`“${shown(cell)}” is not a serial number.`);
  if (serials.some((serial) => /[?*]|\.\./.test(serial)))
    return unreadable(`“${shown(cell)}”: a character of the serial is missing. Look at the shoulder again.`);
  return value(serials);
}

/** The form in which serials are compared: capitals, no spaces, no hyphens. `G-16807130` is `G16807130`. */
export function serialKey(serial: string): string {
  return withoutLabel(serial)
    .toUpperCase()
    .replace(/[\s_-]+/g, "");
}

/** A number format carried over from a column of pressures writes a unit behind the serial, which is none of it. */
function withoutUnit({ value, lettersFromFormat }: Cell): string {
  const text = String(value);
  return lettersFromFormat === true ? text.replace(/(\d) ?(?:psi|bar|%)$/i, "$1") : text;
}

function withoutLabel(serial: string): string {
  return serial.replace(/^(?:s\/?n|ser(?:ial)?|no|nr)[.:# ]+(?=\S*\d)/i, "");
}

/** Twins stand in one cell, apart by a sign; a slash without spaces only where both sides look alike. */
function apart(text: string): readonly string[] {
  const parts = text.split(BETWEEN_TWINS).filter((part) => part !== "");
  if (parts.length > 1) return parts;
  const sides = text.split("/");
  const [left = "", right = ""] = sides;
  const shape = (side: string): string => side.replace(/\d/g, "0").replace(/[a-z]/gi, "A");
  return sides.length === 2 && left.length >= 4 && shape(left) === shape(right) ? sides : [text];
}

function fromNumber(number: number, cell: Cell): Reading<readonly string[]> {
  if (showsDate(cell.format))
    return unreadable(
      "The spreadsheet turned this serial into a date. Write it again in a cell formatted as text.",
    );
  if (!Number.isInteger(number) || Math.abs(number) >= 1e15)
    return unreadable(
      `${shown(cell)}: the spreadsheet turned this serial into a number and lost digits. Write it again in a cell formatted as text.`,
    );
  if (number < 0) return ofNoUse(cell, "a serial number");
  return value([String(number).padStart(paddedDigits(cell.format), "0")]);
}
