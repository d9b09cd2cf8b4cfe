import { planFill, type FillOrder, type GasOrder } from "../../blending/planFill";
import { riseOf, stopOf } from "../../blending/planReadings";
import { realGas, type EquationOfState } from "../../gas/equationOfState";
import type { Mixture } from "../../gas/mixture";
import { nameMix } from "../../gas/nameMix";
import { ATMOSPHERE_BAR, gaugeReading } from "../../gas/units";
import { defineFunction, type ValuesOf } from "../define";
import { planInWords } from "../wording/planInWords";
import {
  endPressure,
  gasModel,
  mix,
  oneOf,
  oxygenSupply,
  settledTemperature,
  startMix,
  startPressure,
  topMix,
  units,
} from "../../typed/readers";
import { startMixOf } from "../../typed/startMix";

/** The arguments that every fill by partial pressure takes, in this order. */
export const FILL_ARGUMENTS = {
  startPressure: startPressure(),
  startMix: startMix(),
  endPressure: endPressure(),
  endMix: mix("The gas ordered: EAN32, TX 18/45."),
};

const PLAN_ARGUMENTS = {
  ...FILL_ARGUMENTS,
  units: units(),
  topMix: topMix(),
  temperature: settledTemperature(),
  oxygenSupply: oxygenSupply(),
  order: oneOf('"helium first" or "oxygen first".', ["helium first", "oxygen first"]).or("helium first"),
  gasModel: gasModel(),
};

export const FILLSTEPS = defineFunction({
  id: "FILLSTEPS",
  says: "Plans a fill by partial pressure: a table of steps with the gauge reading at which each stops.",
  arguments: PLAN_ARGUMENTS,
  table: true,
  answer: (values) => stepsTable(values),
  why: (values) => planInWords(fillOrderOf(values), values.startPressure, values.units),
});

export const ADDGAS = defineFunction({
  id: "ADDGAS",
  says: "Pressure of one gas to add in a fill by partial pressure: one cell, for tables of fills.",
  arguments: {
    gas: oneOf('"oxygen", "helium" or "top".', ["oxygen", "helium", "top"]),
    ...PLAN_ARGUMENTS,
  },
  quantity: "pressure",
  answer: ({ gas, ...values }) => {
    const order = fillOrderOf(values);
    return gaugeReading(ATMOSPHERE_BAR + riseOf(planFill(order), order, gas), values.units);
  },
  why: (values) => planInWords(fillOrderOf(values), values.startPressure, values.units),
});

export const STOPAT = defineFunction({
  id: "STOPAT",
  says: "Gauge reading at which one gas of a fill by partial pressure stops, with all readings settled.",
  arguments: {
    gas: oneOf('"oxygen", "helium", "top", or "drain".', ["oxygen", "helium", "top", "drain"]),
    ...PLAN_ARGUMENTS,
  },
  quantity: "pressure",
  answer: ({ gas, ...values }) => {
    const order = fillOrderOf(values);
    return gaugeReading(stopOf(planFill(order), order, gas), values.units);
  },
  why: (values) => planInWords(fillOrderOf(values), values.startPressure, values.units),
});

interface Fill extends ValuesOf<typeof FILL_ARGUMENTS> {
  readonly topMix: Mixture;
  readonly temperature: number;
  readonly oxygenSupply: Mixture;
  readonly order?: GasOrder;
  readonly gasModel?: EquationOfState;
}

/** The order that the arguments of a fill amount to. */
export function fillOrderOf(fill: Fill): FillOrder {
  return {
    startPressureBar: fill.startPressure.bar,
    startMix: startMixOf(fill.startPressure, fill.startMix),
    endPressureBar: fill.endPressure,
    endMix: fill.endMix,
    topMix: fill.topMix,
    temperatureK: fill.temperature,
    oxygenSupply: fill.oxygenSupply,
    order: fill.order ?? "helium first",
    equation: fill.gasModel ?? realGas,
  };
}

function stepsTable(values: ValuesOf<typeof PLAN_ARGUMENTS>): readonly (readonly (string | number)[])[] {
  const order = fillOrderOf(values);
  let before = gaugeReading(values.startPressure.bar, values.units);
  const rows = planFill(order).steps.map(({ step, gas, stopBar }) => {
    const stop = gaugeReading(stopBar, values.units);
    const add = stop - before;
    before = stop;
    return [step, nameMix(gas), add, stop];
  });
  return [["Step", "Gas", "Add", "Stop at"], ...rows];
}
