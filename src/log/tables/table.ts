import { isBlank, type Area, type CellValue, type Sheet, type SheetRow } from "../../sheet/sheet";
import { isField, TEST_FIELDS } from "../fieldKinds";
import { roleOf, type Role } from "../headings/headingFields";
import { meaningOf, NO_MEANING, type HeadingMeaning } from "../headings/headingText";

/** Headings over columns, and the rows below that belong to them. */
export interface Table {
  /** What the headings mean, column by column; all blank for a table without headings. */
  readonly meanings: readonly HeadingMeaning[];
  /** Rows of headings, with those repeated further down. */
  readonly headingRows: ReadonlySet<number>;
  /** The row in which its headings start: what stands above are titles. Undefined for a table without. */
  readonly firstHeading: number | undefined;
  readonly firstRow: number;
  readonly lastRow: number;
}

interface Head {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly meanings: readonly HeadingMeaning[];
  readonly score: number;
  readonly roles: number;
}

/** The first headings stand within these rows; below, only further ones like them. */
const ROWS_SEARCHED = 30;
/** Two sure headings are the least that makes a heading row. */
const LEAST_SCORE = 1.6;
/** A second row must add this much to be taken for one, or every title would be. */
const SECOND_ROW_ADDS = 0.3;
/** Headings of another table further down, or of one before it, need to be plainer, as rows of words occur in every log. */
const LEAST_SCORE_BELOW = 2.4;
const LONGEST_HEADING = 80;
/** No log has more columns; a hostile sheet may. */
const MOST_COLUMNS = 200;
/** Nor has a sheet more tables, each with headings of its own. */
const MOST_TABLES = 100;
/** Rows of words only are few in a log, and taking one apart is slow. */
const MOST_TAKEN_APART = 5000;

/** The tables of a sheet, from the top: as a rule one. A sheet without headings is one table without. */
export function tablesOf(sheet: Sheet): readonly Table[] {
  const first = findHead(sheet);
  const width = Math.min(MOST_COLUMNS, widthOf(sheet));
  if (!first) return [tableWithoutHeadings(sheet, width)];
  const tables: Table[] = [];
  let head = first;
  let headingRows = rowsOf(head);
  let from = 0;
  let rowsTakenApart = 0;
  for (let row = first.lastRow + 1; row < sheet.rows.length; row++) {
    if (!mayBeHeadings(sheet.rows[row]!)) continue;
    const { rows: repeated, isChanged } = repeats(sheet, row, head);
    const isSpent = tables.length >= MOST_TABLES || rowsTakenApart >= MOST_TAKEN_APART;
    const below = isSpent || (repeated > 0 && !isChanged) ? undefined : bestHead(sheet, row);
    if (below) rowsTakenApart++;
    if (!below || !isPlain(below)) {
      for (let each = 0; each < repeated; each++) headingRows.add(row + each);
      row += Math.max(0, repeated - 1);
      continue;
    }
    tables.push({
      meanings: padded(head.meanings, width),
      headingRows,
      firstHeading: head.firstRow,
      firstRow: from,
      lastRow: below.firstRow - 1,
    });
    [head, headingRows, from] = [below, rowsOf(below), below.firstRow];
    row = below.lastRow;
  }
  tables.push({
    meanings: padded(head.meanings, width),
    headingRows,
    firstHeading: head.firstRow,
    firstRow: from,
    lastRow: sheet.rows.length - 1,
  });
  return tables;
}

function findHead(sheet: Sheet): Head | undefined {
  let best: Head | undefined;
  for (let row = 0; row < Math.min(ROWS_SEARCHED, sheet.rows.length); row++) {
    // What a plain row of headings is over ends the search: better ones further down are those of another table.
    if (best && isPlain(best) && row > best.lastRow && holdsData(sheet.rows[row]!)) break;
    const head = bestHead(sheet, row);
    if (head.score >= LEAST_SCORE && head.score > (best?.score ?? 0)) best = head;
  }
  return best;
}

function isPlain({ score, roles }: Head): boolean {
  return score >= LEAST_SCORE_BELOW && roles >= 3;
}

/** Whether a row holds what stands below headings: numbers, dates, serials; a title has one or two of them. */
export function holdsData({ values }: SheetRow): boolean {
  return (
    values.filter((value) => (typeof value === "string" ? LIKE_DATA.test(value) : value !== null)).length > 2
  );
}

