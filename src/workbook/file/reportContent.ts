import type { CellStyle } from "../../sheet/cellStyle";
import { storedValue, styledCell, type DraftRow, type SheetDraft } from "../../sheet/draft/draft";
import type { Sheet } from "../../sheet/sheet";
import { tabNames } from "../../sheet/tabNames";
import type { LinkedCell, RowContent, SheetContent } from "./content";

/** Drafts as sheets of a workbook that has these sheets already. */
export function reportContent(
  drafts: readonly SheetDraft[],
  beside: readonly Pick<Sheet, "name" | "dateSystem">[],
): readonly SheetContent[] {
  const names = tabNames(
    drafts.map(({ name }) => name),
    beside.map(({ name }) => name),
  );
  const dateSystem = beside[0]?.dateSystem ?? 1900;
  const namesGiven = new Map(drafts.map(({ name }, index) => [name, names[index]!]));
  return drafts.map((draft, index) => sheetContent(draft, names[index]!, namesGiven, dateSystem));
}

function sheetContent(
  draft: SheetDraft,
  name: string,
  namesGiven: ReadonlyMap<string, string>,
  dateSystem: 1900 | 1904,
): SheetContent {
  return {
    name,
    hidden: false,
    dateSystem,
    rows: draft.rows.map((row) => rowContent(row, dateSystem)),
    merges: draft.merges,
    columns: draft.widths.map((width) => (width === undefined ? undefined : { widthCharacters: width })),
    frozenRows: draft.frozenRows,
    frozenColumns: 0,
    links: draft.rows.flatMap(({ cells }, row) => linksOf(cells, row)),
    report: {
      tables: draft.tables,
      charts: draft.charts,
      lists: (draft.lists ?? []).map((list) => ({
        ...list,
        words: { ...list.words, sheet: namesGiven.get(list.words.sheet) ?? list.words.sheet },
      })),
      conditions: draft.conditions ?? [],
      page: draft.page,
    },
  };
}

function rowContent({ cells, heightPt }: DraftRow, dateSystem: 1900 | 1904): RowContent {
  const styled = cells.map(styledCell);
  return {
    values: styled.map((cell) => storedValue(cell, dateSystem)),
    ...(styled.some(({ format }) => format !== undefined) && { formats: styled.map(({ format }) => format) }),
    ...(styled.some(({ style }) => style) && {
      styles: styled.map(({ style }): CellStyle | undefined => style),
    }),
    ...(styled.some(({ formula }) => formula !== undefined) && {
      origins: styled.map(({ formula }) => (formula === undefined ? undefined : { formula })),
    }),
    ...(heightPt !== undefined && { heightPt }),
  };
}

function linksOf(cells: DraftRow["cells"], row: number): readonly LinkedCell[] {
  return cells.flatMap((cell, column) => {
    const { link } = styledCell(cell);
    return link ? [{ row, column, link }] : [];
  });
}
