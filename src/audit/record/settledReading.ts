import { settled } from "../../blending/settled";
import type { CountryRules } from "../../cylinders/countryRules";
import { realGas } from "../../gas/equationOfState";
import { AIR, type Mixture } from "../../gas/mixture";
import { Refusal } from "../../gas/refusal";
import { kelvin } from "../../gas/units";
import type { Fill, PressureReading } from "../../log/log";
import { lacking } from "../judge/lacks";
import { filledMix } from "./oxygen";
import type { NotJudged, Place } from "../judge/rule";

/** A pressure at the temperature for which service pressures are stamped, and how it came about. */
export interface SettledReading {
  readonly bar: number;
  /** As the log writes it. */
  readonly written: PressureReading["written"];
  readonly at: Place;
  readonly how: "read settled" | "settled from its temperature" | "as read, its temperature unknown";
  /** What it would settle at if it was read at this temperature. */
  settledFrom(temperatureK: number): number;
}

/**
 * The pressure of a fill at the country's reference temperature: the settled reading where there is one; else the end
 * pressure, settled from its logged temperature (real gas, constant volume); else the end pressure as read.
 */
export function settledReading({ fields }: Fill, rules: CountryRules): SettledReading | NotJudged {
  const { settledPressure, endPressure, gasTemperatureK } = fields;
  const asRead = (
    { bar, written }: PressureReading,
    field: "settledPressure" | "endPressure",
    how: SettledReading["how"],
  ): SettledReading => ({
    ...{ bar, written, at: { field }, how },
    settledFrom: (temperatureK) => settledBar(bar, temperatureK, mixIn(fields), rules) ?? bar,
  });
  if (settledPressure.kind === "value")
    return asRead(settledPressure.value, "settledPressure", "read settled");
  if (settledPressure.kind !== "blank") return lacking(settledPressure, { field: "settledPressure" });
  if (endPressure.kind !== "value") return lacking(endPressure, { field: "endPressure" });
  const { value: end } = endPressure;
  if (end.hotBar !== undefined) return asRead(end, "endPressure", "read settled");
  if (gasTemperatureK.kind !== "value" || mayBeBlank(gasTemperatureK.value))
    return asRead(end, "endPressure", "as read, its temperature unknown");
  const bar = settledBar(end.bar, gasTemperatureK.value, mixIn(fields), rules);
  return bar === undefined
    ? asRead(end, "endPressure", "as read, its temperature unknown")
    : { ...asRead(end, "endPressure", "settled from its temperature"), bar };
}

/** Exactly 0 °C or 0 °F is what a program writes for a blank cell: such a temperature settles nothing. */
export function mayBeBlank(temperatureK: number): boolean {
  return ZEROES_K.some((zero) => Math.abs(temperatureK - zero) < 1e-6);
}

const ZEROES_K = [kelvin(0, "metric"), kelvin(0, "us")];

function mixIn(fields: Fill["fields"]): Mixture {
  const filled = filledMix({ fields });
  return "mix" in filled ? filled.mix : AIR;
}

/** Undefined where the equation of state does not reach so far. */
function settledBar(
  bar: number,
  temperatureK: number,
  mix: Mixture,
  { referenceTemperatureC }: CountryRules,
): number | undefined {
  try {
    return settled(realGas, mix, bar, temperatureK, kelvin(referenceTemperatureC, "metric"));
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}
