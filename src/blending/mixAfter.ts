import { contentAt, filledTo, pressureOf } from "../gas/content";
import type { EquationOfState } from "../gas/equationOfState";
import { checkedPressure, checkedTemperature } from "../gas/limits";
import type { Mixture } from "../gas/mixture";
import { refuse } from "../gas/refusal";
import { gaugeInWords } from "../gas/units";

/** Pressures bar absolute, each read at the temperature that goes with it. */
export interface TopOff {
  readonly startPressureBar: number;
  readonly startMix: Mixture;
  readonly endPressureBar: number;
  readonly topMix: Mixture;
  readonly startTemperatureK: number;
  readonly endTemperatureK: number;
  readonly equation: EquationOfState;
}

/** Less gas than this, relative to what is there, is the noise of a reading that did not move. */
const NOISE = 1e-9;

/**
 * The mix after topping off with one gas. 80 bar of EAN32 with air to 200 bar at 20 °C: 25.59 % oxygen.
 * Nothing added gives what is there.
 * @throws Refusal when there is more gas in the cylinder already than the end reading stands for.
 */
export function mixAfter(topOff: TopOff): Mixture {
  const { equation, startMix, topMix, endPressureBar, endTemperatureK } = topOff;
  checkedPressure(topOff.startPressureBar);
  checkedPressure(endPressureBar);
  checkedTemperature(topOff.startTemperatureK);
  checkedTemperature(endTemperatureK);
  const start = contentAt(equation, startMix, topOff.startPressureBar, topOff.startTemperatureK);
  const before = pressureOf(equation, start, endTemperatureK);
  if (before > endPressureBar * (1 + NOISE))
    refuse(
      `The cylinder holds more than that before anything is added: ${gaugeInWords(before)} at the end temperature. Check the two pressures.`,
    );
  return filledTo(equation, start, topMix, endPressureBar, endTemperatureK).mix;
}
