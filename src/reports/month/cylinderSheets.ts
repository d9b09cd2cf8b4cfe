import { CylinderOnRecord } from "../../audit/cylinderOnRecord";
import { ownerOf } from "../../audit/recall";
import type { Shop } from "../../audit/shop";
import { pressureText, ratingText } from "../../audit/words";
import { dayNumber } from "../../cylinders/calendar";
import { nameMix } from "../../gas/nameMix";
import { serialKey } from "../../log/cells/serial";
import type { Cylinder, Log } from "../../log/log";
import { joinRegister } from "../../log/register";
import type { DraftCell, SheetDraft } from "../../sheet/draft/draft";
import { LOOKS } from "../../sheet/draft/looks";
import { sheetOf } from "../../sheet/draft/sheetOf";
import { dayCell, linkCell, readingText } from "../cells";
import type { MonthFill, MonthOfFills } from "./monthFills";
import type { MonthOptions } from "./options";
import { pageOf } from "./page";
import type { Period } from "./period";
import { testOnDay, type TestOnDay } from "./testCells";

/** How far ahead a test counts as coming due. Common practice, no source. */
const COMING_DAYS = 60;

/** Every cylinder that was filled, fill by fill, with its tests as they were on that day. */
export function cylindersSheet(month: MonthOfFills, period: Period, options: MonthOptions): SheetDraft {
  return sheetOf(
    `Cylinders ${period.iso}`,
    [
      { kind: "title", lines: [`Cylinders filled, ${period.text}`] },
      {
        kind: "quiet",
        lines: [
          "Tests as they stood on the day of the fill. A date in red had passed; what is not on record is not passed.",
        ],
      },
      {
        kind: "table",
        name: `Cylinders_${period.iso}`,
        columns: [
          { heading: "Filled on" },
          { heading: "Cylinder" },
          ...(options.names ? [{ heading: "Owner" }] : []),
          { heading: "Mix" },
          { heading: "Method" },
          { heading: "Filled to", style: { horizontal: "right" } },
          { heading: "Filled by" },
          { heading: "Hydro" },
          { heading: "Hydro good until" },
          { heading: "Visual" },
          { heading: "Visual good until" },
          { heading: "Oxygen rating" },
          { heading: "Cell", mostCharacters: 20 },
        ],
        rows: month.cylinders.map((fill) => filledCells(fill, options)),
        empty: `The log has no fills in ${period.text}.`,
      },
    ],
    pageOf(options, period, true),
  );
}

function filledCells({ filled, day, mix, cell }: MonthFill, options: MonthOptions): readonly DraftCell[] {
  const { fields } = filled.fill;
  const hydro = testOnDay(filled.cylinder, "hydros", day);
  const visual = testOnDay(filled.cylinder, "visuals", day);
  const unit = options.units === "us" ? "psi" : "bar";
  return [
    dayCell(day),
    filled.serial === "" ? NOT_READ : filled.serial,
    ...(options.names ? [ownerOf(filled) ?? ""] : []),
    mix ? nameMix(mix) : NOT_KNOWN,
    readingText(fields.method, String),
    readingText(fields.endPressure, ({ bar }) => pressureText(bar, unit)),
    readingText(fields.filledBy, String),
    hydro.last,
    hydro.until,
    visual.last,
    visual.until,
    readingText(filled.cylinder.oxygenService.reading, ratingText) || NOT_KNOWN,
    linkCell(cell, options.logFile),
  ];
}

const NOT_KNOWN = { value: "not known", style: LOOKS.warn } as const;
const NOT_READ = { value: "not read", style: LOOKS.warn } as const;

