import { ATMOSPHERE_BAR } from "../gas/units";

/** A small change to a value, to see how an answer moves with it. */
export interface Nudge<T> {
  readonly inWords: string;
  of(value: T): T;
}

/* How far people's readings are off: a gauge by a per cent, gas by five degrees. Common practice, no source. */

export const FIVE_DEGREES = "5 °C (9 °F)";

export function gaugeOnePerCentHigher(pressureBar: number): number {
  return pressureBar + (pressureBar - ATMOSPHERE_BAR) * 0.01;
}

export function warmer(temperatureK: number): number {
  return temperatureK + 5;
}

export const HIGHER_GAUGE: Nudge<number> = { inWords: "read 1 % higher", of: gaugeOnePerCentHigher };
export const WARMER: Nudge<number> = { inWords: `${FIVE_DEGREES} higher`, of: warmer };
