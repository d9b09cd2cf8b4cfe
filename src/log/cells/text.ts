import { showsDate } from "../../sheet/numberFormat";
import { ambiguous, BLANK, unreadable, value, type Reading } from "../reading";
import { ofNoUse, plain, sayingNothing, shown, tidy, type Cell } from "./cell";
import { numbersIn } from "./numbers";

/** Reads words as they stand: a name, a class. What says nothing is blank: “n/a” is nobody's name. */
export function readText(cell: Cell): Reading<string> {
  if (typeof cell.value === "object") return ofNoUse(cell, "text");
  const text = tidy(String(cell.value));
  return text === "" || sayingNothing(plain(text)) ? BLANK : value(text);
}

/** Reads a remark word for word. */
export function readRemark(cell: Cell): Reading<string> {
  if (typeof cell.value === "object") return ofNoUse(cell, "text");
  const text = tidy(String(cell.value));
  return text === "" ? BLANK : value(text);
}

/** Reads a running or shop number: text, its zeros and letters safe. */
export function readLabel(cell: Cell): Reading<string> {
  if (typeof cell.value === "object") return ofNoUse(cell, "a number");
  if (typeof cell.value === "number" && showsDate(cell.format))
    return unreadable(
      "The spreadsheet turned this number into a date. Write it again in a cell formatted as text.",
    );
  const text = tidy(String(cell.value));
  return text === "" ? BLANK : (sayingNothing(plain(text)) ?? value(text));
}

const FREE = /^(?:free|comp(?:ed|limentary)?|no charge|n\/?c|gratis|gratuit|kostenlos|frei|staff)$/;

/** Reads an amount of money, without its currency. */
export function readPrice(cell: Cell): Reading<number> {
  if (typeof cell.value === "number")
    return showsDate(cell.format)
      ? unreadable("A date stands where a price belongs. Write the price.")
      : value(cell.value);
  if (typeof cell.value !== "string") return ofNoUse(cell, "a price");
  const text = plain(cell.value);
  if (FREE.test(text)) return value(0, `“${shown(cell)}”`);
  const nothing = sayingNothing(text);
  if (nothing) return nothing;
  const bare = text
    .replace(/^(?:[a-z]{2,3}|[^\d\s.,+-])?\s*|\s*(?:[a-z]{2,4}|[^\d\s.,])?$/g, "")
    .replace(/[.,]-$/, "");
  const numbers = numbersIn(bare.trim());
  const [first, second] = numbers;
  if (first === undefined) return unreadable(`“${shown(cell)}” is not a price. Write the amount.`);
  return second === undefined
    ? value(first)
    : ambiguous(numbers, `“${shown(cell)}”: a dot may group thousands or start decimals.`);
}