/** Cylinders of the whole log that are out of date, or coming due, or of which nobody knows. */
export function dueSheet(
  log: Log,
  shop: Shop,
  month: MonthOfFills,
  period: Period,
  options: MonthOptions,
): SheetDraft {
  const today = dayNumber(options.asOf);
  const due = cylindersOf(log, shop, month).flatMap((each) => dueCells(each, today, options));
  const rows = due
    .sort((one, other) => one.rank - other.rank || one.day - other.day)
    .map(({ cells }) => cells);
  return sheetOf(
    `Tests due ${period.iso}`,
    [
      { kind: "title", lines: ["Tests out of date and coming due"] },
      {
        kind: "quiet",
        lines: [
          `All cylinders of the log, as of ${options.asOf.toString()}: out of date, due within ${COMING_DAYS} days, or not known. Past fills are judged by their own day.`,
        ],
      },
      {
        kind: "table",
        name: `Tests_due_${period.iso}`,
        columns: [
          { heading: "State" },
          { heading: "Cylinder" },
          ...(options.names ? [{ heading: "Owner" }] : []),
          { heading: "Hydro" },
          { heading: "Hydro good until" },
          { heading: "Visual" },
          { heading: "Visual good until" },
          { heading: "Last filled" },
          { heading: "Told the owner on", style: LOOKS.fillIn, leastCharacters: 16 },
        ],
        rows,
        empty: `No test is out of date or due within ${COMING_DAYS} days.`,
      },
    ],
    pageOf(options, period, true),
  );
}

interface KnownCylinder {
  readonly serial: string;
  readonly cylinder: CylinderOnRecord;
  readonly lastDay: number | undefined;
  readonly owner: string | undefined;
}

function cylindersOf(log: Log, { rules }: Shop, { lastOfEach }: MonthOfFills): readonly KnownCylinder[] {
  const filled = [...lastOfEach.values()].map((each): KnownCylinder => ({
    serial: each.serial,
    cylinder: each.cylinder,
    lastDay: each.day,
    owner: ownerOf(each),
  }));
  const known = new Set(filled.map(({ serial }) => serialKey(serial)));
  const { bySerial, written } = joinRegister(log);
  const rest = [...bySerial].flatMap(([key, records]): readonly KnownCylinder[] =>
    known.has(key)
      ? []
      : [
          {
            serial: written.get(key) ?? key,
            cylinder: new CylinderOnRecord(records, rules),
            lastDay: undefined,
            owner: ownerIn(records),
          },
        ],
  );
  return [...filled, ...rest];
}

function ownerIn(records: readonly Cylinder[]): string | undefined {
  const readings = records.map(({ fields }) => fields.owner);
  return readings.flatMap((owner) => (owner.kind === "value" ? [owner.value] : []))[0];
}

/** Later than any day of a log. */
const NO_DAY = 1e9;
const STATES = ["Out of date", "Not known", "Coming due"] as const;

function dueCells(
  { serial, cylinder, lastDay, owner }: KnownCylinder,
  today: number,
  options: MonthOptions,
): readonly { readonly rank: number; readonly day: number; readonly cells: readonly DraftCell[] }[] {
  const tests = [testOnDay(cylinder, "hydros", today), testOnDay(cylinder, "visuals", today)] as const;
  const rank = Math.min(...tests.map((test) => rankOf(test, today)));
  const state = STATES[rank];
  if (state === undefined) return [];
  const [hydro, visual] = tests;
  const styles = [LOOKS.stop, LOOKS.warn, LOOKS.note];
  return [
    {
      rank,
      day: Math.min(...tests.map(({ untilDay }) => untilDay ?? NO_DAY)),
      cells: [
        { value: state, style: styles[rank]! },
        serial,
        ...(options.names ? [owner ?? ""] : []),
        hydro.last,
        hydro.until,
        visual.last,
        visual.until,
        lastDay === undefined ? "" : dayCell(lastDay),
        null,
      ],
    },
  ];
}

function rankOf({ state, untilDay }: TestOnDay, today: number): number {
  if (state === "past due") return 0;
  if (state === "not known") return 1;
  return untilDay !== undefined && untilDay <= today + COMING_DAYS ? 2 : STATES.length;
}
