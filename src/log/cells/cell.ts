import { numberWithLetters } from "../../sheet/numberFormat";
import { NEVER_CALCULATED, type CellError } from "../../sheet/sheet";
import { BLANK, unreadable, type Reading } from "../reading";

/** A cell that holds something, with what is needed to understand it. */
export interface Cell {
  readonly value: string | number | boolean | CellError;
  /** Its number format, where it is not General. */
  readonly format: string | undefined;
  readonly dateSystem: 1900 | 1904;
  /** The letters of its text come from the number format: nobody typed them for this cell alone. */
  readonly lettersFromFormat?: boolean;
}

/** The cell as it is seen: a number whose format writes a unit or letters beside it is that text. */
export function asSeen(cell: Cell): Cell {
  const text = typeof cell.value === "number" ? numberWithLetters(cell.value, cell.format) : undefined;
  return text === undefined ? cell : { ...cell, value: text, lettersFromFormat: true };
}

/** Longer texts are prose, pasted by mistake or on purpose to jam the reading; only remarks are kept whatever their length. */
const LONGEST = 500;

/** Whether a cell holds more text than any field but a remark has. */
export function isTooLong(value: unknown): boolean {
  return typeof value === "string" && value.length > LONGEST;
}

/**
 * Text as people meant it: typesetter's spaces, full-width and subscript characters plain, all dashes alike, spaces
 * single, the apostrophe gone that marks text in a spreadsheet.
 */
export function tidy(text: string): string {
  if (ALREADY_TIDY.test(text)) return text;
  return text
    .normalize("NFKC")
    .replace(/[\u200b-\u200d\u2060\ufeff\u00ad]/g, "")
    .replace(/[\u2010-\u2015\u2212]/g, "-")
    .replace(/[\u2018\u2019\u02bc\u00b4`]/g, "'")
    .replace(/[\u201c-\u201f]/g, '"')
    .replace(/\s+/g, " ")
    .trim()
    .replace(/^'(?!')/, "")
    .trim();
}

/** ASCII with single spaces inside, without apostrophe and backtick: most cells, and quick to tell. */
const ALREADY_TIDY = /^[!-&(-_a-~](?: ?[!-&(-_a-~])*$/;

/** For keys and comparisons: lower case, without accents. */
export function plain(text: string): string {
  const tidied = tidy(text).toLowerCase();
  if (ALREADY_TIDY.test(tidied)) return tidied;
  return tidied
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "")
    .normalize("NFC")
    .replace(/[ßøæœđł]/g, (letter) => WITHOUT_ACCENT[letter]!);
}

/** Letters that no accent was put on. */
const WITHOUT_ACCENT: Readonly<Record<string, string>> = {
  ß: "ss",
  ø: "o",
  æ: "ae",
  œ: "oe",
  đ: "d",
  ł: "l",
};

/** A dash, a dot or a slash alone is how people leave a box empty. */
const NOT_RECORDED = /^(?:[-.–/\\_~]+|nil|none|-\s*none\s*-)$/;
const NOT_KNOWN =
  /^(?:\?+|n\.? ?\/ ?a\.?|n\.a\.?|#n\/a|tbd|tbc|tba|unk\.?|unknown|not known|unbekannt|k\.? ?a\.?|inconnue?|desconocid[oa]|see .+|siehe .+|voir .+|ver .+)$/;
const NOT_LEGIBLE =
  /^(?:un-?readable|illegible|not legible|not readable|can'?t read|cannot read|worn(?: off)?|gone|missing|lost|removed|painted(?: over)?|unleserlich|fehlt|illisible|manquant|ilegible|falta)$/;

/**
 * The reading of a text that says nothing of its field: a dash is blank; "N/A", "??" and "see sticker" are not known,
 * and not the same as blank. Undefined for every other text.
 */
export function sayingNothing(text: string): Reading<never> | undefined {
  if (NOT_RECORDED.test(text)) return BLANK;
  if (NOT_KNOWN.test(text)) return unreadable(`“${text}”: not known, or written elsewhere. Write it here.`);
  if (NOT_LEGIBLE.test(text)) return unreadable(`“${text}”: whoever looked could not read it. Look again.`);
  return undefined;
}

/** A ditto mark: the same as in the row above. */
export function isDitto(value: unknown): boolean {
  return (
    typeof value === "string" &&
    value.length < 12 &&
    /^(?:"|''|,,|〃|do\.?|ditto|dito|same|same as above|idem|id\.|dto\.?|=)$/.test(plain(value))
  );
}

/** What a cell holds, for sentences. */
export function shown(cell: Cell): string {
  return typeof cell.value === "object" ? cell.value.error : String(cell.value).trim().slice(0, 60);
}

/** The reading of a cell whose kind of value no field has: a formula's error, or TRUE where a number belongs. */
export function ofNoUse<T>(cell: Cell, wanted: string): Reading<T> {
  if (typeof cell.value === "object" && cell.value.error === NEVER_CALCULATED)
    return unreadable(
      "The formula in this cell was never calculated. Open the file in a spreadsheet, save it, and read it again.",
    );
  return typeof cell.value === "object"
    ? unreadable(`The formula in this cell failed (${cell.value.error}). Mend it, or write ${wanted}.`)
    : unreadable(`“${shown(cell)}” is not ${wanted}.`);
}
