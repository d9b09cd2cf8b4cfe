import type { Temporal } from "temporal-polyfill";
import { dateOf, dayNumber } from "../../cylinders/calendar";
import type { CountryRules } from "../../cylinders/countryRules";
import { stampText } from "../../cylinders/testStamp";
import { Refusal } from "../../gas/refusal";
import type { Log } from "../../log/log";
import { allAtOnce, inSteps, part, type Steps } from "../../sheet/steps";
import type { CellAddress } from "../../sheet/sheet";
import type { CylinderOnRecord } from "../record/cylinderOnRecord";
import { readingsOf } from "../judge/eitherReading";
import { knownCylinders, type KnownCylinder } from "../record/knownCylinders";
import type { AuditOptions } from "../shop/shop";
import { LogColumns } from "../judge/logColumns";
import type { Place } from "../judge/rule";
import { shopFor } from "../shop/shopFor";
import { lateByEveryReading, type Test, type TestHistory } from "../record/testHistory";
import { fieldName } from "../../words/fields";

/** How far ahead the lists look, in days: a list for each. */
export const DUE_WITHIN_DAYS = [30, 60, 90] as const;

export type DueTest = "hydro" | "visual" | "oxygen cleaning";

/** A test of a cylinder, and when it runs out. */
export interface DueEntry {
  readonly serial: string;
  readonly owner: string | undefined;
  readonly test: DueTest;
  /** The cell that says so, or where the date would stand. */
  readonly cell: CellAddress;
  /** The latest one, as stamped, or all that it may be; of a hydro that never was, the manufacture. */
  readonly last: string;
  readonly sinceManufacture: boolean;
  /** ISO date of the last day on which the cylinder may be filled so. */
  readonly until: string;
  /** Days from the day of the list until then; negative once it is past. */
  readonly daysLeft: number;
}

/** A cylinder of which the log does not let a due date be known, and why. Unknown is never in date. */
export interface DueUnknown {
  readonly serial: string;
  readonly owner: string | undefined;
  readonly test: DueTest;
  /** The cell that says so, or where the date would stand. */
  readonly cell: CellAddress;
  readonly why: string;
}

export interface DueLists {
  /** ISO date of the day of the lists. */
  readonly asOf: string;
  readonly outOfDate: readonly DueEntry[];
  /** Still in date, and not in an earlier list: due within so many days. */
  readonly dueWithin: readonly { readonly days: number; readonly entries: readonly DueEntry[] }[];
  readonly notKnown: readonly DueUnknown[];
}

/**
 * Which cylinders of the log are out of date on a day, and which fall due in the weeks after it; by owner, the earliest
 * first. No fill is judged here: a cylinder that was filled in time may be on the list.
 */
export function dueLists(
  log: Log,
  rules: CountryRules,
  asOf: Temporal.PlainDate,
  options: AuditOptions = {},
): DueLists {
  return allAtOnce(dueListSteps(log, rules, asOf, options));
}

/** The same, a few fills at a time. */
export function* dueListSteps(
  log: Log,
  rules: CountryRules,
  asOf: Temporal.PlainDate,
  options: AuditOptions = {},
): Steps<DueLists> {
  const { shop } = shopFor(rules, options);
  const today = dayNumber(asOf);
  const columns = new LogColumns(log);
  const entries: DueEntry[] = [];
  const notKnown: DueUnknown[] = [];
  const known = yield* part(0, 0.9, knownCylinders(log, shop.rules));
  const judging = inSteps(known, known.length, (each) => {
    for (const due of testsDue(each, today, columns)) {
      if ("why" in due) notKnown.push(due);
      else entries.push(due);
    }
  });
  yield* part(0.9, 1, judging);
  entries.sort(byOwner);
  const between = (least: number, most: number) =>
    entries.filter(({ daysLeft }) => daysLeft >= least && daysLeft <= most);
  return {
    asOf: asOf.toString(),
    outOfDate: entries.filter(({ daysLeft }) => daysLeft < 0),
    dueWithin: DUE_WITHIN_DAYS.map((days, at) => ({
      days,
      entries: between(at === 0 ? 0 : DUE_WITHIN_DAYS[at - 1]! + 1, days),
    })),
    notKnown: notKnown.sort(byOwner),
  };
}

const FIELDS = { hydro: "hydro", visual: "visual", "oxygen cleaning": "oxygenCleaned" } as const;

function testsDue(
  { serial, owner, row, cylinder }: KnownCylinder,
  today: number,
  columns: LogColumns,
): readonly (DueEntry | DueUnknown)[] {
  const whose = (test: DueTest, at: Place) => ({ serial, owner, test, cell: columns.cell(at, row) });
  const unknown = (test: DueTest, at: Place, why: string): DueUnknown => ({ ...whose(test, at), why });
  const due = (test: DueTest, { stamp, until, kind, at }: Test, last = stampText(stamp)): DueEntry => ({
    ...whose(test, at),
    last,
    sinceManufacture: kind === "manufacture",
    until: dateOf(until).toString(),
    daysLeft: until - today,
  });
  const dueOf = (test: DueTest, history: TestHistory | undefined): readonly (DueEntry | DueUnknown)[] => {
    if (history === undefined) return [];
    const field = FIELDS[test];
    const state = history.stateOn(today);
    switch (state.kind) {
      case "in date":
      case "past due":
        return [due(test, state.last)];
      case "in doubt": {
        const { doubt } = state;
        const late = lateByEveryReading(today, history);
        return [late ? due(test, late, readingsOf(doubt)) : unknown(test, doubt.at, doubt.reading.why)];
      }
      case "only later": {
        const why = `the only ${fieldName(field)} on record is later than the day of the list`;
        return [unknown(test, history.tests[0]!.at, why)];
      }
      case "none":
        return [unknown(test, placeOf(cylinder, field), `${fieldName(field)} is blank`)];
    }
  };
  if (cylinder.other) {
    const at: Place = { record: cylinder.other, field: "serial" };
    return [unknown("hydro", at, "serial stands for two cylinders in the register")];
  }
  if (cylinder.rules instanceof Refusal)
    return [unknown("hydro", placeOf(cylinder, "cylinderClass"), cylinder.rules.message)];
  const { reading } = cylinder.oxygenService;
  const isClean = reading.kind === "value" && reading.value.oxygenClean;
  return [
    ...dueOf("hydro", cylinder.hydros),
    ...dueOf("visual", cylinder.visuals),
    ...(isClean ? dueOf("oxygen cleaning", cylinder.cleanings) : []),
  ];
}

/** Where a field of the cylinder would stand: in the register's row, as it comes last, else the fill's own. */
function placeOf({ records }: CylinderOnRecord, field: Place["field"]): Place {
  const record = records.at(-1);
  return { field, ...(record && { record }) };
}

/** Owners by name, those without one last; of one owner, what falls due first. */
function byOwner(
  one: { readonly owner: string | undefined; readonly serial: string; readonly until?: string },
  other: typeof one,
): number {
  return (
    compare(one.owner ?? "\uffff", other.owner ?? "\uffff") ||
    compare(one.until ?? "", other.until ?? "") ||
    compare(one.serial, other.serial)
  );
}

function compare(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
