import { decant } from "../../blending/decant";
import { fillsLeft, type EqualizingOrder } from "../../blending/fillsLeft";
import { inject } from "../../blending/inject";
import { settled } from "../../blending/settled";
import { realGas } from "../../gas/equationOfState";
import { waterVolume } from "../../gas/freeGas";
import { AIR, type Mixture } from "../../gas/mixture";
import { nameMix } from "../../gas/nameMix";
import { DEFAULT_TEMPERATURE_K, gaugeReading, type Units } from "../../gas/units";
import { zFactor } from "../../gas/zFactor";
import { defineFunction } from "../define";
import { reachInWords } from "../wording/reachInWords";
import {
  bank,
  cylinder,
  endPressure,
  freeGasVolume,
  gasModel,
  mix,
  number,
  oxygenSupply,
  pressure,
  settledTemperature,
  temperature,
  units,
} from "../../typed/readers";
import { degrees, figure, gasVolume, gauge, mixInWords, percent } from "../../words/figures";

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
  says: "Gauge reading at which two connected cylinders stand equal (decanting, transfilling, equalizing).",
  arguments: {
    donorVolume: bank("The donor, a cylinder or a bank: litres of water volume, or a size such as 12L232."),
    donorPressure: pressure("What the donor's gauge shows."),
    receiverVolume: cylinder("The receiver: a size such as AL13, or litres of water volume."),
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

export const WATERVOLUME = defineFunction({
  id: "WATERVOLUME",
  says: "Litres of water volume of a cylinder, from the free gas its size is named for.",
  arguments: {
    capacity: freeGasVolume("The free gas it is named for, in cu ft or L."),
    servicePressure: endPressure().saying("The pressure at which it holds that."),
    units: units(),
  },
  answer: ({ capacity, servicePressure, units }) =>
    waterVolume(realGas, capacity, servicePressure, DEFAULT_TEMPERATURE_K[units]),
  why: ({ capacity, servicePressure, units }) => [
    `${gasVolume(capacity, units)} of air at 1 atm come out of it from ${gauge(servicePressure, units)} down to 0 at ${defaultDegrees(units)}.`,
    "Sizes are named in round figures, and makers count differently: the water volume stamped on the cylinder comes first.",
  ],
});

export const FILLSLEFT = defineFunction({
  id: "FILLSLEFT",
  says: "How many more cylinders a bank fills by equalizing (transfilling) alone.",
  arguments: {
    bankVolume: bank("The bank: litres of water volume of all its cylinders together, or a size."),
    bankPressure: pressure("What the bank's gauge shows."),
    cylinder: cylinder(
      "The cylinders to fill: a size such as AL80, 80 cu ft or 12L232, or litres of water volume.",
    ),
    startPressure: pressure("What is in each before, by the gauge."),
    endPressure: endPressure(),
    mix: mix("The gas, the same in all."),
    units: units(),
  },
  answer: (values) => fillsLeft(realGas, equalizingOf(values)),
  why: (values) => {
    const { bankVolume, bankPressure, cylinder, startPressure, endPressure, mix, units } = values;
    return [
      `${figure(bankVolume)} L at ${gauge(bankPressure, units)} fill cylinders of ${figure(cylinder)} L from ${gauge(startPressure, units)} to ${gauge(endPressure, units)} with ${mixInWords(mix)}, one after the other.`,
      `Counted until the bank falls below ${gauge(endPressure, units)}. All at ${defaultDegrees(units)}, so let it flow slowly and cool.`,
      reachInWords(realGas, mix, bankPressure),
    ];
  },
});

function equalizingOf(values: {
  readonly bankVolume: number;
  readonly bankPressure: number;
  readonly cylinder: number;
  readonly startPressure: number;
  readonly endPressure: number;
  readonly mix: Mixture;
  readonly units: Units;
}): EqualizingOrder {
  return {
    bankVolumeL: values.bankVolume,
    bankBar: values.bankPressure,
    cylinderVolumeL: values.cylinder,
    startBar: values.startPressure,
    endBar: values.endPressure,
    mix: values.mix,
    temperatureK: DEFAULT_TEMPERATURE_K[values.units],
  };
}

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
