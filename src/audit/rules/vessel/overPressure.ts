import { stampText } from "../../../cylinders/testStamp";
import type { CylinderRules } from "../../../cylinders/countryRules";
import { pressureLimitBar } from "../../../cylinders/pressureLimit";
import { ATMOSPHERE_BAR, BAR_PER_PSI, kelvin } from "../../../gas/units";
import { Refusal } from "../../../gas/refusal";
import { dayOf, lacking, unknownClass } from "../../judge/lacks";
import { isLack, known, type Known } from "../../record/readField";
import {
  PASS,
  type Fault,
  type FilledCylinder,
  type NotJudged,
  type Rule,
  type Verdict,
} from "../../judge/rule";
import { settledReading, type SettledReading } from "../../record/settledReading";
import type { Shop } from "../../shop/shop";
import type { Test } from "../../record/testHistory";
import { pressureText } from "../../../words/inSentences";
import type { PressureReading } from "../../../log/log";

/**
 * Filled above what the cylinder may hold settled: its service pressure, or 110 % of it for a class that may have a plus
 * while the latest test carries one. 49 CFR 173.301a(c), 173.302a(b); Arbeidstilsynet regulation 25-15. A settled reading
 * counts; else the end pressure is settled from its temperature (real gas); else it is taken as read, and said so.
 */
export const overPressure: Rule = {
  id: "V03",
  rank: 4,
  title: "Filled above its pressure",
  needs: [["servicePressure"], ["endPressure", "settledPressure"]],
  judge: (filled, shop) => judge(filled, shop, false),
};

/**
 * The same fault where the pressure is what a plus would allow, and no plus counts: the class can have none, or the latest
 * test carries none. 49 CFR 173.302a(b). One finding for both rules.
 */
export const plusNotAllowed: Rule = {
  id: "V07",
  rank: 14,
  title: "Plus pressure on a cylinder without a plus",
  needs: overPressure.needs,
  judge: (filled, shop) => judge(filled, shop, true),
};

/** 49 CFR 173.302a(b). */
const PLUS_FACTOR = 1.1;

function judge(filled: FilledCylinder, shop: Shop, asPlus: boolean): Verdict {
  const service = known(filled, "servicePressure");
  if (isLack(service)) return service;
  if (clearlyBelow(filled, service.value.bar, shop)) return PASS;
  const reading = settledReading(filled.fill, shop.rules);
  if (isLack(reading)) return reading;
  if (overBy(reading, service.value.bar) === 0) return PASS;
  const allowed = limitOf(filled, service);
  if (isLack(allowed)) return allowed;
  const over = overBy(reading, allowed.limitBar);
  if (over === 0) return PASS;
  const certain = over > shop.figures.readingErrorPercent / 100;
  const plus = certain && !allowed.plus && withinPlus(reading, service.value, shop);
  if (plus !== asPlus) return PASS;
  return plus ? plusFault(service, reading, allowed, shop) : overFault(reading, allowed, certain, shop);
}

/** Spares the equation of state: a reading that is not above, at the reference temperature or warmer, is below. */
function clearlyBelow({ fill }: FilledCylinder, serviceBar: number, { rules }: Shop): boolean {
  const { settledPressure, endPressure, gasTemperatureK } = fill.fields;
  return (
    settledPressure.kind === "blank" &&
    endPressure.kind === "value" &&
    endPressure.value.bar <= serviceBar &&
    (gasTemperatureK.kind !== "value" ||
      gasTemperatureK.value >= kelvin(rules.referenceTemperatureC, "metric"))
  );
}

/** By what share of the limit the gauge is above it; 0 within half a unit of the reading, which rounding makes. */
function overBy({ bar, written }: SettledReading, limitBar: number): number {
  const halfUnit = written.unit === "psi" ? BAR_PER_PSI / 2 : 0.5;
  return bar - limitBar <= halfUnit ? 0 : (bar - limitBar) / (limitBar - ATMOSPHERE_BAR);
}

interface Allowed {
  readonly limitBar: number;
  readonly plus: boolean;
  readonly latest: Test | undefined;
  /** The class that can have no plus; undefined where it can. */
  readonly withoutPlus: string | undefined;
}

