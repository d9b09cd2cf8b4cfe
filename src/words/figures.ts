import type { Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { ATMOSPHERE_BAR, gaugeReading, temperature, UNIT_NAMES, volume, type Units } from "../gas/units";

/* How figures read in sentences. */

/** What an answer is a figure of; it gives the unit to name. */
export type Quantity =
  "pressure" | "depth" | "volume" | "per cent" | "partial pressure" | "density" | "factor" | "date" | "plain";

/** A figure as people write it: two decimals, fewer where they are 0. */
export function figure(value: number, decimals = 2): string {
  return String(Number(value.toFixed(decimals)) + 0);
}

/** A figure with its sign, also where that is a plus. */
export function signed(figure: string): string {
  return /^[-0]$|^-/.test(figure) ? figure : `+${figure}`;
}

/** A gauge reading of this absolute pressure: "404.96 psi". */
export function gauge(bar: number, units: Units): string {
  return `${figure(gaugeReading(bar, units))} ${UNIT_NAMES[units].pressure}`;
}

/** A difference of pressures, without its unit: "+404.96", "-12.5". */
export function gaugeChange(bar: number, units: Units): string {
  return signed(figure(gaugeReading(ATMOSPHERE_BAR + bar, units)));
}

/** "70 °F"; asked back where it is likely that the other unit was meant: "70 °C (or °F?)", "21 °F (or °C?)". */
export function degrees(kelvin: number, units: Units): string {
  const other = units === "metric" ? "°F" : "°C";
  const asked = (units === "metric" ? kelvin > HOT_K : kelvin < COLD_K) ? ` (or ${other}?)` : "";
  return `${figure(temperature(kelvin, units))} ${UNIT_NAMES[units].temperature}${asked}`;
}

/** 50 °C: no cylinder is filled as hot. Common practice, no source. */
const HOT_K = 323.15;
/** 40 °F: below it a figure is more often °C. Common practice, no source. */
const COLD_K = 277.59;

/** "77.45 cu ft". */
export function gasVolume(litres: number, units: Units): string {
  return `${figure(volume(litres, units))} ${UNIT_NAMES[units].volume}`;
}

/** "111.38 ft". */
export function depthInWords(depth: number, units: Units): string {
  return `${figure(depth)} ${UNIT_NAMES[units].depth}`;
}

export function percent(fraction: number): string {
  return `${figure(fraction * 100)} %`;
}

/**
 * "EAN32 (32 % oxygen)", "TX 18/45 (18 % oxygen, 45 % helium)"; of a trimix that looks the wrong way round, such as
 * 50/10, also how it was read.
 */
export function mixInWords(mix: Mixture): string {
  const order = mix.helium > 0 && mix.helium < mix.oxygen && mix.oxygen > 0.4 ? "; oxygen stands first" : "";
  return `${nameMix(mix)} (${partsInWords(mix)}${order})`;
}

/** "18 % oxygen, 45 % helium"; helium only where there is some. */
export function partsInWords(mix: Mixture): string {
  const helium = mix.helium > 0.00005 ? `, ${percent(mix.helium)} helium` : "";
  return `${percent(mix.oxygen)} oxygen${helium}`;
}

/** The unit that a figure of this quantity carries; nothing for a plain number. */
export function unitOf(quantity: Quantity, units: Units): string {
  switch (quantity) {
    case "pressure":
    case "depth":
    case "volume":
      return ` ${UNIT_NAMES[units][quantity]}`;
    case "per cent":
      return " %";
    case "partial pressure":
      return units === "us" ? " ata" : " bar";
    case "density":
      return " g/L";
    case "factor":
    case "date":
    case "plain":
      return "";
  }
}

/** The words with a capital letter, as the beginning of a sentence. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
