import { CommandType, ICommandService, type IDisposable } from "@univerjs/core";
import type { WorkbookChange } from "../workbook";
import type { Engine } from "./engine";

/** What the engine tells of one of its mutations: as much of it as we use. */
interface Mutation {
  readonly unitId?: string;
  readonly subUnitId?: string;
  /** By row, then by column; absent where all of the sheet is cleared. */
  readonly cellValue?: Readonly<Record<number, unknown>> | null;
  /** By workbook and sheet, then as above. */
  readonly arrayFormulaCellData?: Readonly<
    Record<string, Readonly<Record<string, Readonly<Record<number, unknown>> | null>> | null>
  >;
}

const VALUES = "sheet.mutation.set-range-values";
const SPILLS = "formula.mutation.set-array-formula-data";

/** Sheets came, went, moved, or go by another name. */
const OF_SHEETS = /\.(?:insert-sheet|remove-sheet|set-worksheet-(?:name|order|hidden)|copy-worksheet-end)$/;

/** What no log is read from: looks, sizes, protection, and what the engine notes for itself. */
const OF_LOOKS =
  /auto-height|row-height|col-width|col-(?:hidden|visible)|row-count|column-count|mark-dirty|gridlines|theme|tab-color|frozen|right-to-left|protection|permission|default-style|workbook-name|(?:row|col)-data|\.empty$/;

/** Tells at once of whatever changes in the cells of a workbook in the grid, by whomever, formulas too. */
export function watchCells(
  { univer }: Engine,
  workbook: string,
  nameOf: (sheetId: string) => string | undefined,
  onChange: (changes: readonly WorkbookChange[]) => void,
): () => void {
  const spills = new Map<string, readonly number[]>();
  const watched: IDisposable = univer
    .__getInjector()
    .get(ICommandService)
    .onCommandExecuted(({ id, type, params }) => {
      if (type !== CommandType.MUTATION) return;
      const mutation = (params ?? {}) as Mutation;
      const changes =
        id === SPILLS ? ofSpills(mutation) : mutation.unitId === workbook ? of(id, mutation) : [];
      if (changes.length > 0) onChange(changes);
    });

  const of = (id: string, { subUnitId = "", cellValue }: Mutation): WorkbookChange[] => {
    if (!id.startsWith("sheet.mutation.") || OF_LOOKS.test(id)) return [];
    const sheet = nameOf(subUnitId);
    const ofSheet: WorkbookChange[] = sheet === undefined ? [] : [{ kind: "sheet", sheet }];
    if (OF_SHEETS.test(id)) return [{ kind: "sheets" }, ...ofSheet];
    if (id !== VALUES || !cellValue || sheet === undefined) return ofSheet;
    return rowsIn(sheet, Object.keys(cellValue).map(Number));
  };

  /** What spills now, and what did before. */
  const ofSpills = ({ arrayFormulaCellData }: Mutation): WorkbookChange[] => {
    const now = arrayFormulaCellData?.[workbook] ?? {};
    return [...new Set([...spills.keys(), ...Object.keys(now)])].flatMap((id) => {
      const rows = Object.keys(now[id] ?? {}).map(Number);
      const before = spills.get(id) ?? [];
      spills.set(id, rows);
      const sheet = nameOf(id);
      return sheet === undefined ? [] : rowsIn(sheet, [...before, ...rows]);
    });
  };
  return () => {
    watched.dispose();
  };
}

/** As few spans as hold these rows and no others. */
function rowsIn(sheet: string, rows: readonly number[]): WorkbookChange[] {
  const spans: { firstRow: number; lastRow: number }[] = [];
  for (const row of [...new Set(rows)].sort((one, other) => one - other)) {
    const last = spans.at(-1);
    if (last && row === last.lastRow + 1) last.lastRow = row;
    else spans.push({ firstRow: row, lastRow: row });
  }
  return spans.map((span) => ({ kind: "rows", sheet, ...span }));
}
