import { acceptancesOf } from "../../audit/judge/acceptance";
import type { DueLists } from "../../audit/lists/dueLists";
import type { CylinderAtRisk, AuditResult } from "../../audit/judge/finding";
import { notToFillNext, openRisks, type NotToFill } from "../../audit/lists/recall";
import type { TableColumn } from "../../sheet/draft/blocks";
import type { SheetDraft } from "../../sheet/draft/draft";
import { LOOKS } from "../../sheet/draft/looks";
import { sheetOf } from "../../sheet/draft/sheetOf";
import { isoDayCell, linkCell, severityWord } from "../cells";
import { counted } from "../../words/counts";
import { withoutOwners, type MonthOptions } from "./options";
import type { Period } from "./period";
import { pageOf } from "./page";

/** What to do about cylinders, whatever the month: whose telephone should ring, and what to turn away at the counter. */
export interface CylinderLists {
  readonly recall: readonly CylinderAtRisk[];
  readonly notToFill: readonly NotToFill[];
}

export function cylinderLists(
  { recall, doNotFill }: AuditResult,
  due: DueLists,
  { accepted }: MonthOptions,
): CylinderLists {
  const acceptances = acceptancesOf(accepted);
  const open = { doNotFill: openRisks(doNotFill, acceptances) };
  const notToFill = [...notToFillNext(open, due)].sort((one, other) =>
    one.serial.localeCompare(other.serial, "en", { numeric: true }),
  );
  return { recall: openRisks(recall, acceptances), notToFill };
}

const DONE: readonly TableColumn[] = [
  { heading: "Done by", style: LOOKS.fillIn, leastCharacters: 14 },
  { heading: "On", style: LOOKS.fillIn, leastCharacters: 10 },
];

export function recallSheet({ recall }: CylinderLists, period: Period, options: MonthOptions): SheetDraft {
  return sheetOf(
    `Call first ${period.iso}`,
    [
      { kind: "title", lines: [`May still hold a dangerous fill: ${counted(recall.length, "cylinder")}`] },
      {
        kind: "quiet",
        lines: [
          `By the last fill of each cylinder in the whole log, as it stood on ${options.asOf.toString()}; the latest fill first.`,
          ...withoutOwners(options),
        ],
      },
      {
        kind: "table",
        name: `Recall_${period.iso}`,
        columns: [
          { heading: "Cylinder" },
          ...(options.names ? [{ heading: "Owner" }] : []),
          { heading: "Last filled" },
          { heading: "Cell", mostCharacters: 20 },
          { heading: "What is wrong", mostCharacters: 60 },
          ...DONE,
        ],
        rows: recall.map(({ serial, owner, fillDate, lastFill, findings }) => [
          serial,
          ...(options.names ? [owner ?? ""] : []),
          isoDayCell(fillDate),
          linkCell(lastFill, options.logFile),
          findings.map(({ severity, message }) => `${severityWord(severity)}: ${message}`).join("\n"),
          "",
          "",
        ]),
        empty: "No cylinder was last filled in a way that calls for a telephone call.",
      },
    ],
    pageOf(options, period, true),
  );
}

export function notToFillSheet(
  { notToFill }: CylinderLists,
  period: Period,
  options: MonthOptions,
): SheetDraft {
  return sheetOf(
    `Do not fill ${period.iso}`,
    [
      { kind: "title", lines: [`Not to be filled as they are: ${counted(notToFill.length, "cylinder")}`] },
      {
        kind: "quiet",
        lines: [
          `For the counter, by cylinder: something is wrong with the vessel, or a test of it is out of date on ${options.asOf.toString()}, by the whole log.`,
          "A cylinder that is not listed is not thereby fit: look at its stamps before each fill.",
        ],
      },
      {
        kind: "table",
        name: `Do_not_fill_${period.iso}`,
        columns: [
          { heading: "Cylinder" },
          ...(options.names ? [{ heading: "Owner" }] : []),
          { heading: "Why", mostCharacters: 60 },
          { heading: "Cell", mostCharacters: 20 },
          ...DONE,
        ],
        rows: notToFill.map(({ serial, owner, reasons, cell }) => [
          serial,
          ...(options.names ? [owner ?? ""] : []),
          reasons.join("\n"),
          linkCell(cell, options.logFile),
          "",
          "",
        ]),
        empty: "No cylinder is known to be unfit for its next fill.",
      },
    ],
    pageOf(options, period, true),
  );
}
