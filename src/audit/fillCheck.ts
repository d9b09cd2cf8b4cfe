import type { Temporal } from "temporal-polyfill";
import { dayNumber } from "../cylinders/calendar";
import type { CountryRules } from "../cylinders/countryRules";
import type { OxygenService } from "../cylinders/oxygenService";
import { stampText, type TestStamp } from "../cylinders/testStamp";
import type { Mixture } from "../gas/mixture";
import type { Cylinder, CylinderFields, Fill, FillFields, FillMethod } from "../log/log";
import { ambiguous, BLANK, type Reading } from "../log/reading";
import { lacking } from "./judge/lacks";
import { CylinderOnRecord } from "./record/cylinderOnRecord";
import type { FilledCylinder, Rule, Verdict } from "./judge/rule";
import { aboveRating } from "./rules/oxygen/aboveRating";
import { hydroPastDue } from "./rules/vessel/hydroPastDue";
import { continuousTooRich } from "./rules/oxygen/continuousTooRich";
import { notOxygenClean } from "./rules/oxygen/notOxygenClean";
import { visualPastDue } from "./rules/vessel/visualPastDue";
import { shopOf } from "./shop/shop";
import { NO_PAST } from "./walk/past";
import { NO_ROWS } from "./walk/rowInLog";

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

interface Check {
  readonly name: string;
  readonly rule: Rule;
  /** What the rule must be told, in the order of the arguments. */
  readonly asks: readonly Asked[];
}

type Asked = "date" | "hydro" | "visual" | "oxygenService" | "mix" | "method";

/** What is checked, in the order and by the names of the answer; the rules are those of the audit. */
const CHECKS: readonly Check[] = [
  { name: "hydro", rule: hydroPastDue, asks: ["date", "hydro"] },
  { name: "visual", rule: visualPastDue, asks: ["date", "visual"] },
  { name: "rating", rule: aboveRating, asks: ["oxygenService", "mix"] },
  { name: "method", rule: notOxygenClean, asks: ["oxygenService", "method"] },
  { name: "method", rule: continuousTooRich, asks: ["mix", "method"] },
];

/**
 * Whether one cylinder may be filled so on that day: the audit's verdict for a country's usual cylinder.
 * What is blank or doubtful is never taken as good.
 */
export function fillCheck(fill: FillToCheck, rules: CountryRules): FillCheck {
  const toCheck = { ...fill, hydro: hydroIn(fill) };
  const filled = filledCylinder(toCheck, rules);
  const shop = shopOf(rules);
  const verdicts = CHECKS.map((check) => ({ check, verdict: check.rule.judge(filled, shop) }));
  const faults = verdicts.flatMap(({ verdict }) => (verdict.kind === "fault" ? [verdict] : []));
  const stops = faults.filter(({ severity }) => severity === "stop" || severity === "breach");
  const unknowns = new Set(verdicts.flatMap(({ check, verdict }) => unknownIn(check, verdict, toCheck)));
  const unknownText = `UNKNOWN: ${[...unknowns].join("; ")}`;
  if (stops.length > 0) {
    const reasons = stops.map(({ message }) => message).join(" ");
    return { verdict: "STOP", text: `STOP: ${reasons}${unknowns.size > 0 ? ` ${unknownText}` : ""}` };
  }
  if (unknowns.size > 0) return { verdict: "UNKNOWN", text: unknownText };
  const applied = verdicts.filter(({ verdict }) => verdict.kind !== "does not apply");
  const good = [...new Set(applied.map(({ check }) => check.name))];
  const remarks = faults.map(({ message }) => `. ${message}`).join("");
  const guidance = rules.notLaw === undefined ? "" : `. ${rules.notLaw}`;
  return { verdict: "OK", text: `OK: ${good.join(", ")}${remarks}${guidance}` };
}

/** All that the check was not told, or else why it could not judge. */
function unknownIn({ asks }: Check, verdict: Verdict, fill: FillToCheck): readonly string[] {
  if (verdict.kind !== "not judged") return [];
  const untold = asks.flatMap((asked) => {
    const reading = fill[asked];
    return reading.kind === "value"
      ? []
      : [lacking(reading, { field: asked === "mix" ? "orderedMix" : asked })];
  });
  return (untold.length > 0 ? untold : [verdict]).map(({ why, detail }) => detail ?? why);
}

function filledCylinder(fill: FillToCheck, rules: CountryRules): FilledCylinder {
  const { date, hydro, visual, oxygenService, mix, method } = fill;
  const place = { sheet: "", row: 0 };
  const record: Cylinder = {
    ...place,
    fields: told<CylinderFields>({ hydro, visual, oxygenService }),
  };
  const row: Fill = {
    ...place,
    fields: told<FillFields>({ date, method, orderedMix: mix }),
    cylinderInRow: record,
  };
  const day = date.kind === "value" ? dayNumber(date.value) : undefined;
  const cylinder = new CylinderOnRecord([record], rules);
  return { fill: row, serial: "", day, register: "none", cylinder, past: NO_PAST, row: NO_ROWS };
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

/** Fields of which some are told; every other one is blank. */
function told<Fields extends object>(fields: Partial<Fields>): Fields {
  return new Proxy(fields, { get: (known, field) => Reflect.get(known, field) ?? BLANK }) as Fields;
}
