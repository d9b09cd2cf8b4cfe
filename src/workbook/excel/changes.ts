import type { RowSpan } from "../selectedRows";
import type { WorkbookChange } from "../workbook";
import { listen } from "./events";
import { listTabs, type Tab } from "./outline";
import type { PaneInSight } from "./paneInSight";
import type { OfficeGlobals, Session } from "./session";
import { joined, rowsOfAddress } from "./spans";

/** As much as we use of what Excel's events tell. */
interface Told {
  readonly worksheetId: string;
  readonly address?: string;
  readonly changeType?: string;
  readonly triggerSource?: string;
}

/** What happened to one sheet since the last list of changes: all of it, or these rows. */
interface Stirred {
  spans: RowSpan[];
  whole: boolean;
}

const MOVES_NOTHING = "RangeEdited";
/** Where Excel does not answer just now, it is asked again after so long. */
const RETRY_MS = 2000;

/**
 * Makes lists of changes of what Excel's events tell. Excel names a sheet by its id, and older ones tell of no
 * renaming: so the sheets are listed anew with every burst, and what differs from the last time is told too.
 */
export function watchWorkbook(
  globals: OfficeGlobals,
  session: Session,
  inSight: PaneInSight,
  onChange: (changes: readonly WorkbookChange[]) => void,
): () => void {
  const stirred = { own: new Map<string, Stirred>(), others: new Map<string, Stirred>() };
  let known = listTabs(session).catch(() => undefined);

  const tell = async () => {
    const before = await known;
    const tabs = await listTabs(session).catch(() => undefined);
    if (!tabs) {
      setTimeout(stir, RETRY_MS);
      return;
    }
    known = Promise.resolve(tabs);
    const changes: WorkbookChange[] = before ? tabsChanged(before, tabs) : [{ kind: "sheets" }];
    for (const whose of ["own", "others"] as const) {
      for (const { id, name: sheet } of tabs) {
        const rows = stirred[whose].get(id);
        if (!rows) continue;
        const own = whose === "own" && ({ own: true } as const);
        const spans = rows.whole ? undefined : joined(rows.spans);
        if (!spans) changes.push({ kind: "sheet", sheet, ...own });
        else for (const span of spans) changes.push({ kind: "rows", sheet, ...span, ...own });
      }
      stirred[whose].clear();
    }
    if (changes.length > 0) onChange(changes);
  };
  const { stir, stop } = inSight.gather(tell);

  const hear = (told: Told, movesNothing: boolean) => {
    const whose = stirred[told.triggerSource === "ThisLocalAddin" ? "own" : "others"];
    const sheet = whose.get(told.worksheetId) ?? { spans: [], whole: false };
    whose.set(told.worksheetId, sheet);
    const spans = movesNothing && told.address ? rowsOfAddress(told.address) : undefined;
    if (spans) sheet.spans.push(...spans);
    else sheet.whole = true;
    stir();
  };
  const stops = [
    listen<Told>(
      globals,
      ({ workbook }) => workbook.worksheets.onChanged,
      (told) => hear(told, told.changeType === MOVES_NOTHING),
    ),
    // A number becomes a date by its format alone.
    listen<Told>(
      globals,
      ({ workbook }) => workbook.worksheets.onFormatChanged,
      (told) => hear(told, true),
    ),
    listen<Told>(
      globals,
      ({ workbook }) => workbook.worksheets.onCalculated,
      (told) => hear(told, true),
    ),
    listen<Told>(
      globals,
      ({ workbook }) => workbook.worksheets.onRowSorted,
      (told) => hear(told, false),
    ),
    listen(globals, ({ workbook }) => workbook.worksheets.onAdded, stir),
    listen(globals, ({ workbook }) => workbook.worksheets.onDeleted, stir),
    listen(globals, ({ workbook }) => workbook.worksheets.onNameChanged, stir),
    listen(globals, ({ workbook }) => workbook.worksheets.onVisibilityChanged, stir),
    listen(globals, ({ workbook }) => workbook.worksheets.onMoved, stir),
    stop,
  ];
  return () => {
    for (const each of stops) each();
  };
}

/** That the list is another one, and which names mean another sheet than before. */
function tabsChanged(before: readonly Tab[], after: readonly Tab[]): WorkbookChange[] {
  if (JSON.stringify(before) === JSON.stringify(after)) return [];
  const idBefore = new Map(before.map(({ name, id }) => [name, id]));
  const anew = after.filter(({ name, id }) => (idBefore.get(name) ?? id) !== id);
  return [{ kind: "sheets" }, ...anew.map(({ name }) => ({ kind: "sheet", sheet: name }) as const)];
}
