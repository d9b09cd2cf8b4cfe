import { isBlank, type Area, type CellValue, type Sheet } from "../sheet/sheet";
import { roleOf } from "./headingFields";
import { meaningOf, type HeadingMeaning } from "./headingText";

/** Where the headings of a table stand, and what they mean, column by column. */
export interface TableHead {
  readonly firstRow: number;
  /** The same as `firstRow`, or the row below it. */
  readonly lastRow: number;
  readonly meanings: readonly HeadingMeaning[];
  readonly score: number;
}

/** Headings stand within the first rows; below, only further ones like them. */
const ROWS_SEARCHED = 30;
/** Two sure headings are the least that makes a heading row. */
const LEAST_SCORE = 1.6;
/** A second row must add this much to be taken for one, or every title would be. */
const SECOND_ROW_ADDS = 0.3;
const LONGEST_HEADING = 80;

/** Finds the heading row, or the two rows, by what stands in them; undefined where there is none. */
export function findHead(sheet: Sheet): TableHead | undefined {
  let best: TableHead | undefined;
  for (let row = 0; row < Math.min(ROWS_SEARCHED, sheet.rows.length); row++) {
    const one = headOf(sheet, row, row);
    const two = row + 1 < sheet.rows.length ? headOf(sheet, row, row + 1) : undefined;
    const below = two && headOf(sheet, row + 1, row + 1);
    const better = two && below && two.score > Math.max(one.score, below.score) + SECOND_ROW_ADDS ? two : one;
    if (better.score >= LEAST_SCORE && better.score > (best?.score ?? 0)) best = better;
  }
  return best;
}

/** What these rows would mean as headings. */
export function headOf(sheet: Sheet, firstRow: number, lastRow: number): TableHead {
  const upper = textsOf(sheet, firstRow);
  const lower = lastRow > firstRow ? textsOf(sheet, lastRow) : undefined;
  const texts = lower ? joined(upper, lower, sheet.merges, firstRow) : upper;
  const meanings = Array.from(texts, (text) => meaningOf(text ?? ""));
  const roles = meanings.map((meaning) => (meaning.heading === "" ? undefined : roleOf(meaning)));
  const sure = roles.reduce((sum, role) => sum + (role?.confidence ?? 0), 0);
  const strangers = numbersIn(sheet, firstRow) + (lower ? numbersIn(sheet, lastRow) : 0);
  return { firstRow, lastRow, meanings, score: sure - strangers };
}

/** Group headings over their columns: `INITIAL` over `psi` and `O2`, `FINAL` over the next two. */
function joined(
  upper: readonly (string | undefined)[],
  lower: readonly (string | undefined)[],
  merges: readonly Area[],
  row: number,
): readonly (string | undefined)[] {
  const texts: (string | undefined)[] = [];
  let group: string | undefined;
  let groupEnd = -1;
  for (let column = 0; column < Math.max(upper.length, lower.length); column++) {
    if (upper[column] !== undefined) {
      group = upper[column];
      const merge = merges.find(
        (area) => area.firstRow <= row && area.lastRow >= row && area.firstColumn === column,
      );
      groupEnd = merge ? merge.lastColumn : Infinity;
    }
    const over = column <= groupEnd ? group : undefined;
    const below = lower[column];
    texts[column] = below === undefined ? upper[column] : over === undefined ? below : `${over} ${below}`;
  }
  return texts;
}

function textsOf(sheet: Sheet, row: number): readonly (string | undefined)[] {
  return (sheet.rows[row]?.values ?? []).map((value) =>
    typeof value === "string" && !isBlank(value) && value.length <= LONGEST_HEADING ? value : undefined,
  );
}

function numbersIn(sheet: Sheet, row: number): number {
  return (sheet.rows[row]?.values ?? []).filter(isNoHeading).length;
}

function isNoHeading(value: CellValue): boolean {
  return (
    typeof value === "number" ||
    typeof value === "boolean" ||
    (typeof value === "string" && value.length > LONGEST_HEADING)
  );
}
