import type { Log } from "../../log/log";
import { counted } from "../../words/counts";
import type { MonthFill } from "./monthFills";

/** Gaps named one by one; more are only counted. */
const GAPS_NAMED = 8;

/** Whether the numbers of a month's fills run on, in a sentence. A row that says that nothing was filled uses one up. */
export function numberingText(fills: readonly MonthFill[], log: Log): string {
  const numbers = fills.flatMap(({ filled }) => {
    const { number } = filled.fill.fields;
    return number.kind === "value" ? numberIn(number.value) : [];
  });
  if (fills.length === 0) return "no fills";
  if (numbers.length === 0) return "the log numbers no fills";
  const ordered = [...new Set(numbers)].sort((one, other) => one - other);
  const [first, last] = [ordered[0]!, ordered.at(-1)!];
  const notFilled = numbersNotFilled(log).filter((number) => number > first && number < last);
  const used = [...new Set([...ordered, ...notFilled])].sort((one, other) => one - other);
  const gaps = used.slice(1).flatMap((number, index) => {
    const [from, to] = [used[index]! + 1, number - 1];
    return to < from ? [] : [from === to ? String(from) : `${from} to ${to}`];
  });
  const repeated = numbers.length - ordered.length;
  const without = fills.length - numbers.length;
  const range = `${first} to ${last}`;
  const parts = [
    gaps.length === 0 ? "no gap" : `missing: ${gapText(gaps)}`,
    ...(repeated > 0 ? [`${counted(repeated, "number")} given twice`] : []),
    ...(without > 0 ? [`${counted(without, "fill")} without a number`] : []),
  ];
  return `${range}, ${parts.join("; ")}`;
}

/** The digits at the end of a number such as `F-0412`. */
function numberIn(text: string): readonly number[] {
  const digits = /(\d{1,9})$/.exec(text.trim())?.[1];
  return digits === undefined ? [] : [Number(digits)];
}

function numbersNotFilled({ sheets }: Log): readonly number[] {
  return sheets.flatMap(({ columns, rowKinds, source }) =>
    rowKinds.flatMap((kind, row) => {
      if (kind !== "not filled") return [];
      const column = columns.find(
        ({ field, rows }) => field === "number" && (!rows || (row >= rows.first && row <= rows.last)),
      );
      return column ? numberIn(String(source.rows[row]?.values[column.column] ?? "")) : [];
    }),
  );
}

function gapText(gaps: readonly string[]): string {
  const named = gaps.slice(0, GAPS_NAMED).join(", ");
  return gaps.length > GAPS_NAMED ? `${named} and ${counted(gaps.length - GAPS_NAMED, "more gap")}` : named;
}
