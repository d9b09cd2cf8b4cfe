import { ATMOSPHERE_BAR } from "../gas/units";
import { AIR, type Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { refuse } from "../gas/refusal";
import type { StartPressure } from "./readers";
import { gauge } from "../words/figures";
import type { Units } from "../gas/units";

/**
 * The gas a fill starts on. Only beside "empty" may it be blank: a blank cell reaches a function as 0, and residual
 * nitrox taken for air makes a hot mix.
 */
export function startMixOf(startPressure: StartPressure, startMix: Mixture | undefined): Mixture {
  if (!startPressure.empty) {
    return (
      startMix ??
      refuse(
        'startMix: blank. Say which gas is in the cylinder, also at 0; for a vented one write "empty" as startPressure. Taken for air, a rest of nitrox makes a hot mix.',
      )
    );
  }
  if (startMix === undefined) return AIR;
  if (nameMix(startMix) === "air") return startMix;
  return refuse(
    `startMix: ${nameMix(startMix)} beside "empty", which means vented and full of air. Write 0 as startPressure if that gas is still in it, or leave startMix blank.`,
  );
}

/** "empty (one atmosphere of air)", "0 psi (vented, one atmosphere of EAN32 left)", "500 psi of EAN32". */
export function startInWords(startPressure: StartPressure, startMix: Mixture, units: Units): string {
  if (startPressure.empty) return "empty (one atmosphere of air)";
  const reading = gauge(startPressure.bar, units);
  return startPressure.bar <= ATMOSPHERE_BAR
    ? `${reading} (vented, with one atmosphere of ${nameMix(startMix)} left)`
    : `${reading} of ${nameMix(startMix)}`;
}
