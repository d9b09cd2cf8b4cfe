import { Refusal, refuse } from "../gas/refusal";
import type { CellValue } from "../sheet/sheet";

/** An argument as a host hands it over: a single value, or the rows of a range. */
export type Argument = CellValue | undefined | readonly (readonly (CellValue | undefined)[])[];

/** A cell that holds something usable. */
export type FilledCell = string | number | boolean;

/** How hosts without error objects hand over an error: as its text. */
const ERROR_TEXT = /^#(N\/A|[A-Z][A-Z0-9/_]*[!?])$/;

/**
 * The one place where a host's value becomes a cell's value. Excel hands errors and data types over as objects;
 * what is no cell's value at all becomes an error, which the argument then names.
 */
export function cellFrom(raw: unknown): CellValue {
  if (typeof raw === "string") return ERROR_TEXT.test(raw) ? { error: raw } : raw;
  if (typeof raw === "number") return Number.isFinite(raw) ? raw : { error: "#NUM!" };
  if (typeof raw === "boolean") return raw;
  return raw === null || raw === undefined ? null : cellFromObject(raw as Record<string, unknown>);
}

function cellFromObject(raw: Record<string, unknown>): CellValue {
  const error = raw.error ?? raw.code;
  if (typeof error === "string") return { error };
  const basic = raw.basicValue;
  if (typeof basic === "string" || typeof basic === "number" || typeof basic === "boolean")
    return cellFrom(basic);
  return { error: "#VALUE!" };
}

/**
 * A cell whose value is an error: the answer is that error again, with a sentence that names the argument.
 */
export class ErrorCell extends Refusal {
  constructor(readonly error: string) {
    super(
      error === "#N/A" ? "unknown" : "unusable",
      `the cell holds the error ${error}: put that right first.`,
    );
  }
}

export function isError(cell: CellValue): cell is Extract<CellValue, { error: string }> {
  return typeof cell === "object" && cell !== null;
}

export function isBlankCell(cell: CellValue): cell is null | string {
  return cell === null || (typeof cell === "string" && cell.trim() === "");
}

/**
 * The number that a text consists of, or `undefined`. `3,000` is three thousand (comma, three digits) and `207,5` a
 * decimal comma.
 * @throws Refusal for `2.500`, which is 2500 where the point marks thousands.
 */
export function numberIn(text: string): number | undefined {
  const written = text.trim();
  if (/^[+-]?[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(written)) return Number(written.replaceAll(",", ""));
  if (/^[1-9]\d{0,2}(\.\d{3})+$/.test(written)) {
    refuse(`"${written}" can be a decimal or a count of thousands: write it as a number.`);
  }
  if (/^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(written)) return Number(written.replace(",", "."));
  return undefined;
}
