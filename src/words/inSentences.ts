import type { Temporal } from "temporal-polyfill";
import { dateOf } from "../cylinders/calendar";
import type { OxygenService } from "../cylinders/oxygenService";
import { gaugeReading } from "../gas/units";

const MONTHS = [
  "January", "February", "March", "April", "May", "June",
  "July", "August", "September", "October", "November", "December",
]; // prettier-ignore

/** `31 October 2024`: never a row of numbers that can be read two ways. */
export function dateText(date: Temporal.PlainDate | number): string {
  const { day, month, year } = typeof date === "number" ? dateOf(date) : date;
  return `${day} ${MONTHS[month - 1]} ${year}`;
}

/** `31.8 %`, from a mole fraction. */
export function percentText(fraction: number): string {
  return `${Number((fraction * 100).toFixed(1))} %`;
}

/** `air only`, `oxygen clean`, `40 %`. */
export function ratingText(service: OxygenService): string {
  if (service.oxygenClean) return "oxygen clean";
  return service.maxOxygen === undefined ? "air only" : percentText(service.maxOxygen);
}

/** `3,000 psi`, `207.5 bar`: a gauge reading of so many bar absolute. */
export function pressureText(pressureBar: number, unit: "psi" | "bar"): string {
  const reading = gaugeReading(pressureBar, unit === "psi" ? "us" : "metric");
  const number = unit === "psi" ? Math.round(reading) : Number(reading.toFixed(1));
  return `${String(number).replace(/\B(?=(\d{3})+$)/, ",")} ${unit}`;
}
