import { drainTo, type DrainOrder } from "../../blending/drainTo";
import { mixAfter, type TopOff } from "../../blending/mixAfter";
import { mixOf } from "../../blending/mixOf";
import { topWith, type TopWithOrder } from "../../blending/topWith";
import type { EquationOfState } from "../../gas/equationOfState";
import { AIR, type Mixture } from "../../gas/mixture";
import { nameMix } from "../../gas/nameMix";
import { gaugeReading } from "../../gas/units";
import { defineFunction } from "../define";
import { NOT_A_MEASUREMENT } from "../wording/planInWords";
import { reachInWords } from "../wording/reachInWords";
import {
  endPressure,
  gasModel,
  mix,
  oneOf,
  pressure,
  settledTemperature,
  startMix,
  startPressure,
  temperature,
  topMix,
  units,
  type StartPressure,
} from "../../typed/readers";
import { FIVE_DEGREES, warmer } from "../../typed/nudges";
import { slipInWords } from "../wording/slips";
import { startInWords, startMixOf } from "../../typed/startMix";
import { mixSteps } from "../arguments/mixSteps";
import { capital, degrees, gauge, mixInWords, partsInWords } from "../../words/figures";

/** What to answer where a mix results. */
const answerAs = () =>
  oneOf('"oxygen" or "helium" in per cent, or "mix" as text.', ["oxygen", "helium", "mix"]).or("oxygen");

export const MIXAFTER = defineFunction({
  id: "MIXAFTER",
  says: "The mix after topping off with one gas.",
  arguments: {
    startPressure: startPressure(),
    startMix: startMix(),
    endPressure: endPressure(),
    topMix: mix("The gas that goes in: air, EAN32."),
    units: units(),
    answer: answerAs(),
    startTemperature: settledTemperature().saying("Temperature of the start reading."),
    endTemperature: temperature("Temperature of the end reading.").orElseButZeroCounts(
      () => undefined,
      "as startTemperature",
    ),
    gasModel: gasModel(),
  },
  quantity: "per cent",
  answer: (values) => answerMix(mixAfter(topOffOf(values)), values.answer),
  why: (values) => {
    const topOff = topOffOf(values);
    const { units, startPressure } = values;
    return [
      `${capital(startInWords(startPressure, topOff.startMix, units))} at ${degrees(topOff.startTemperatureK, units)}, then ${mixInWords(topOff.topMix)} to ${gauge(topOff.endPressureBar, units)} at ${degrees(topOff.endTemperatureK, units)}: ${partsInWords(mixAfter(topOff))}.`,
      ...(values.endTemperature === undefined ? endTemperatureInWords(topOff) : []),
      reachInWords(topOff.equation, mixAfter(topOff), topOff.endPressureBar),
      NOT_A_MEASUREMENT,
    ];
  },
});

export const TOPWITH = defineFunction({
  id: "TOPWITH",
  says: "The single gas to top with so that the ordered mix results.",
  arguments: {
    startPressure: startPressure(),
    startMix: startMix(),
    endPressure: endPressure(),
    endMix: mix("The gas ordered: EAN36, TX 18/45."),
    units: units(),
    answer: answerAs(),
    temperature: settledTemperature(),
    gasModel: gasModel(),
  },
  quantity: "per cent",
  answer: (values) => answerMix(topWith(toppingOf(values)), values.answer),
  why: (values) => {
    const order = toppingOf(values);
    const { units, startPressure } = values;
    return [
      `From ${startInWords(startPressure, order.startMix, units)} to ${gauge(order.endPressureBar, units)} of ${mixInWords(order.endMix)}: top with ${partsInWords(topWith(order))}.`,
      ...leanTopInWords(topWith(order)),
      `Both readings are taken as settled at ${degrees(order.temperatureK, units)}.`,
      reachInWords(order.equation, order.endMix, order.endPressureBar),
      NOT_A_MEASUREMENT,
    ];
  },
});

