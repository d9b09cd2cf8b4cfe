import { isBlank, type CellValue } from "../../sheet/sheet";
import { wordsOf } from "../../log/headings/headingWords";

/** The columns of a price list. */
export type PriceColumn =
  | "item"
  | "pay"
  | "payPer"
  | "charge"
  | "chargePer"
  | "bottle"
  | "holds"
  | "full"
  | "left"
  | "losses"
  | "remarks";

export interface HeadingRow {
  /** Column numbers; a column that is not there is absent. */
  readonly columns: Readonly<Partial<Record<PriceColumn, number>>>;
  /** The unit that a heading gives for the pressures or volumes below it. */
  readonly units: Readonly<Partial<Record<PriceColumn, string>>>;
}

const HEADINGS: readonly (readonly [PriceColumn | "per", string])[] = [
  ["item", "what|item|items|gas|article|supply|product|setting|was|artikel|quoi|que"],
  ["pay", "we pay|pay|price|price paid|cost|costs|unit price|cost price|purchase price|amount|value|preis|kosten|prix|precio"],
  ["charge", "we charge|charge|price charged|charged|selling price|sale price|customer price|customer pays"],
  ["per", "per|unit|for one|charged for|for each|for|basis|einheit|unite|unidad"],
  ["bottle", "water volume|bottle volume|bottle water volume|volume of the bottle"],
  ["holds", "holds|gas content|content|contents|gas in a full one|holds when full"],
  ["full", "full|full at|filled to|full pressure"],
  ["left", "left|left over|left in it|residue|unusable|not usable|sent back at|returned at"],
  ["losses", "loss|losses|lost|waste|wastage"],
  ["remarks", "remarks|remark|note|notes|comments|how|source"],
]; // prettier-ignore

const BY_WORDS = new Map(
  HEADINGS.flatMap(([column, words]) => words.split("|").map((each) => [each, column] as const)),
);
const UNIT_WORDS = /(?:^| )(psi|bar|cu ft|cuft|ft3|m3|l|litres|liters|%|\$|€|£|usd|eur|gbp)(?= |$)/g;

/** A row of headings of a price list: what is priced, and at least what is paid or charged for it. */
export function headingRowOf(values: readonly CellValue[]): HeadingRow | undefined {
  const columns: Partial<Record<PriceColumn, number>> = {};
  const units: Partial<Record<PriceColumn, string>> = {};
  let money: "pay" | "charge" | undefined;
  for (const [at, value] of values.entries()) {
    if (typeof value !== "string" || isBlank(value) || value.length > 60) continue;
    const words = wordsOf(value).join(" ");
    const meaning = BY_WORDS.get(words) ?? BY_WORDS.get(words.replace(UNIT_WORDS, "").trim());
    if (meaning === undefined) continue;
    if (meaning === "pay" || meaning === "charge") money = meaning;
    // A unit belongs to the money before it.
    const column = meaning === "per" ? (money === "charge" ? "chargePer" : "payPer") : meaning;
    if (columns[column] !== undefined) continue;
    columns[column] = at;
    const unit = /(?:^| )(psi|bar|cu ft|cuft|ft3|m3|l|litres|liters)(?= |$)/.exec(words)?.[1];
    if (unit !== undefined) units[column] = unit;
  }
  const hasMoney = columns.pay !== undefined || columns.charge !== undefined;
  const hasUnit = columns.payPer !== undefined || columns.chargePer !== undefined;
  return columns.item !== undefined && hasMoney && hasUnit ? { columns, units } : undefined;
}
