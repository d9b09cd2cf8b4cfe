import type { Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { gaugeReading, temperature, UNIT_NAMES, volume, type Units } from "../gas/units";
import type { Quantity } from "./define";

/* How figures read in sentences. */

/** A figure as people write it: two decimals, more only below 1, nothing that is just noise. */
export function figure(value: number): string {
  const size = Math.abs(value);
  const digits = size >= 1 || size === 0 ? value.toFixed(2) : value.toPrecision(3);
  const short = String(Number(digits));
  return short === "-0" ? "0" : short;
}

export function signed(change: number): string {
  const written = figure(change);
  return change > 0 && written !== "0" ? `+${written}` : written;
}

/** A gauge reading of this absolute pressure: "404.96 psi". */
export function gauge(bar: number, units: Units): string {
  return `${figure(gaugeReading(bar, units))} ${UNIT_NAMES[units].pressure}`;
}

/** "70 °F". */
export function degrees(kelvin: number, units: Units): string {
  return `${figure(temperature(kelvin, units))} ${UNIT_NAMES[units].temperature}`;
}

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

/** "EAN32 (32 % oxygen)", "TX 18/45 (18 % oxygen, 45 % helium)". */
export function mixInWords(mix: Mixture): string {
  const helium = mix.helium > 0 ? `, ${percent(mix.helium)} helium` : "";
  return `${nameMix(mix)} (${percent(mix.oxygen)} oxygen${helium})`;
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
    case "date":
    case "plain":
      return "";
  }
}
