import type { Temporal } from "temporal-polyfill";
import { dayNumber } from "../cylinders/calendar";
import type { CountryRules } from "../cylinders/countryRules";
import type { OxygenService } from "../cylinders/oxygenService";
import { stampText, type TestStamp } from "../cylinders/testStamp";
import type { Mixture } from "../gas/mixture";
import type { Cylinder, CylinderFields, Fill, FillFields, FillMethod } from "../log/log";
import { ambiguous, BLANK, type Reading } from "../log/reading";
import { shopOf } from "./audit";
import { CylinderOnRecord } from "./cylinderOnRecord";
import type { FilledCylinder, Rule, Verdict } from "./rule";
import { aboveRating } from "./rules/aboveRating";
import { hydroPastDue } from "./rules/hydroPastDue";
import { notOxygenClean } from "./rules/notOxygenClean";
import { visualPastDue } from "./rules/visualPastDue";

/** One fill, as far as a fill check wants to know it. */
export interface FillToCheck {
  readonly date: Reading<Temporal.PlainDate>;
  readonly hydro: Reading<TestStamp>;
  /** The hydro comes from a date cell, not from text: a stamp typed as 10/19 may be behind it. */
  readonly hydroIsDateCell?: boolean;
  readonly visual: Reading<TestStamp>;
  readonly oxygenService: Reading<OxygenService>;
  readonly mix: Reading<Mixture>;
  readonly method: Reading<FillMethod>;
}

export interface FillCheck {
  readonly verdict: "OK" | "STOP" | "UNKNOWN";
  /** `OK: hydro, visual, rating, method`, or `STOP: …` with every reason, or `UNKNOWN: …` with all that is not known. */
  readonly text: string;
}

/** What is checked, in the order and by the names of the answer; the rules are those of the audit. */
const CHECKS: readonly (readonly [name: string, rule: Rule])[] = [
  ["hydro", hydroPastDue],
  ["visual", visualPastDue],
  ["rating", aboveRating],
  ["method", notOxygenClean],
];

/**
 * Whether one cylinder may be filled so on that day: the audit's verdict for a country's usual cylinder.
 * What is blank or doubtful is never taken as good.
 */
export function fillCheck(fill: FillToCheck, rules: CountryRules): FillCheck {
  const filled = filledCylinder(fill, rules);
  const shop = shopOf(rules);
  const verdicts = CHECKS.map(([name, rule]) => ({ name, verdict: rule.judge(filled, shop) }));
  const faults = verdicts.flatMap(({ verdict }) => (verdict.kind === "fault" ? [verdict] : []));
  const stops = faults.filter(({ severity }) => severity === "stop" || severity === "breach");
  const unknowns = [...new Set(verdicts.flatMap(({ verdict }) => unknownIn(verdict)))];
  const unknownText = `UNKNOWN: ${unknowns.join("; ")}`;
  if (stops.length > 0) {
    const reasons = stops.map(({ message }) => message).join(" ");
    return { verdict: "STOP", text: `STOP: ${reasons}${unknowns.length > 0 ? ` ${unknownText}` : ""}` };
  }
  if (unknowns.length > 0) return { verdict: "UNKNOWN", text: unknownText };
  const good = verdicts.filter(({ verdict }) => verdict.kind !== "does not apply").map(({ name }) => name);
  const remarks = faults.map(({ message }) => `. ${message}`).join("");
  return { verdict: "OK", text: `OK: ${good.join(", ")}${remarks}` };
}

function unknownIn(verdict: Verdict): readonly string[] {
  return verdict.kind === "not judged" ? [verdict.detail ?? verdict.why] : [];
}

function filledCylinder(fill: FillToCheck, rules: CountryRules): FilledCylinder {
  const { date, mix, method, oxygenService, visual } = fill;
  const place = { sheet: "", row: 0 };
  const record: Cylinder = {
    ...place,
    fields: { ...BLANK_CYLINDER, hydro: hydroIn(fill), visual, oxygenService },
  };
  const row: Fill = {
    ...place,
    fields: { ...BLANK_FILL, date, method, analysedMix: mix },
    cylinderInRow: record,
  };
  const day = date.kind === "value" ? dayNumber(date.value) : undefined;
  return { fill: row, serial: "", day, register: "none", cylinder: new CylinderOnRecord([record], rules) };
}

/** Only days above 12 are suspect: below, 10/12 would stand for October 2012, long past any interval. */
const LAST_UNSUSPECTED_DAY = 12;

/**
 * A date cell in the fill's own year whose day could be an earlier year: 19 October 2026 may have been typed as 10/19.
 */
function hydroIn({ hydro, hydroIsDateCell, date }: FillToCheck): Reading<TestStamp> {
  if (hydro.kind !== "value" || hydroIsDateCell !== true || date.kind !== "value") return hydro;
  const { day } = hydro.value;
  if (day === undefined || day.year !== date.value.year || day.day <= LAST_UNSUSPECTED_DAY) return hydro;
  const stampedYear = 2000 + day.day;
  if (stampedYear >= day.year) return hydro;
  const { means, plus, marks } = hydro.value;
  const stamped: TestStamp = {
    month: day.toPlainYearMonth().with({ year: stampedYear }),
    means,
    plus,
    marks,
  };
  const why = `${stampText(hydro.value)} may have been typed as ${day.month}/${day.day}, which means ${stampText(stamped)}: write ${stampText(stamped).replace("-", "/")} as text, or the first of the month`;
  return ambiguous([stamped, hydro.value], why, "swallowed stamp");
}

const BLANK_FILL: FillFields = blankFields([
  "number", "date", "time", "serial", "shopNumber", "owner", "startPressure", "startMix", "startHelium", "orderedMix",
  "orderedHelium", "method", "source", "oxygenAdded", "heliumAdded", "endPressure", "gasTemperatureK",
  "settledPressure", "analysedMix", "analysedHelium", "analysedBy", "modOnLabelM", "filledBy", "receivedBy",
  "certification", "price", "remarks",
]); // prettier-ignore

const BLANK_CYLINDER: CylinderFields = blankFields([
  "serial", "shopNumber", "owner", "cylinderClass", "material", "alloy", "made", "size", "servicePressure", "hydro",
  "visual", "eddyCurrent", "oxygenCleaned", "oxygenService", "status",
]); // prettier-ignore

function blankFields<F extends string>(names: readonly F[]): Record<F, typeof BLANK> {
  return Object.fromEntries(names.map((name) => [name, BLANK])) as Record<F, typeof BLANK>;
}
