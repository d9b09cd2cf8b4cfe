import { stampText } from "../../../cylinders/testStamp";
import type { CylinderRules } from "../../../cylinders/countryRules";
import { pressureLimitBar } from "../../../cylinders/pressureLimit";
import { ATMOSPHERE_BAR, BAR_PER_PSI, kelvin } from "../../../gas/units";
import { Refusal } from "../../../gas/refusal";
import { dayOf, lacking, unknownClass } from "../../judge/lacks";
import { isLack, read } from "../../record/readField";
import { figureInDoubt, knownService, type ServiceOnRecord } from "../../record/serviceOnRecord";
import {
  notJudged,
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

/**
 * Filled above what the cylinder may hold settled: its service pressure, or 110 % of it for a class that may have a plus
 * while the latest test carries one. 49 CFR 173.301a(c), 173.302a(b); Arbeidstilsynet regulation 25-15. A settled reading
 * counts; else the end pressure is settled from its temperature (real gas); else it is taken as read, and said so.
 */
export const overPressure: Rule = {
  id: "V03",
  rank: 4,
  title: "Filled above its pressure",
  needs: [
    ["servicePressure", "cylinderClass", "size"],
    ["endPressure", "settledPressure"],
  ],
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
  const service = knownService(filled);
  if (isLack(service)) return service;
  if (clearlyBelow(filled, service.bar, shop)) return within(filled);
  const reading = settledReading(filled.fill, shop.rules);
  if (isLack(reading)) return reading;
  const cold = ifColdAsWritten(filled, reading, service);
  if (cold !== undefined) return cold;
  if (overBy(reading, service.bar) === 0) return within(filled);
  const allowed = limitOf(filled, service);
  if (isLack(allowed)) return allowed;
  const over = overBy(reading, allowed.limitBar);
  if (over === 0) return within(filled);
  if (over > shop.figures.readingErrorPercent / 100) {
    const warmth = explainedByWarmth(reading, allowed.limitBar, shop);
    if (warmth !== undefined) return asPlus ? PASS : overFault(reading, allowed, warmth, shop);
    const plus = !allowed.plus && withinPlus(reading, service.bar, shop);
    if (plus !== asPlus) return PASS;
    return plus ? plusFault(service, reading, allowed, shop) : overFault(reading, allowed, undefined, shop);
  }
  const margin = `within the ${shop.figures.readingErrorPercent} % that a gauge may be off`;
  return asPlus ? PASS : overFault(reading, allowed, margin, shop);
}

/** Below the lowest pressure that could be read; where a figure could not, it may be lower still. */
function within(filled: FilledCylinder): Verdict {
  const doubt = figureInDoubt(filled);
  return doubt === undefined ? PASS : lacking(doubt, read(filled.cylinder, "servicePressure").at);
}

/** A temperature of 0 may be a blank cell; if it is none, what was in was more than the gauge shows. */
function ifColdAsWritten(
  { fill }: FilledCylinder,
  reading: SettledReading,
  { bar }: ServiceOnRecord,
): NotJudged | undefined {
  const { gasTemperatureK } = fill.fields;
  if (reading.how !== "as read, its temperature unknown" || gasTemperatureK.kind !== "value")
    return undefined;
  const isOnlySo = reading.bar <= bar && reading.settledFrom(gasTemperatureK.value) > bar;
  return isOnlySo
    ? notJudged("gas temperature of 0 may be a blank cell", { field: "gasTemperatureK" })
    : undefined;
}

/** Why a reading without a temperature may be no overfill: gas that is warm from filling reads high. */
function explainedByWarmth(reading: SettledReading, limitBar: number, shop: Shop): string | undefined {
  if (reading.how !== "as read, its temperature unknown") return undefined;
  const { referenceTemperatureC } = shop.rules;
  const warmC = referenceTemperatureC + shop.figures.warmFillC;
  const most = limitBar + (limitBar - ATMOSPHERE_BAR) * (shop.figures.readingErrorPercent / 100);
  if (reading.settledFrom(kelvin(warmC, "metric")) > most) return undefined;
  const temperature =
    reading.written.unit === "psi" ? `${Math.round(warmC * 1.8 + 32)} °F` : `${Math.round(warmC)} °C`;
  return `as a cylinder reads that is still warm from filling (${temperature})`;
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
function limitOf(filled: FilledCylinder, service: ServiceOnRecord): Allowed | NotJudged {
  const { rules, hydros, isOfUnknownKind, country } = filled.cylinder;
  if (rules instanceof Refusal) return unknownClass(filled, rules);
  const withPlus = isOfUnknownKind
    ? country.cylinders.find(mayHavePlus)
    : mayHavePlus(rules)
      ? rules
      : undefined;
  const withoutPlus = withPlus ? undefined : rules.name;
  const bare = { limitBar: service.bar, plus: false, latest: undefined, withoutPlus };
  if (withPlus === undefined || hydros === undefined) return bare;
  const day = dayOf(filled);
  if (typeof day !== "number") return day;
  const state = hydros.stateOn(day);
  if (state.kind === "in doubt") return lacking(state.doubt.reading, state.doubt.at);
  if (state.kind !== "in date" && state.kind !== "past due") return bare;
  const { last } = state;
  const limitBar = pressureLimitBar(service.bar, withPlus, last.stamp);
  return { limitBar, plus: limitBar > service.bar, latest: last, withoutPlus };
}

function mayHavePlus({ plusAllowed }: CylinderRules): boolean {
  return plusAllowed === true;
}

/** Whether a plus would cover it, where the country knows of any. */
function withinPlus({ bar }: SettledReading, serviceBar: number, { rules, figures }: Shop): boolean {
  const atMost = PLUS_FACTOR * (1 + figures.readingErrorPercent / 100);
  return rules.cylinders.some(mayHavePlus) && bar - ATMOSPHERE_BAR <= (serviceBar - ATMOSPHERE_BAR) * atMost;
}

function plusFault(
  service: ServiceOnRecord,
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
    message: `${said(reading)}, above the service pressure of ${pressureText(service.bar, reading.written.unit)}: ${why}.`,
    todo: "Bleed it to its service pressure, and have it looked at; fill it to no more until a test earns the plus.",
    at: reading.at,
  };
}

function overFault(
  reading: SettledReading,
  { limitBar, plus }: Allowed,
  /** Why it may be none after all, in words; undefined where it is certain. */
  maybe: string | undefined,
  shop: Shop,
): Fault {
  const limit = `${pressureText(limitBar, reading.written.unit)}${plus ? " with its plus" : ""}`;
  const certain = maybe === undefined;
  return {
    kind: "fault",
    severity: certain ? "stop" : "warn",
    ...whoSays(shop),
    message: certain
      ? `${said(reading)}, above the ${limit} it may hold.`
      : `${said(reading)}, above the ${limit} it may hold, ${maybe}.`,
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
