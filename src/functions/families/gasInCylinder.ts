import { decant } from "../../blending/decant";
import { inject } from "../../blending/inject";
import { settled } from "../../blending/settled";
import { realGas } from "../../gas/equationOfState";
import { AIR } from "../../gas/mixture";
import { nameMix } from "../../gas/nameMix";
import { DEFAULT_TEMPERATURE_K, gaugeReading, type Units } from "../../gas/units";
import { zFactor } from "../../gas/zFactor";
import { defineFunction } from "../define";
import { reachInWords } from "../wording/reachInWords";
import {
  cylinder,
  gasModel,
  mix,
  number,
  oxygenSupply,
  pressure,
  settledTemperature,
  temperature,
  units,
} from "../../typed/readers";
import { degrees, figure, gauge, mixInWords, percent } from "../../words/figures";

export const SETTLED = defineFunction({
  id: "SETTLED",
  says: "Gauge reading after a closed cylinder has cooled or warmed.",
  arguments: {
    pressure: pressure("What the gauge shows now."),
    mix: mix(),
    fromTemperature: temperature("Temperature of the gas now."),
    toTemperature: temperature("Temperature it settles at."),
    units: units(),
    gasModel: gasModel(),
  },
  quantity: "pressure",
  answer: ({ pressure, mix, fromTemperature, toTemperature, units, gasModel }) =>
    gaugeReading(settled(gasModel, mix, pressure, fromTemperature, toTemperature), units),
  why: ({ pressure, mix, fromTemperature, toTemperature, units, gasModel }) => [
    `${gauge(pressure, units)} of ${mixInWords(mix)} goes from ${degrees(fromTemperature, units)} to ${degrees(toTemperature, units)}; no gas leaves, and the cylinder does not give.`,
    reachInWords(gasModel, mix, pressure),
  ],
});

export const DECANT = defineFunction({
  id: "DECANT",
  says: "Gauge reading at which two connected cylinders stand equal.",
  arguments: {
    donorVolume: cylinder("The donor: litres of water volume, or a size such as 12L232."),
    donorPressure: pressure("What the donor's gauge shows."),
    receiverVolume: cylinder("The receiver: litres of water volume, or a size such as AL13."),
    receiverPressure: pressure("What the receiver's gauge shows."),
    mix: mix("The gas, the same in both."),
    units: units(),
    gasModel: gasModel(),
  },
  quantity: "pressure",
  answer: ({ donorVolume, donorPressure, receiverVolume, receiverPressure, mix, units, gasModel }) =>
    gaugeReading(
      decant(
        gasModel,
        mix,
        { waterVolumeL: donorVolume, pressureBar: donorPressure },
        { waterVolumeL: receiverVolume, pressureBar: receiverPressure },
        DEFAULT_TEMPERATURE_K[units],
      ),
      units,
    ),
  why: ({ donorVolume, donorPressure, receiverVolume, receiverPressure, mix, units, gasModel }) => [
    `${figure(donorVolume)} L at ${gauge(donorPressure, units)} and ${figure(receiverVolume)} L at ${gauge(receiverPressure, units)} of ${mixInWords(mix)} share their gas.`,
    `Both are at ${defaultDegrees(units)}, so let it flow slowly and cool.`,
    reachInWords(gasModel, mix, donorPressure),
  ],
});

export const INJECT = defineFunction({
  id: "INJECT",
  says: "Oxygen flow to add to a compressor's intake for continuous blending, in the unit of the flow.",
  arguments: {
    mix: mix("The nitrox to make, up to 40 %."),
    intakeFlow: number("All that the compressor draws in, oxygen included, in any unit.", "a flow above 0"),
    oxygenSupply: oxygenSupply(),
  },
  answer: ({ mix, intakeFlow, oxygenSupply }) => inject(mix, intakeFlow, oxygenSupply),
  why: ({ mix, intakeFlow, oxygenSupply }) => [
    `${figure(intakeFlow)} x (${percent(mix.oxygen)} - ${percent(AIR.oxygen)}) / (${percent(oxygenSupply.oxygen)} - ${percent(AIR.oxygen)}).`,
    "The intake flow counts the oxygen too. Analyse at the compressor's outlet all the time, and stay at or below 40 %.",
  ],
});

export const ZFACTOR = defineFunction({
  id: "ZFACTOR",
  says: "Compressibility factor of a gas: 1 for an ideal one.",
  arguments: {
    pressure: pressure("Gauge reading."),
    mix: mix(),
    units: units(),
    temperature: settledTemperature().saying("Temperature of the gas."),
  },
  quantity: "factor",
  answer: ({ pressure, mix, temperature }) => zFactor(realGas, mix, pressure, temperature),
  why: ({ pressure, mix, units, temperature }) => [
    `${nameMix(mix)} at ${gauge(pressure, units)} (one atmosphere more in absolute terms) and ${degrees(temperature, units)}.`,
    reachInWords(realGas, mix, pressure),
  ],
});

function defaultDegrees(units: Units): string {
  return degrees(DEFAULT_TEMPERATURE_K[units], units);
}
