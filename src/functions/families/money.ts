import { gasUsed } from "../../blending/gasUsed";
import { planFill } from "../../blending/planFill";
import { fillCost, type GasPrices } from "../../costs/fillCost";
import { labelText } from "../../depth/labelText";
import { freeGas } from "../../gas/freeGas";
import { nameMix } from "../../gas/nameMix";
import { UNIT_NAMES, volume } from "../../gas/units";
import { defineFunction } from "../define";
import { FILL_ARGUMENTS, fillOrderOf } from "./fills";
import { planInWords } from "../wording/planInWords";
import { priceTable } from "../arguments/priceTable";
import { reachInWords } from "../wording/reachInWords";
import {
  cylinder,
  date,
  gasModel,
  mix,
  oneOf,
  oxygenSupply,
  partialPressure,
  pressure,
  settledTemperature,
  text,
  topMix,
  units,
} from "../../typed/readers";
import { degrees, figure, gasVolume, gauge } from "../../words/figures";

export const FREEGAS = defineFunction({
  id: "FREEGAS",
  says: "Gas that comes out of a cylinder down to 0 on the gauge, at 1 atm and the cylinder's temperature.",
  arguments: {
    cylinder: cylinder(),
    pressure: pressure("What the gauge shows."),
    mix: mix(),
    units: units(),
    temperature: settledTemperature().saying("Temperature of the gas."),
    gasModel: gasModel(),
  },
  quantity: "volume",
  answer: ({ cylinder, pressure, mix, units, temperature, gasModel }) =>
    volume(freeGas(gasModel, mix, cylinder, pressure, temperature), units),
  why: ({ cylinder, pressure, mix, units, temperature, gasModel }) => [
    `${figure(cylinder)} L of water volume at ${gauge(pressure, units)} of ${nameMix(mix)} and ${degrees(temperature, units)}; the last atmosphere stays in.`,
    reachInWords(gasModel, mix, pressure),
  ],
});

export const GASUSED = defineFunction({
  id: "GASUSED",
  says: "Volume of one gas that goes into a cylinder in a fill by partial pressure.",
  arguments: {
    gas: oneOf('"oxygen", "helium" or "top".', ["oxygen", "helium", "top"]),
    cylinder: cylinder(),
    ...FILL_ARGUMENTS,
    units: units(),
    topMix: topMix(),
    temperature: settledTemperature(),
    oxygenSupply: oxygenSupply(),
    gasModel: gasModel(),
  },
  quantity: "volume",
  answer: ({ gas, cylinder, ...fill }) => {
    const order = fillOrderOf(fill);
    return volume(gasUsed(planFill(order), order, gas, cylinder), fill.units);
  },
  why: ({ cylinder, ...fill }) => [
    `Into ${figure(cylinder)} L of water volume, counted at 1 atm and ${degrees(fill.temperature, fill.units)}.`,
    ...planInWords(fillOrderOf(fill), fill.startPressure, fill.units),
  ],
});

export const FILLCOST = defineFunction({
  id: "FILLCOST",
  says: "Cost of one fill: the gas that goes in, and what every fill costs. Gas let out is neither charged nor credited.",
  arguments: {
    cylinder: cylinder(),
    ...FILL_ARGUMENTS,
    prices: priceTable(),
    units: units(),
    topMix: topMix(),
    temperature: settledTemperature(),
    oxygenSupply: oxygenSupply(),
  },
  answer: ({ cylinder, prices, ...fill }) => costOf(cylinder, prices, fill).total,
  why: ({ cylinder, prices, ...fill }) => {
    const { lines, perFill } = costOf(cylinder, prices, fill);
    const parts = [
      ...lines.map(
        ({ gas, volumeL, cost }) =>
          `${gas} ${gasVolume(volumeL, fill.units)} x ${figure(cost / volume(volumeL, fill.units))} = ${figure(cost)}`,
      ),
      ...(perFill > 0 ? [`per fill ${figure(perFill)}`] : []),
    ];
    return [
      `${parts.length > 0 ? parts.join("; ") : "Nothing goes in"}.`,
      `Volumes in ${UNIT_NAMES[fill.units].volume} at 1 atm and ${degrees(fill.temperature, fill.units)}.`,
      ...planInWords(fillOrderOf(fill), fill.startPressure, fill.units),
    ];
  },
});

export const LABELTEXT = defineFunction({
  id: "LABELTEXT",
  says: "The text for the cylinder's label, from the analysis: a plan is not a label.",
  arguments: {
    pressure: pressure("What the gauge shows, settled."),
    analysedMix: mix("The gas as analysed: 31.9, EAN32, TX 18/45."),
    analysedBy: text("Who analysed it: a name or initials."),
    fillDate: date("Day of the fill."),
    serial: text("The cylinder's serial."),
    units: units(),
    maxPpO2: partialPressure("Highest oxygen partial pressure.").or(1.4),
  },
  answer: ({ pressure, ...label }) => labelText({ ...label, pressureBar: pressure }),
  why: ({ maxPpO2 }) => [
    `The MOD is for a ppO2 of ${maxPpO2} in salt water, rounded down; a depth above which a hypoxic mix must not be breathed is for a ppO2 of 0.18, rounded up.`,
    "Every diver analyses the gas again before use.",
  ],
});

function costOf(cylinder: number, prices: GasPrices, fill: Parameters<typeof fillOrderOf>[0]) {
  const order = fillOrderOf(fill);
  return fillCost(planFill(order), order, cylinder, prices);
}
