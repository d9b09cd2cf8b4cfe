import { columnIndex, type Area } from "../../sheet/sheet";

/** A range as a formula names it; counts from 0, without a sheet it is the formula's own. */
export interface RangeReference extends Area {
  readonly sheet?: string;
}

export type PlainArgument = string | number | boolean | null | RangeReference;

export interface PlainCall {
  readonly name: string;
  readonly given: readonly PlainArgument[];
}

const CALL = /^\s*BRIM\.([A-Z0-9.]+)\s*\((.*)\)\s*$/is;
/** One argument and the comma behind it: text, anything in a quoted sheet name, or what has neither. */
const PART = /\s*("(?:[^"]|"")*"|(?:'(?:[^']|'')*'|[^",'()])*?)\s*(,|$)/gy;
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?(%?)$/i;
const REFERENCE =
  /^(?:(?:'((?:[^']|'')+)'|([^'!:]+))!)?\$?([A-Z]{1,3})\$?(\d{1,7})(?::\$?([A-Z]{1,3})\$?(\d{1,7}))?$/i;

/**
 * A formula that is nothing but one of our functions with plain arguments: values, cells and ranges. Anything else
 * is `undefined`. The formula comes without its equals sign.
 */
export function plainCall(formula: string): PlainCall | undefined {
  const [, name, inside] = CALL.exec(formula) ?? [];
  if (name === undefined || inside === undefined) return undefined;
  const given: PlainArgument[] = [];
  if (inside.trim() === "") return { name: name.toUpperCase(), given };
  PART.lastIndex = 0;
  for (;;) {
    const [, text, end] = PART.exec(inside) ?? [];
    if (text === undefined) return undefined;
    const argument = plainArgument(text.trim());
    if (argument === undefined) return undefined;
    given.push(argument);
    if (end === "") return { name: name.toUpperCase(), given };
  }
}

function plainArgument(text: string): PlainArgument | undefined {
  if (text === "") return null;
  if (text.startsWith('"')) return text.slice(1, -1).replaceAll('""', '"');
  if (/^(TRUE|FALSE)$/i.test(text)) return text.toUpperCase() === "TRUE";
  const number = NUMBER.exec(text);
  if (number) return Number.parseFloat(text) / (number[3] ? 100 : 1);
  return reference(text);
}

function reference(text: string): RangeReference | undefined {
  const found = REFERENCE.exec(text);
  if (!found) return undefined;
  const [, quoted, bare, column, row, otherColumn = column, otherRow = row] = found;
  const sheet = quoted?.replaceAll("''", "'") ?? bare;
  const rows = [Number(row) - 1, Number(otherRow) - 1];
  const columns = [columnIndex(column!), columnIndex(otherColumn!)];
  return {
    ...(sheet !== undefined && { sheet }),
    firstRow: Math.min(...rows),
    lastRow: Math.max(...rows),
    firstColumn: Math.min(...columns),
    lastColumn: Math.max(...columns),
  };
}
