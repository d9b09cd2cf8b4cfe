import { ATMOSPHERE_BAR } from "../../gas/units";
import type { FilledCylinder } from "../judge/rule";
import type { HouseFigures } from "../shop/shop";

/** Kelvin near which cylinders are read: what an error of so many degrees is worth, as a share of the pressure. */
const ROOM_K = 293.15;

/**
 * Whether the cylinder came back with more than the last fill of the log left in it, by more than two readings can be
 * wrong: then somebody else filled it in between, and what is in it is not what was put in here. Undefined where one of
 * the two pressures is not known.
 */
export function isFilledElsewhere(
  { fill, past }: FilledCylinder,
  figures: HouseFigures,
): boolean | undefined {
  const { startPressure } = fill.fields;
  const left = past.last?.pressureBar;
  if (startPressure.kind !== "value" || left === undefined) return undefined;
  const reading = figures.gaugeErrorPercent / 100;
  const warmth = figures.temperatureErrorC / ROOM_K;
  const error = 2 * Math.sqrt(2 * reading ** 2 + 2 * warmth ** 2);
  return startPressure.value.bar - ATMOSPHERE_BAR > (left - ATMOSPHERE_BAR) * (1 + error) + LEAST_BAR;
}

/** What a gauge near zero shows of nothing. */
const LEAST_BAR = 3;
