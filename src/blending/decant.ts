import type { EquationOfState } from "../gas/equationOfState";
import { checkedVolume } from "../gas/freeGas";
import { checkedPressure, checkedTemperature } from "../gas/limits";
import type { Mixture } from "../gas/mixture";
import { refuse } from "../gas/refusal";

/** A cylinder at one end of the whip: water volume in litres, pressure in bar absolute. */
export interface DecantCylinder {
  readonly waterVolumeL: number;
  readonly pressureBar: number;
}

/**
 * Pressure (bar absolute) at which donor and receiver stand equal, both holding this mix at this temperature.
 * 15 L at 230 bar into 3 L at 100 bar, air at 20 °C: about 206.1 bar.
 * @throws Refusal when the donor stands below the receiver: gas would run backwards.
 */
export function decant(
  equation: EquationOfState,
  mix: Mixture,
  donor: DecantCylinder,
  receiver: DecantCylinder,
  temperatureK: number,
): number {
  checkedTemperature(temperatureK);
  for (const cylinder of [donor, receiver]) {
    checkedVolume(cylinder.waterVolumeL);
    checkedPressure(cylinder.pressureBar);
  }
  if (donor.pressureBar < receiver.pressureBar)
    refuse("The donor stands below the receiver: gas would run backwards. Use a fuller donor.");
  const molIn = ({ waterVolumeL, pressureBar }: DecantCylinder) =>
    equation.density(mix, pressureBar, temperatureK) * waterVolumeL;
  const molPerLitre = (molIn(donor) + molIn(receiver)) / (donor.waterVolumeL + receiver.waterVolumeL);
  return equation.pressure(mix, molPerLitre, temperatureK);
}
