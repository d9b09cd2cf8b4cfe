const GROUPED_BY_SPACE = /^\d{1,3}(?:[ ']\d{3})+(?:[.,]\d+)?$/;
const PLAIN = /^(?:\d+|\d*[.,]\d+|\d+[.,])$/;
const GROUPED_BY_COMMA = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/;
const GROUPED_BY_DOT = /^\d{1,3}(?:\.\d{3})+(?:,\d+)?$/;

/**
 * The numbers that a tidied text may stand for: none where it is no number, one where it is clear, two where
 * thousands and decimals cannot be told apart (`3.000`). A comma before three digits groups thousands.
 */
export function numbersIn(text: string): readonly number[] {
  if (text.startsWith("-")) return numbersIn(text.slice(1).trim()).map((number) => -number);
  if (text.startsWith("+")) return numbersIn(text.slice(1).trim());
  if (GROUPED_BY_SPACE.test(text)) return numbersIn(text.replace(/[ ']/g, ""));
  if (/^0[.,]/.test(text) && PLAIN.test(text)) return [decimal(text)];
  if (GROUPED_BY_COMMA.test(text)) return [Number(text.replace(/,/g, ""))];
  if (GROUPED_BY_DOT.test(text)) {
    const grouped = Number(text.replace(/\./g, "").replace(",", "."));
    return text.includes(",") || text.indexOf(".") !== text.lastIndexOf(".")
      ? [grouped]
      : [grouped, Number(text)];
  }
  return PLAIN.test(text) ? [decimal(text)] : [];
}

function decimal(text: string): number {
  return Number(text.replace(",", "."));
}
