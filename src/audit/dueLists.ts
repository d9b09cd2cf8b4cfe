import type { Temporal } from "temporal-polyfill";
import { dateOf, dayNumber } from "../cylinders/calendar";
import type { CountryRules } from "../cylinders/countryRules";
import { stampText } from "../cylinders/testStamp";
import { Refusal } from "../gas/refusal";
import type { Log } from "../log/log";
import { knownCylinders, type KnownCylinder } from "./knownCylinders";
import type { AuditOptions } from "./shop";
import { shopFor } from "./shopFor";
import { stateOn, type TestHistory } from "./tests";
import { fieldName } from "./words";

/** How far ahead the lists look, in days: a list for each. */
export const DUE_WITHIN_DAYS = [30, 60, 90] as const;

export type DueTest = "hydro" | "visual" | "oxygen cleaning";

/** A test of a cylinder, and when it runs out. */
export interface DueEntry {
  readonly serial: string;
  readonly owner: string | undefined;
  readonly test: DueTest;
  /** The latest one, as stamped; of a hydro that never was, the manufacture. */
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
  const { shop } = shopFor(rules, options);
  const today = dayNumber(asOf);
  const entries: DueEntry[] = [];
  const notKnown: DueUnknown[] = [];
  for (const known of knownCylinders(log, shop.rules)) {
    for (const due of testsDue(known, today)) {
      if ("why" in due) notKnown.push(due);
      else entries.push(due);
    }
  }
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

function testsDue(
  { serial, owner, cylinder }: KnownCylinder,
  today: number,
): readonly (DueEntry | DueUnknown)[] {
  const unknown = (test: DueTest, why: string): DueUnknown => ({ serial, owner, test, why });
  if (cylinder.other) return [unknown("hydro", "serial stands for two cylinders in the register")];
  if (cylinder.rules instanceof Refusal) return [unknown("hydro", cylinder.rules.message)];
  const of = (
    test: DueTest,
    field: "hydro" | "visual" | "oxygenCleaned",
    history: TestHistory | undefined,
  ) => (history === undefined ? [] : [dueOf(test, field, history)]);
  const dueOf = (
    test: DueTest,
    field: "hydro" | "visual" | "oxygenCleaned",
    history: TestHistory,
  ): DueEntry | DueUnknown => {
    const state = stateOn(today, history);
    switch (state.kind) {
      case "in date":
      case "past due": {
        const { stamp, until, kind } = state.last;
        return {
          serial,
          owner,
          test,
          last: stampText(stamp),
          sinceManufacture: kind === "manufacture",
          until: dateOf(until).toString(),
          daysLeft: until - today,
        };
      }
      case "in doubt":
        return unknown(test, state.doubt.reading.why);
      case "only later":
        return unknown(test, `the only ${fieldName(field)} on record is later than the day of the list`);
      case "none":
        return unknown(test, `${fieldName(field)} is blank`);
    }
  };
  const { reading } = cylinder.oxygenService;
  const isClean = reading.kind === "value" && reading.value.oxygenClean;
  const cleanings = isClean ? cylinder.cleanings : undefined;
  return [
    ...of("hydro", "hydro", cylinder.hydros),
    ...of("visual", "visual", cylinder.visuals),
    ...of("oxygen cleaning", "oxygenCleaned", cleanings),
  ];
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
