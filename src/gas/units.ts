import { refuse } from "./refusal";

/** How a shop writes pressures, depths, temperatures and volumes: psi, ft, °F, cu ft, or bar, m, °C, L. */
export type Units = "us" | "metric";

/** One standard atmosphere: what a vented cylinder still holds, and what a gauge does not show. */
export const ATMOSPHERE_BAR = 1.01325;
/** The pound-force per square inch, exact to the last digit of its definition. */
export const BAR_PER_PSI = 0.06894757293168;
/** The international cubic foot, exact. */
export const LITRES_PER_CUBIC_FOOT = 28.316846592;

const BAR_PER_UNIT: Readonly<Record<Units, number>> = { us: BAR_PER_PSI, metric: 1 };
const LITRES_PER_UNIT: Readonly<Record<Units, number>> = { us: LITRES_PER_CUBIC_FOOT, metric: 1 };

/** What each quantity is called, for headings and sentences. */
export const UNIT_NAMES = {
  us: { pressure: "psi", depth: "ft", temperature: "°F", volume: "cu ft" },
  metric: { pressure: "bar", depth: "m", temperature: "°C", volume: "L" },
} as const;

/** The temperature at which readings are meant when none is given: 70 °F or 20 °C. */
export const DEFAULT_TEMPERATURE_K: Readonly<Record<Units, number>> = {
  us: kelvin(70, "us"),
  metric: kelvin(20, "metric"),
};

const UNITS_BY_WORD = new Map<string, Units>([
  ["psi", "us"],
  ["ft", "us"],
  ["us", "us"],
  ["bar", "metric"],
  ["m", "metric"],
  ["metric", "metric"],
]);

/**
 * Reads "psi", "ft" or "us", "bar", "m" or "metric", in any case.
 * @throws Refusal for anything else: units are never assumed.
 */
export function readUnits(text: string): Units {
  return (
    UNITS_BY_WORD.get(text.trim().toLowerCase()) ??
    refuse(
      text.trim() === ""
        ? 'Units are missing: write "psi", "ft" or "us", or "bar", "m" or "metric".'
        : `Units "${text.trim()}" are not known: write "psi", "ft" or "us", or "bar", "m" or "metric".`,
    )
  );
}

/** The absolute pressure (bar) behind a gauge reading. */
export function absoluteBar(gauge: number, units: Units): number {
  return gauge * BAR_PER_UNIT[units] + ATMOSPHERE_BAR;
}

/** What the gauge shows at an absolute pressure (bar). */
export function gaugeReading(pressureBar: number, units: Units): number {
  return (pressureBar - ATMOSPHERE_BAR) / BAR_PER_UNIT[units];
}

/** A temperature in °F or °C as kelvin. */
export function kelvin(temperature: number, units: Units): number {
  return units === "us" ? ((temperature - 32) * 5) / 9 + 273.15 : temperature + 273.15;
}

/** Kelvin as °F or °C. */
export function temperature(temperatureK: number, units: Units): number {
  return units === "us" ? ((temperatureK - 273.15) * 9) / 5 + 32 : temperatureK - 273.15;
}

/** A volume in cubic feet or litres as litres. */
export function litres(volume: number, units: Units): number {
  return volume * LITRES_PER_UNIT[units];
}

/** Litres as cubic feet or litres. */
export function volume(volumeL: number, units: Units): number {
  return volumeL / LITRES_PER_UNIT[units];
}

/** An absolute pressure as both kinds of gauge would show it: "150 bar (2176 psi)". */
export function gaugeInWords(pressureBar: number): string {
  const bar = Number(gaugeReading(pressureBar, "metric").toFixed(1));
  return `${bar} bar (${Math.round(gaugeReading(pressureBar, "us"))} psi)`;
}
