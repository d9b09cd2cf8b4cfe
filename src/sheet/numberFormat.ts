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
  if (/^(general|standard|@)$/i.test(format.trim())) return undefined;
  const shown = format
    .split(";", 1)[0]!
    .replace(/"[^"]*"?|\\.|_.|\*./g, " ")
    // Colours, conditions and languages stand in brackets; elapsed hours do too, and are a time.
    .replace(/\[(h+|m+|s+)\]/gi, " h ")
    .replace(/\[[^\]]*\]/g, " ")
    .replace(/AM\/PM|A\/P/gi, " h ")
    .toLowerCase();
  if (/[0#?]/.test(shown.replace(/s[.,]0+/g, "s"))) return undefined;
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

/** How many digits a format such as `00000` fills up with zeros; 0 for other formats. */
export function paddedDigits(format: string | undefined): number {
  return format !== undefined && /^0{2,}$/.test(format) ? format.length : 0;
}
