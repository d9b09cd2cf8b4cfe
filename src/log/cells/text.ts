import type { FillMethod } from "../log";
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

/** Reads a signature or a card: a name, a number, a tick. A box left unticked, or a no, is none. */
export function readPresence(cell: Cell): Reading<string> {
  if (cell.value === false || /^(?:no|n|nein|non|false|0|not signed)$/.test(plain(String(cell.value))))
    return BLANK;
  return cell.value === true ? value("yes") : readText(cell);
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

const METHODS: readonly (readonly [FillMethod, RegExp])[] = [
  ["partial pressure", /\bp\.? ?p\.?(?:b)?\b|partial|\bpartiell|parcial|\bo2 first\b|\bdecant/],
  ["continuous", /\bcont|\bc\.?b\.?\b|constant flow|\bstick\b|\bkontinu|durchfluss|\binject/],
  ["membrane", /\bmem|denitro/],
  ["premix", /pre ?-?mix|\bpm\b|\bbank|vorgemischt|fertiggas|pre-?melang|premezcla/],
  [
    "air",
    /^air\b|^compress|\bcompressor\b|^luft\b|^pressluft|^aire?\b|^top(?:ped)?(?: up| off)? (?:with )?air\b|^air top/,
  ],
];

/** Reads how a fill was made. */
export function readMethod(cell: Cell): Reading<FillMethod> {
  if (typeof cell.value !== "string")
    return ofNoUse(cell, "a method: air, premix, continuous, partial pressure or membrane");
  const text = plain(cell.value);
  const nothing = sayingNothing(text);
  if (nothing) return nothing;
  const named = METHODS.filter(([, pattern]) => pattern.test(text)).map(([method]) => method);
  const [first, ...others] = named.length > 1 ? named.filter((method) => method !== "air") : named;
  if (first === undefined)
    return unreadable(
      `“${shown(cell)}” is no method known here. Write air, premix, continuous, partial pressure or membrane.`,
    );
  return others.length === 0
    ? value(first)
    : ambiguous([first, ...others], `“${shown(cell)}” names more than one method.`);
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