export const DRAINTO = defineFunction({
  id: "DRAINTO",
  says: "Gauge reading to drain to, so that topping alone gives the mix; or, with a bank pressure, so that the oxygen stop is within the bank.",
  arguments: {
    startPressure: startPressure(),
    startMix: startMix(),
    endPressure: endPressure(),
    endMix: mix("The gas ordered: EAN32, TX 18/45."),
    units: units(),
    topMix: topMix(),
    oxygenBankPressure: pressure("What the oxygen bank still has; without it, by topping alone.").orElse(
      () => undefined,
    ),
    temperature: settledTemperature(),
    gasModel: gasModel(),
  },
  quantity: "pressure",
  answer: (values) => gaugeReading(drainTo(drainingOf(values), values.oxygenBankPressure), values.units),
  why: (values) => {
    const order = drainingOf(values);
    const { units, startPressure, oxygenBankPressure: bankBar } = values;
    const drainBar = drainTo(order, bankBar);
    const start = startInWords(startPressure, order.startMix, units);
    return [
      drainBar >= order.startPressureBar
        ? `The cylinder stands at ${start}: no need to drain.`
        : `From ${start}.`,
      bankBar === undefined
        ? `From there ${mixInWords(order.topMix)} alone to ${gauge(order.endPressureBar, units)} gives ${mixInWords(order.endMix)}.`
        : `From there helium, oxygen (100 %) and ${nameMix(order.topMix)} give ${mixInWords(order.endMix)} at ${gauge(order.endPressureBar, units)}, and the oxygen stops within the ${gauge(bankBar, units)} of the bank.`,
      ...(bankBar === undefined || drainBar >= order.startPressureBar
        ? []
        : [
            "It stops at the bank's own pressure, which equalizing never quite reaches: drain a little lower, or boost.",
          ]),
      `Every reading is taken as settled at ${degrees(order.temperatureK, units)}.`,
      reachInWords(order.equation, order.endMix, order.endPressureBar),
      NOT_A_MEASUREMENT,
    ];
  },
});

export const MIXOF = defineFunction({
  id: "MIXOF",
  says: "The mix after any sequence of gases and gauge readings; hot readings count at their own temperature.",
  arguments: {
    steps: mixSteps(),
    units: units(),
    answer: answerAs(),
    gasModel: gasModel(),
  },
  quantity: "per cent",
  answer: ({ steps, answer, gasModel }) => answerMix(mixOf(gasModel, steps), answer),
  why: ({ steps, units, gasModel }) => {
    const mix = mixOf(gasModel, steps);
    const last = steps.at(-1)!;
    const sequence = steps.map(
      ({ gas, pressureBar, temperatureK }) =>
        `${gas === "drain" ? "drain" : nameMix(gas)} to ${gauge(pressureBar, units)} at ${degrees(temperatureK, units)}`,
    );
    const slips = steps.slice(1).flatMap((_, index) => {
      const slip = slipInWords(gasModel, steps, index + 1);
      return slip === "" ? [] : [`Reading of row ${index + 2} ${slip}.`];
    });
    return [
      `${capital(sequence.join("; "))}: ${partsInWords(mix)}.`,
      "The first row is what is in the cylinder before anything is added; at 0 on the gauge that is one atmosphere.",
      reachInWords(gasModel, mix, last.pressureBar),
      ...slips,
      NOT_A_MEASUREMENT,
    ];
  },
});

/** A gas that no compressor delivers. */
function leanTopInWords({ oxygen, helium }: Mixture): readonly string[] {
  if (oxygen >= AIR.oxygen - 0.001) return [];
  const made =
    helium > 0 ? "It must be blended first" : "No compressor delivers it; drain and fill in steps instead";
  return [
    oxygen < 0.18
      ? `That is hypoxic at the surface. ${made}.`
      : `That is leaner in oxygen than air. ${made}.`,
  ];
}

/** The end temperature is the one people leave out, and the gas is warm when they read it. */
function endTemperatureInWords(topOff: TopOff): readonly string[] {
  const warm = mixAfter({ ...topOff, endTemperatureK: warmer(topOff.endTemperatureK) });
  return [
    "Both readings are taken as settled at that one temperature.",
    `With gas ${FIVE_DEGREES} warmer at the end: ${partsInWords(warm)}.`,
  ];
}

interface Start {
  readonly startPressure: StartPressure;
  readonly startMix: Mixture | undefined;
  readonly endPressure: number;
  readonly gasModel: EquationOfState;
}

/** What all of these start from and end at, as the blending room takes it. */
function fromTo({ startPressure, startMix, endPressure, gasModel }: Start) {
  return {
    startPressureBar: startPressure.bar,
    startMix: startMixOf(startPressure, startMix),
    endPressureBar: endPressure,
    equation: gasModel,
  };
}

function topOffOf(
  values: Start & { topMix: Mixture; startTemperature: number; endTemperature: number | undefined },
): TopOff {
  const { topMix, startTemperature, endTemperature = startTemperature } = values;
  return { ...fromTo(values), topMix, startTemperatureK: startTemperature, endTemperatureK: endTemperature };
}

function toppingOf(values: Start & { endMix: Mixture; temperature: number }): TopWithOrder {
  return { ...fromTo(values), endMix: values.endMix, temperatureK: values.temperature };
}

function drainingOf(values: Start & { endMix: Mixture; topMix: Mixture; temperature: number }): DrainOrder {
  return { ...toppingOf(values), topMix: values.topMix };
}

function answerMix(mix: Mixture, answer: "oxygen" | "helium" | "mix"): number | string {
  return answer === "mix" ? nameMix(mix) : 100 * mix[answer];
}
