import { BLANK_ROW, isBlank, type CellValue, type Sheet, type SheetRow } from "../sheet/sheet";

/** What of a sheet is not its rows. */
export type SheetHead = Omit<Sheet, "rows">;

/**
 * The sheets of a workbook as they are known so far. What is new is laid beside until it is taken over, so that nobody
 * ever sees half of a change; a row that is still the same stays the same object.
 */
export class Snapshot {
  #sheets: readonly Sheet[] = [];
  #next: Sheet[] = [];

  get sheets(): readonly Sheet[] {
    return this.#sheets;
  }

  /** The sheets there are now, in the order of their tabs; those that are not known yet hold nothing. */
  list(names: readonly string[]): void {
    const known = new Map(this.#next.map((sheet) => [sheet.name, sheet]));
    this.#next = names.map(
      (name) => known.get(name) ?? { name, hidden: false, dateSystem: 1900, merges: [], rows: [] },
    );
  }

  /** All of a sheet. A sheet that is not listed is put behind the others. */
  replace(head: SheetHead, rows: readonly SheetRow[]): void {
    const before = this.#next.find(({ name }) => name === head.name);
    this.#put({ ...head, rows: likeBefore(before?.rows ?? [], trimmed(rows)) });
  }

  /** Some rows of a sheet, in the place of those that stood there. */
  splice(name: string, firstRow: number, rows: readonly SheetRow[]): void {
    const sheet = this.#next.find((each) => each.name === name);
    if (!sheet) return;
    const next = sheet.rows.slice();
    while (next.length < firstRow) next.push(BLANK_ROW);
    for (const [at, row] of rows.entries()) {
      const before = next[firstRow + at];
      if (!before || !isSameRow(before, row)) next[firstRow + at] = row;
    }
    this.#put({ ...sheet, rows: trimmed(next) });
  }

  /** Takes over what is new. Where nothing is, the list of sheets stays the same object. */
  commit(): void {
    const isNew =
      this.#next.length !== this.#sheets.length || this.#next.some((sheet, at) => sheet !== this.#sheets[at]);
    if (isNew) this.#sheets = this.#next.slice();
  }

  #put(sheet: Sheet): void {
    const at = this.#next.findIndex(({ name }) => name === sheet.name);
    if (at < 0) this.#next.push(sheet);
    else if (!isSameSheet(this.#next[at]!, sheet)) this.#next[at] = sheet;
  }
}

/** Without the rows at its end that hold nothing: hosts differ in how many of those they hand over. */
function trimmed(rows: readonly SheetRow[]): readonly SheetRow[] {
  let count = rows.length;
  while (count > 0 && rows[count - 1]!.values.every(isBlank)) count--;
  return count === rows.length ? rows : rows.slice(0, count);
}

/** The new rows, but the very objects of before where they are the same, counted from the top and from the end. */
function likeBefore(before: readonly SheetRow[], rows: readonly SheetRow[]): readonly SheetRow[] {
  const shorter = Math.min(before.length, rows.length);
  let top = 0;
  while (top < shorter && isSameRow(before[top]!, rows[top]!)) top++;
  if (top === before.length && top === rows.length) return before;
  let end = 0;
  while (end < shorter - top && isSameRow(before.at(-1 - end)!, rows.at(-1 - end)!)) end++;
  return [
    ...before.slice(0, top),
    ...rows.slice(top, rows.length - end),
    ...before.slice(before.length - end),
  ];
}

function isSameSheet(one: Sheet, other: Sheet): boolean {
  return (
    one.hidden === other.hidden &&
    one.dateSystem === other.dateSystem &&
    JSON.stringify(one.merges) === JSON.stringify(other.merges) &&
    (one.rows === other.rows ||
      (one.rows.length === other.rows.length && one.rows.every((row, at) => row === other.rows[at])))
  );
}

function isSameRow(one: SheetRow, other: SheetRow): boolean {
  if (one === other) return true;
  if ((one.hidden ?? false) !== (other.hidden ?? false)) return false;
  const cells = Math.max(one.values.length, other.values.length);
  for (let at = 0; at < cells; at++)
    if (!isSameCell(one.values[at] ?? null, other.values[at] ?? null)) return false;
  const formats = Math.max(one.formats?.length ?? 0, other.formats?.length ?? 0);
  for (let at = 0; at < formats; at++) if (one.formats?.[at] !== other.formats?.[at]) return false;
  return true;
}

function isSameCell(one: CellValue, other: CellValue): boolean {
  if (one === other) return true;
  const areErrors = typeof one === "object" && typeof other === "object" && one !== null && other !== null;
  return areErrors && one.error === other.error;
}