/** Of a cylinder of unknown kind a plus on its latest test shows that its class can have one. */
function limitOf(filled: FilledCylinder, service: Known<PressureReading>): Allowed | NotJudged {
  const { rules, hydros, isOfUnknownKind, country } = filled.cylinder;
  if (rules instanceof Refusal) return unknownClass(filled, rules);
  const withPlus = isOfUnknownKind
    ? country.cylinders.find(mayHavePlus)
    : mayHavePlus(rules)
      ? rules
      : undefined;
  const withoutPlus = withPlus ? undefined : rules.name;
  const bare = { limitBar: service.value.bar, plus: false, latest: undefined, withoutPlus };
  if (withPlus === undefined || hydros === undefined) return bare;
  const day = dayOf(filled);
  if (typeof day !== "number") return day;
  const state = hydros.stateOn(day);
  if (state.kind === "in doubt") return lacking(state.doubt.reading, state.doubt.at);
  if (state.kind !== "in date" && state.kind !== "past due") return bare;
  const { last } = state;
  const limitBar = pressureLimitBar(service.value.bar, withPlus, last.stamp);
  return { limitBar, plus: limitBar > service.value.bar, latest: last, withoutPlus };
}

function mayHavePlus({ plusAllowed }: CylinderRules): boolean {
  return plusAllowed === true;
}

/** Whether a plus would cover it, where the country knows of any. */
function withinPlus({ bar }: SettledReading, service: PressureReading, { rules, figures }: Shop): boolean {
  const atMost = PLUS_FACTOR * (1 + figures.readingErrorPercent / 100);
  return rules.cylinders.some(mayHavePlus) && bar - ATMOSPHERE_BAR <= (service.bar - ATMOSPHERE_BAR) * atMost;
}

function plusFault(
  service: Known<PressureReading>,
  reading: SettledReading,
  { latest, withoutPlus }: Allowed,
  shop: Shop,
): Fault {
  const why =
    withoutPlus !== undefined
      ? `a cylinder of this class (${withoutPlus}) can have no plus`
      : latest === undefined
        ? "no test with a plus is on record"
        : `the latest test, ${stampText(latest.stamp)}, carries no plus`;
  return {
    kind: "fault",
    severity: "stop",
    ...whoSays(shop),
    source: "49 CFR 173.302a(b)",
    message: `${said(reading)}, above the service pressure of ${pressureText(service.value.bar, reading.written.unit)}: ${why}.`,
    todo: "Bleed it to its service pressure, and have it looked at; fill it to no more until a test earns the plus.",
    at: reading.at,
  };
}

function overFault(
  reading: SettledReading,
  { limitBar, plus }: Allowed,
  certain: boolean,
  shop: Shop,
): Fault {
  const limit = `${pressureText(limitBar, reading.written.unit)}${plus ? " with its plus" : ""}`;
  const margin = `${shop.figures.readingErrorPercent} % that a gauge may be off`;
  return {
    kind: "fault",
    severity: certain ? "stop" : "warn",
    ...whoSays(shop),
    message: certain
      ? `${said(reading)}, above the ${limit} it may hold.`
      : `${said(reading)}, above the ${limit} it may hold, within the ${margin}.`,
    todo: certain
      ? "Bleed it to its limit now, and have it looked at before the next fill."
      : "Let it settle, read it again, and bleed what is above.",
    at: reading.at,
  };
}

function said({ bar, written, how }: SettledReading): string {
  const read = `${written.value.toLocaleString("en-US")} ${written.unit}`;
  switch (how) {
    case "read settled":
      return `Settled at ${read}`;
    case "settled from its temperature":
      return pressureText(bar, written.unit) === read
        ? `Filled to ${read}`
        : `Filled to ${read}, which settles at ${pressureText(bar, written.unit)}`;
    case "as read, its temperature unknown":
      return `Filled to ${read} (as read: no temperature is logged)`;
  }
}

function whoSays({ rules }: Shop): Pick<Fault, "basis" | "source"> {
  return rules.fillPressure ?? { basis: "practice", source: "filling pressure as stamped, settled at 15 °C" };
}
