import { contentAt } from "../gas/content";
import type { EquationOfState } from "../gas/equationOfState";
import { checkedPressure, checkedTemperature } from "../gas/limits";
import type { Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { refuse } from "../gas/refusal";

/** Pressures bar absolute, both at one temperature. */
export interface TopWithOrder {
  readonly startPressureBar: number;
  readonly startMix: Mixture;
  readonly endPressureBar: number;
  readonly endMix: Mixture;
  readonly temperatureK: number;
  readonly equation: EquationOfState;
}

const NOISE = 1e-9;

/**
 * The single gas to top with so that the ordered mix results. 50 bar of EAN32 to 200 bar of EAN36: 37.41 % oxygen.
 * @throws Refusal when there is nothing to add, or no gas could make up for what is there.
 */
export function topWith(order: TopWithOrder): Mixture {
  const { equation, temperatureK, startMix, endMix } = order;
  checkedPressure(order.startPressureBar);
  checkedPressure(order.endPressureBar);
  checkedTemperature(temperatureK);
  const start = contentAt(equation, startMix, order.startPressureBar, temperatureK);
  const end = contentAt(equation, endMix, order.endPressureBar, temperatureK);
  const molPerLitre = end.molPerLitre - start.molPerLitre;
  if (molPerLitre < -NOISE * end.molPerLitre)
    refuse(
      "There is more gas in the cylinder than ordered: nothing can be topped. Check the two pressures, or drain.",
    );
  if (molPerLitre <= NOISE * end.molPerLitre)
    refuse("The end pressure is the start pressure: there is no room for a gas to top with.");

  const partOf = (part: keyof Mixture) =>
    (endMix[part] * end.molPerLitre - startMix[part] * start.molPerLitre) / molPerLitre;
  const oxygen = partOf("oxygen");
  const helium = partOf("helium");
  const cause = whyNoGas(oxygen, helium);
  if (cause)
    refuse(
      `No single gas makes ${nameMix(endMix)} of what is there: ${cause}. Drain first, or plan it in steps.`,
    );
  return { oxygen: clamp(oxygen), helium: clamp(helium) };
}

function whyNoGas(oxygen: number, helium: number): string | undefined {
  if (oxygen < -NOISE) return "the cylinder holds more oxygen than ordered";
  if (helium < -NOISE) return "the cylinder holds more helium than ordered";
  if (oxygen + helium <= 1 + NOISE) return undefined;
  return "the cylinder holds more nitrogen than ordered";
}

function clamp(fraction: number): number {
  return Math.min(1, Math.max(0, fraction));
}
