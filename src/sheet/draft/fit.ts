import { dateFormatOf } from "../numberFormat";
import type { CellValue } from "../sheet";

/** Height of a line of the usual font, in points. */
const LINE_PT = 15;
const MARGIN_PT = 3;
export const ONE_LINE_PT = LINE_PT + MARGIN_PT;
/** Room for a cell's padding, in characters; headings of tables carry a button besides. */
const PADDING = 1.7;
const BUTTON = 2.3;
/** Texts of mixed letters run a little narrower than the digits that widths are counted in. */
const TEXT_PER_DIGIT = 0.95;

/** How many characters a value takes up in a line. */
export function shownLength(value: CellValue, format: string | undefined): number {
  if (typeof value === "number") return numberLength(value, format);
  if (typeof value === "boolean") return 5;
  const text = value === null ? "" : typeof value === "string" ? value : value.error;
  return Math.max(...text.split("\n").map((line) => line.length)) * TEXT_PER_DIGIT;
}

function numberLength(value: number, format: string | undefined): number {
  if (format === undefined) return String(Number(value.toPrecision(10))).length;
  if (dateFormatOf(format)) return format.length;
  const decimals = /\.(0+)/.exec(format)?.[1]?.length ?? 0;
  const shown = format.includes("%") ? value * 100 : value;
  const digits = Math.abs(shown).toFixed(decimals).length;
  const separators = format.includes(",") ? Math.floor(Math.max(0, digits - decimals - 2) / 3) : 0;
  return digits + separators + (value < 0 ? 1 : 0) + (format.includes("%") ? 1 : 0);
}

/** A column's width for texts of these lengths, wrapped beyond the most; its heading may take two lines. */
export function widthFor(heading: string, longest: number, mostCharacters: number): number {
  const words = heading.split(" ").map(({ length }) => length);
  const headingLength = Math.max(Math.max(...words), Math.ceil(heading.length / 2)) + BUTTON;
  const width = Math.max(headingLength, Math.min(longest, mostCharacters)) + PADDING;
  return Math.ceil(width * 4) / 4;
}

/**
 * How high a row must be for a text across so many characters. Excel finds out by itself, but not for merged cells; other
 * programs do not.
 */
export function heightFor(text: string, widthCharacters: number): number {
  const lines = text.split("\n").reduce((sum, line) => sum + linesOf(line, widthCharacters - PADDING), 0);
  return lines * LINE_PT + MARGIN_PT;
}

/** Counted word by word, as they are broken. */
function linesOf(line: string, width: number): number {
  let lines = 1;
  let used = 0;
  for (const word of line.split(" ")) {
    const long = runOf(word);
    if (used > 0 && used + SPACE + long > width) {
      lines += 1;
      used = long;
    } else used += (used > 0 ? SPACE : 0) + long;
    while (used > width) {
      lines += 1;
      used -= width;
    }
  }
  return lines;
}

/**
 * Letters are wider or narrower than the digits that widths are counted in: the most that they are in the fonts that
 * spreadsheets begin with, from their tables of widths (Calibri, Arial, DejaVu Sans).
 */
const LETTERS: readonly (readonly [letters: string, digits: number])[] = [
  [".,:;'!|/()[]-ijlI’", 0.6],
  ["tfr", 0.72],
  ["cskvxyzJ", 0.93],
  ["mwMW@%&", 1.6],
  ["ABCDEFGHKLNOPQRSTUVXYZ", 1.3],
];
const WIDTHS = new Map(LETTERS.flatMap(([letters, width]) => [...letters].map((each) => [each, width])));
const SPACE = 0.52;

/** How many digits wide a word is. */
function runOf(word: string): number {
  let run = 0;
  for (const letter of word) run += WIDTHS.get(letter) ?? 1;
  return run;
}
