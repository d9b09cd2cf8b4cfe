/** Which parts of a date and time a number format shows. */
export interface DateFormat {
  readonly year: boolean;
  readonly month: boolean;
  readonly day: boolean;
  readonly time: boolean;
}

const known = new Map<string, DateFormat | undefined>();
/** Real workbooks have a few dozen formats; a hostile one must not fill the memory. */
const REMEMBERED_FORMATS = 1000;

/**
 * What a number format shows of a date, or undefined for a format that shows none. Decided by the parts it has,
 * never by their order: the order a file states is often not the one on the screen.
 */
export function dateFormatOf(format: string | undefined): DateFormat | undefined {
  if (format === undefined) return undefined;
  if (known.has(format)) return known.get(format);
  if (known.size >= REMEMBERED_FORMATS) known.clear();
  const parts = partsOf(format);
  known.set(format, parts);
  return parts;
}

function partsOf(format: string): DateFormat | undefined {
  const shown = sectionsOf(format)[0]!
    .replace(LITERALS, " ")
    // Colours, conditions and languages stand in brackets; elapsed hours do too, and are a time.
    .replace(/\[(h+|m+|s+)\]/gi, " h ")
    .replace(/\[[^\]]*\]/g, " ")
    .replace(/AM\/PM|A\/P/gi, " h ")
    .toLowerCase();
  // A number as it comes, whatever stands beside it: `General" psi"`, `[Red]General`, `General_)`.
  if (/general|standard|@/.test(shown) || /[0#?]/.test(shown.replace(/s[.,]0+/g, "s"))) return undefined;
  // An m beside hours or seconds is minutes.
  const withoutMinutes = shown.replace(/h[^a-z]*m{1,2}(?!m)/g, "h").replace(/m{1,2}[^a-z]*s/g, "s");
  const parts = {
    year: /[ye]/.test(withoutMinutes),
    month: /m/.test(withoutMinutes),
    day: /d/.test(withoutMinutes),
    time: /[hs]/.test(withoutMinutes),
  };
  return parts.year || parts.month || parts.day || parts.time ? parts : undefined;
}

/** Whether the cell shows a day, a month or a year, and not only a time. */
export function showsDate(format: string | undefined): boolean {
  const parts = dateFormatOf(format);
  return parts !== undefined && (parts.year || parts.month || parts.day);
}

/** Whether the cell shows a time and nothing of a date. */
export function showsTimeOnly(format: string | undefined): boolean {
  const parts = dateFormatOf(format);
  return parts !== undefined && parts.time && !(parts.year || parts.month || parts.day);
}

/** Quoted text, one escaped letter, the width of a letter, a letter that fills the cell. */
const LITERALS = /"[^"]*"?|\\.|_.|\*./g;

/** The sections of a format; a semicolon within quotes separates nothing. */
function sectionsOf(format: string): readonly string[] {
  return [...format.matchAll(/(?:^|;)((?:"[^"]*"?|\\.|\[[^\]]*\]|[^;])*)/g)].map(
    ([, section = ""]) => section,
  );
}

/** How one section writes a number. */
interface Section {
  /** The numbers it is for. */
  readonly fits: (number: number) => boolean;
  /** Undefined where it writes no letters. */
  readonly write: ((number: number) => string) | undefined;
}

const written = new Map<string, readonly Section[]>();

/**
 * A number as the cell shows it, where its format writes letters beside it: `0" bar"` shows 200 as `200 bar`, and
 * `"HK"0000` shows 7 as `HK0007`. All digits of the number are kept. Undefined where the format writes no letters, and
 * where it shows a date, a scaled number or a power of ten.
 */
export function numberWithLetters(number: number, format: string | undefined): string | undefined {
  if (format === undefined) return undefined;
  let sections = written.get(format);
  if (sections === undefined) {
    if (written.size >= REMEMBERED_FORMATS) written.clear();
    written.set(format, (sections = writersOf(format)));
  }
  if (sections.length === 0) return undefined;
  return sections.find(({ fits }) => fits(number))?.write?.(number);
}

/** Which numbers a section without a condition is for, by how many sections there are: ECMA-376 part 1, 18.8.31. */
const USUAL: readonly (readonly ((number: number) => boolean)[])[] = [
  [() => true],
  [(number) => number >= 0, () => true],
  [(number) => number > 0, (number) => number < 0, () => true],
];

function writersOf(format: string): readonly Section[] {
  if (!/\p{L}/u.test(format) || dateFormatOf(format) !== undefined) return [];
  const sections = sectionsOf(format).slice(0, 3);
  const isConditional = sections.some((section) => CONDITION.test(section));
  const all = sections.map((section, at): Section => ({
    fits: isConditional ? conditionOf(section) : USUAL[sections.length - 1]![at]!,
    // A section for negative numbers writes the sign itself.
    write: writerOf(section, at > 0),
  }));
  return all.some(({ write }) => write !== undefined) ? all : [];
}

const CONDITION = /\[(<=|>=|<>|<|>|=)(-?[\d.]+)\]/;

const COMPARISONS: Record<string, (number: number, bound: number) => boolean> = {
  "<=": (number, bound) => number <= bound,
  ">=": (number, bound) => number >= bound,
  "<>": (number, bound) => number !== bound,
  "<": (number, bound) => number < bound,
  ">": (number, bound) => number > bound,
  "=": (number, bound) => number === bound,
};

function conditionOf(section: string): (number: number) => boolean {
  const [, sign = "", bound] = CONDITION.exec(section) ?? [];
  const isMet = COMPARISONS[sign];
  return isMet ? (number) => isMet(number, Number(bound)) : () => true;
}

function writerOf(format: string, hasOwnSign: boolean): ((number: number) => string) | undefined {
  const section = format
    .replace(/\[\$([^\]-]*)[^\]]*\]/g, (_whole, sign: string) => `"${sign}"`)
    .replace(/\[[^\]]*\]/g, "");
  const bare = section.replace(LITERALS, (literal) => "\u0001".repeat(literal.length));
  const found = /(?:general|standard|[#0?](?:[#0?., ]*[#0?])?)/i.exec(bare);
  // A comma behind the digits divides by a thousand; a fraction or a power of ten is another writing again.
  if (!found || /^(?:,|e[+-])|[/#0?]/i.test(bare.slice(found.index + found[0].length))) return undefined;
  const before = literalText(section.slice(0, found.index));
  const behind = literalText(section.slice(found.index + found[0].length));
  if (!/\p{L}/u.test(before + behind)) return undefined;
  const least = /^0+$/.test(found[0]) ? found[0].length : 0;
  const times = bare.includes("%") ? 100 : 1;
  return (number) => {
    const scaled = Number(((hasOwnSign ? Math.abs(number) : number) * times).toPrecision(15));
    const figure = String(scaled).padStart(least, "0");
    return `${before}${figure}${behind}`.trim();
  };
}

/** What a part of a format writes as it stands. */
function literalText(part: string): string {
  return part.replace(LITERALS, (literal) => {
    if (literal.startsWith("_")) return " ";
    if (literal.startsWith("*")) return "";
    return literal.startsWith('"') ? literal.replaceAll('"', "") : literal.slice(1);
  });
}

/** How many digits a format such as `00000` or `00-0000` fills up with zeros; 0 for other formats. */
export function paddedDigits(format: string | undefined): number {
  return format !== undefined && /^0[0 -]*0$/.test(format) ? format.replace(/[^0]/g, "").length : 0;
}
