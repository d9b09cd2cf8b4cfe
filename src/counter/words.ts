import type { Receipt } from "./receive/receipt";
import { figure } from "../words/figures";
import type { Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { ATMOSPHERE_BAR, gaugeReading, temperature, UNIT_NAMES, volume, type Units } from "../gas/units";
import type { FillStep } from "../blending/planFill";

/* How figures read on screen and paper: as precise as a gauge can be read, never as a promise of more. */

/** A gauge reading without its unit: whole psi, tenths of a bar. */
export function reading(bar: number, units: Units): string {
  const shown = gaugeReading(bar, units);
  return units === "us" ? figure(shown, 0) : shown.toFixed(1);
}

export function pressureText(bar: number, units: Units): string {
  return `${reading(bar, units)} ${UNIT_NAMES[units].pressure}`;
}

/** A difference of pressures. */
export function pressureErrorText(bar: number, units: Units): string {
  const shown = gaugeReading(ATMOSPHERE_BAR + bar, units);
  return `${figure(shown, units === "us" ? 0 : 1)} ${UNIT_NAMES[units].pressure}`;
}

export function degreesText(kelvin: number, units: Units): string {
  return `${figure(temperature(kelvin, units), 0)} ${UNIT_NAMES[units].temperature}`;
}

export function volumeText(volumeL: number, units: Units): string {
  return `${figure(volume(volumeL, units), units === "us" ? 1 : 0)} ${UNIT_NAMES[units].volume}`;
}

export function percentText(fraction: number): string {
  return `${(fraction * 100).toFixed(1)} %`;
}

/** `O2 31.9 %`, `O2 18.1 %, He 44.6 %`. */
export function partsText({ oxygen, helium }: Mixture): string {
  return helium > 0.0005
    ? `O2 ${percentText(oxygen)}, He ${percentText(helium)}`
    : `O2 ${percentText(oxygen)}`;
}

/** What is done in a step: `Oxygen`, `Top with air`, `Drain`. */
export function stepText({ step, gas }: FillStep): string {
  switch (step) {
    case "drain":
      return "Drain";
    case "helium":
      return "Helium";
    case "oxygen":
      return gas.oxygen > 0.9995 ? "Oxygen" : `Oxygen (${percentText(gas.oxygen)})`;
    case "top":
      return `Top with ${nameMix(gas)}`;
  }
}

export function depthText(depth: number, units: Units): string {
  return `${figure(depth, 0)} ${UNIT_NAMES[units].depth}`;
}

export function moneyText(amount: number): string {
  return amount.toFixed(2);
}

/** The cautions that stand wherever a figure could be acted on. */
export const CAUTIONS = [
  "A plan, not a measurement: blender and diver analyse every cylinder.",
  "Oxygen only with oxygen-clean equipment and a trained blender.",
  "Local codes, the cylinder's markings and licensed practice come first.",
] as const;

/** What a look at the records comes to, with what is to be done about the gas inside. */
export function verdictText({ verdict, first }: Pick<Receipt, "verdict" | "first">): string {
  const said = verdict.charAt(0).toUpperCase() + verdict.slice(1);
  if (first === undefined || verdict === `${first} first`) return said;
  return verdict === "not known" ? `${said}; ${first} first` : said;
}
