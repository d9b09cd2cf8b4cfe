import { counted } from "../cells";
import type { MonthFill } from "./monthFills";

/** Gaps named one by one; more are only counted. */
const GAPS_NAMED = 8;

/** Whether the numbers of a month's fills run on, in a sentence. */
export function numberingText(fills: readonly MonthFill[]): string {
  const numbers = fills.flatMap(({ filled }) => {
    const { number } = filled.fill.fields;
    const digits = number.kind === "value" ? /(\d{1,9})$/.exec(number.value.trim())?.[1] : undefined;
    return digits === undefined ? [] : [Number(digits)];
  });
  if (fills.length === 0) return "no fills";
  if (numbers.length === 0) return "the log numbers no fills";
  const ordered = [...new Set(numbers)].sort((one, other) => one - other);
  const gaps = ordered.slice(1).flatMap((number, index) => {
    const [from, to] = [ordered[index]! + 1, number - 1];
    return to < from ? [] : [from === to ? String(from) : `${from} to ${to}`];
  });
  const repeated = numbers.length - ordered.length;
  const without = fills.length - numbers.length;
  const range = `${ordered[0]} to ${ordered.at(-1)}`;
  const parts = [
    gaps.length === 0 ? "no gap" : `missing: ${gapText(gaps)}`,
    ...(repeated > 0 ? [`${counted(repeated, "number")} given twice`] : []),
    ...(without > 0 ? [`${counted(without, "fill")} without a number`] : []),
  ];
  return `${range}, ${parts.join("; ")}`;
}

function gapText(gaps: readonly string[]): string {
  const named = gaps.slice(0, GAPS_NAMED).join(", ");
  return gaps.length > GAPS_NAMED ? `${named} and ${counted(gaps.length - GAPS_NAMED, "more gap")}` : named;
}
