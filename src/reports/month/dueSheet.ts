import { DUE_WITHIN_DAYS, type DueEntry, type DueLists } from "../../audit/lists/dueLists";
import type { DraftCell, SheetDraft } from "../../sheet/draft/draft";
import { FORMATS, LOOKS } from "../../sheet/draft/looks";
import { sheetOf } from "../../sheet/draft/sheetOf";
import { isoDayCell } from "../cells";
import { withoutOwners, type MonthOptions } from "./options";
import { pageOf } from "./page";
import type { Period } from "./period";

/** Tests that are out of date on the day of the report, fall due after it, or of which the log does not let one know. */
export function dueSheet(due: DueLists, period: Period, options: MonthOptions): SheetDraft {
  const farthest = DUE_WITHIN_DAYS.at(-1)!;
  return sheetOf(
    `Tests due ${period.iso}`,
    [
      { kind: "title", lines: ["Tests out of date and falling due"] },
      {
        kind: "quiet",
        lines: [
          `All cylinders of the log, as of ${due.asOf}: out of date, due within ${farthest} days, or not known; ${options.names ? "by owner" : "the earliest first"}. Past fills are judged by their own day.`,
          ...withoutOwners(options),
        ],
      },
      {
        kind: "table",
        name: `Tests_due_${period.iso}`,
        columns: [
          { heading: "State" },
          { heading: "Cylinder" },
          ...(options.names ? [{ heading: "Owner" }] : []),
          { heading: "Test" },
          { heading: "Last" },
          { heading: "Good until" },
          { heading: "Days left", format: FORMATS.whole, style: { horizontal: "right" } },
          { heading: "Why not known", mostCharacters: 50 },
          { heading: "Told the owner on", style: LOOKS.fillIn, leastCharacters: 16 },
        ],
        rows: [
          ...inOrder(due.outOfDate, options).map((entry) =>
            entryCells("Out of date", LOOKS.stop, entry, options),
          ),
          ...due.dueWithin.flatMap(({ days, entries }) =>
            inOrder(entries, options).map((entry) =>
              entryCells(`Within ${days} days`, LOOKS.note, entry, options),
            ),
          ),
          ...inOrder(due.notKnown, options).map(({ serial, owner, test, why }): readonly DraftCell[] => [
            { value: "Not known", style: LOOKS.warn },
            serial,
            ...(options.names ? [owner ?? ""] : []),
            test,
            null,
            null,
            null,
            why,
            null,
          ]),
        ],
        empty: `No test is out of date or due within ${farthest} days.`,
      },
    ],
    pageOf(options, period, true),
  );
}

/** They come by owner; where no owner is to be seen, by what falls due first. */
function inOrder<E extends { readonly serial: string; readonly daysLeft?: number }>(
  entries: readonly E[],
  { names }: MonthOptions,
): readonly E[] {
  if (names) return entries;
  return [...entries].sort(
    (one, other) => (one.daysLeft ?? 0) - (other.daysLeft ?? 0) || (one.serial < other.serial ? -1 : 1),
  );
}

function entryCells(
  state: string,
  style: StyledState,
  { serial, owner, test, last, sinceManufacture, until, daysLeft }: DueEntry,
  { names }: MonthOptions,
): readonly DraftCell[] {
  return [
    { value: state, style },
    serial,
    ...(names ? [owner ?? ""] : []),
    test,
    sinceManufacture ? `made ${last}` : last,
    isoDayCell(until),
    daysLeft,
    null,
    null,
  ];
}

type StyledState = (typeof LOOKS)["stop" | "note"];