/** The row as headings, or with the row below it where the two together say more than either alone. */
function bestHead(sheet: Sheet, row: number): Head {
  const one = headOf(sheet, row, row);
  if (row + 1 >= sheet.rows.length) return one;
  const two = headOf(sheet, row, row + 1);
  const below = headOf(sheet, row + 1, row + 1);
  return withUnits(sheet, two.score > Math.max(one.score, below.score) + SECOND_ROW_ADDS ? two : one);
}

/** A row of nothing but units below belongs to the headings: `Pressure` over `psi`. */
function withUnits(sheet: Sheet, head: Head): Head {
  if (head.roles === 0 || !holdsUnits(sheet.rows[head.lastRow + 1])) return head;
  const units = textsOf(sheet, head.lastRow + 1);
  const meanings = head.meanings.map((meaning, column) =>
    units[column] === undefined ? meaning : meaningOf(`${meaning.heading} ${units[column]}`),
  );
  return { ...head, lastRow: head.lastRow + 1, meanings };
}

const UNIT =
  /^[([]?(?:psi[ga]?|bar[ga]?|°? ?[fc]|ft|m|%(?: ?o2| ?he)?|l|lit(?:er|re)s?|cu\.? ?ft|min|h+:mm|[$€£]|d+[./-]m+[./-]y+|m+[./-]d+[./-]y+|y+-m+-d+)[)\]]?$/i;

/** Units, and nothing else. */
function holdsUnits(row: SheetRow | undefined): boolean {
  return (
    row !== undefined &&
    row.values.some(isUnit) &&
    row.values.every((value) => isBlank(value) || isUnit(value))
  );
}

function isUnit(value: CellValue): boolean {
  return typeof value === "string" && UNIT.test(value.trim());
}

function headOf(sheet: Sheet, firstRow: number, lastRow: number): Head {
  const upper = textsOf(sheet, firstRow);
  const lower = lastRow > firstRow ? textsOf(sheet, lastRow) : undefined;
  const texts = lower ? joined(upper, lower, sheet.merges, firstRow) : upper;
  const meanings = Array.from(texts, (text) => (text === undefined ? NO_MEANING : meaningOf(text)));
  const roles = meanings.flatMap((meaning) => (meaning === NO_MEANING ? [] : (roleOf(meaning) ?? [])));
  const sure = roles.reduce((sum, role) => sum + role.confidence, 0);
  const strangers =
    strangersIn(sheet, firstRow) +
    (lower ? strangersIn(sheet, lastRow) + lower.filter((text) => text && LIKE_DATA.test(text)).length : 0);
  return {
    firstRow,
    lastRow,
    meanings,
    score: sure - strangers,
    roles: new Set(roles.map(({ role }) => role)).size,
  };
}

/**
 * Group headings over their columns: `INITIAL` over `psi` and `O2`, `FINAL` over the next two. Where groups of a row
 * are merged, an unmerged heading is over its own column only.
 */
function joined(
  upper: readonly (string | undefined)[],
  lower: readonly (string | undefined)[],
  merges: readonly Area[],
  row: number,
): readonly (string | undefined)[] {
  const texts: (string | undefined)[] = [];
  const groupsAreMerged = merges.some(
    ({ firstRow, lastRow, firstColumn, lastColumn }) =>
      firstRow <= row && lastRow >= row && lastColumn > firstColumn && upper[firstColumn] !== undefined,
  );
  let rolesOfGroup = new Set<Role>();
  let group: string | undefined;
  let groupEnd = -1;
  for (let column = 0; column < Math.max(upper.length, lower.length); column++) {
    if (upper[column] !== undefined) {
      group = upper[column];
      rolesOfGroup = new Set();
      const merge = merges.find(
        (area) => area.firstRow <= row && area.lastRow >= row && area.firstColumn === column,
      );
      groupEnd = merge ? merge.lastColumn : groupsAreMerged ? column : Infinity;
    }
    const over = column <= groupEnd ? group : undefined;
    const below = lower[column];
    const text =
      below === undefined ? upper[column] : over === undefined ? below : together(over, below, rolesOfGroup);
    texts[column] = text;
    const role = text === undefined ? undefined : roleOf(meaningOf(text))?.role;
    if (role !== undefined) rolesOfGroup.add(role);
  }
  return texts;
}

/**
 * What two headings, one below the other, say as one. Unmerged cells may say the same twice. Where the two together say
 * nothing, or what another column of the group says already, the lower one alone may say something of its own.
 */
function together(over: string, below: string, rolesOfGroup: ReadonlySet<Role>): string {
  if (spaced(over) === spaced(below)) return below;
  const both = `${over} ${below}`;
  const role = roleOf(meaningOf(both))?.role;
  const alone = roleOf(meaningOf(below))?.role;
  const isOfItsOwn = alone !== undefined && alone !== role && isField(alone);
  const isSpent = role === undefined || (rolesOfGroup.has(role) && !TESTS.has(role));
  return isSpent && isOfItsOwn ? below : both;
}

/** A log may have several columns of one test. */
const TESTS: ReadonlySet<Role> = new Set(TEST_FIELDS);

/** How many rows from here repeat the headings, both rows of two, or one; and whether they say something else now. */
function repeats(
  sheet: Sheet,
  row: number,
  head: Head,
): { readonly rows: number; readonly isChanged: boolean } {
  let rows = 0;
  let isChanged = false;
  for (let of = head.firstRow; of <= head.lastRow; of++) {
    const [here, there] = [sheet.rows[row + rows], sheet.rows[of]];
    const isSame = sameTexts(here, there);
    const areOtherUnits = rows > 0 && holdsUnits(here) && holdsUnits(there);
    if ((isSame || areOtherUnits) && saysOtherwise(here, there)) isChanged = true;
    if (isSame) rows++;
  }
  return { rows, isChanged };
}

function sameTexts(row: SheetRow | undefined, of: SheetRow | undefined): boolean {
  let same = 0;
  let texts = 0;
  for (const [column, value] of (of?.values ?? []).entries()) {
    if (typeof value !== "string" || isBlank(value)) continue;
    texts++;
    const other = row?.values[column];
    if (typeof other === "string" && spaced(other) === spaced(value)) same++;
  }
  return same >= 2 && same >= texts / 2;
}

/**
 * A page number or the name of a month may differ from one repeat to the next. Where a column holds something else now,
 * such as bar for psi, what stands below is read by the new headings.
 */
function saysOtherwise(row: SheetRow | undefined, of: SheetRow | undefined): boolean {
  return (row?.values ?? []).some((value, column) => {
    const before = of?.values[column];
    if (typeof value !== "string" || isBlank(value)) return false;
    if (typeof before === "string" && spaced(value) === spaced(before)) return false;
    const now = meaningOf(value);
    const then = typeof before === "string" ? meaningOf(before) : NO_MEANING;
    return now.unit !== then.unit || roleOf(now) !== undefined || roleOf(then) !== undefined;
  });
}

function spaced(text: string): string {
  return text.replace(/\s+/g, " ").trim().toLowerCase();
}

/** A quick look that keeps the rows of a long log from being taken apart word by word. */
function mayBeHeadings({ values }: SheetRow): boolean {
  let texts = 0;
  for (const value of values) {
    if (value === null || value === "") continue;
    if (typeof value !== "string" || value.length > LONGEST_HEADING || /\d\d|\d[-/:.]\d/.test(value))
      return false;
    texts++;
  }
  return texts >= 2;
}

function textsOf(sheet: Sheet, row: number): readonly (string | undefined)[] {
  return (sheet.rows[row]?.values ?? [])
    .slice(0, MOST_COLUMNS)
    .map((value) =>
      typeof value === "string" && !isBlank(value) && value.length <= LONGEST_HEADING ? value : undefined,
    );
}

/** Numbers, dates, serials and mixes kept as text: below headings, they are what the headings are about. */
const LIKE_DATA = /^\s*(?:\P{L}*\d\P{L}*|\S*\d\d\S*)\s*$/u;

/** Cells that no row of headings has. */
function strangersIn(sheet: Sheet, row: number): number {
  let strangers = 0;
  for (const value of sheet.rows[row]?.values ?? []) {
    if (typeof value === "number" || typeof value === "boolean") strangers++;
    if (typeof value === "string" && value.length > LONGEST_HEADING) strangers++;
  }
  return strangers;
}

function rowsOf(head: Head): Set<number> {
  return new Set(
    Array.from({ length: head.lastRow - head.firstRow + 1 }, (_, below) => head.firstRow + below),
  );
}

function tableWithoutHeadings(sheet: Sheet, width: number): Table {
  return {
    meanings: padded([], width),
    headingRows: new Set(),
    firstHeading: undefined,
    firstRow: 0,
    lastRow: sheet.rows.length - 1,
  };
}

function padded(meanings: readonly HeadingMeaning[], width: number): readonly HeadingMeaning[] {
  return Array.from(
    { length: Math.max(meanings.length, width) },
    (_, column) => meanings[column] ?? NO_MEANING,
  );
}

function widthOf(sheet: Sheet): number {
  let width = 0;
  for (const row of sheet.rows) if (row.values.length > width) width = row.values.length;
  return width;
}
