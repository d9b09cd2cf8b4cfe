import type { FillOrder, FillPlan, StepName } from "../../blending/planFill";
import { nameMix } from "../../gas/nameMix";
import { gaugeReading, UNIT_NAMES, type Units } from "../../gas/units";
import {
  CAUTIONS,
  degreesText,
  depthText,
  moneyText,
  partsText,
  pressureErrorText,
  reading,
  stepText,
  volumeText,
} from "../words";
import { depthWarnings } from "./depths";
import type { FillModel, Heat } from "./model";
import { pricesFrom } from "./prices";
import type { RankedWay } from "./ways";

/** A step in words. */
export interface StepSaid {
  readonly step: StepName;
  /** `1. Oxygen`. */
  readonly what: string;
  /** `add 210 psi`. */
  readonly change: string;
  /** The settled reading to stop at, without its unit. */
  readonly stop: string;
  /** The reading while warm, where a temperature is given. */
  readonly warm: string | undefined;
}

export function stepsSaid(
  { steps }: FillPlan,
  { startPressureBar }: FillOrder,
  units: Units,
  heat?: Pick<Heat, "warmStops" | "warmK">,
): readonly StepSaid[] {
  const unit = UNIT_NAMES[units].pressure;
  let before = startPressureBar;
  return steps.map((step, index) => {
    const change = gaugeReading(step.stopBar, units) - gaugeReading(before, units);
    before = step.stopBar;
    return {
      step: step.step,
      what: `${index + 1}. ${stepText(step)}`,
      change: `${change < 0 ? "let out" : "add"} ${Math.abs(change).toFixed(units === "us" ? 0 : 1)} ${unit}`,
      stop: reading(step.stopBar, units),
      warm:
        heat && step.step !== "drain"
          ? `${reading(heat.warmStops[index]!, units)} ${unit} at ${degreesText(heat.warmK, units)}`
          : undefined,
    };
  });
}

/** What the stops rest on. */
export function stopsHold({ temperatureK }: FillOrder, gaugeErrorBar: number, units: Units): string {
  return `Stops hold for gas settled at ${degreesText(temperatureK, units)}; a gauge may be off by ±${pressureErrorText(gaugeErrorBar, units)}.`;
}

/** Why a way may not be gone or is not known to be safe, and what it takes; "" where there is nothing to say. */
export function waySaid({ may, why, plan, cost, lostL, minutes }: RankedWay, units: Units): string {
  return [
    !plan || may === "yes" ? "" : may === "no" ? "Not allowed." : "Not known.",
    ...why,
    cost ? `Costs ${moneyText(cost.total)}.` : "",
    lostL > 0 ? `Lets out ${volumeText(lostL, units)}.` : "",
    minutes === undefined ? "" : `About ${Math.ceil(minutes)} min.`,
  ]
    .filter(Boolean)
    .join(" ");
}

const USED = { helium: "Helium used", oxygen: "Oxygen used", top: "Top gas used" } as const;

/** The chosen way's plan in words, the same on screen and on the command line. */
export interface PlanSaid {
  readonly mix: string;
  readonly mod: readonly [what: string, fact: string] | undefined;
  readonly facts: readonly (readonly [what: string, fact: string])[];
  readonly notes: readonly string[];
  readonly warnings: readonly string[];
  readonly cautions: readonly string[];
}

export function planSaid({ depths, station }: FillModel, chosen: RankedWay, units: Units): PlanSaid {
  const result = chosen.plan!.result.mix;
  return {
    mix: `${nameMix(result)} (${partsText(result)})`,
    mod:
      depths?.mod === undefined
        ? undefined
        : [`MOD at ppO2 ${station.maxPpO2}`, `${depthText(depths.mod, units)}, rounded down`],
    facts: [
      ...chosen.used.map(({ gas, volumeL }) => [USED[gas], volumeText(volumeL, units)] as const),
      ...(chosen.lostL > 0 ? [["Let out", volumeText(chosen.lostL, units)] as const] : []),
      ...(chosen.minutes === undefined
        ? []
        : [["Compressor runs", `${Math.ceil(chosen.minutes)} min`] as const]),
      ...(chosen.cost ? [["Cost", moneyText(chosen.cost.total)] as const] : []),
    ],
    notes: [
      ...(chosen.cost && station.prices ? [pricesFrom(station.prices)] : []),
      ...(chosen.costProblem === undefined ? [] : [chosen.costProblem]),
    ],
    warnings: depths ? depthWarnings(depths, units) : [],
    cautions: CAUTIONS.slice(1),
  };
}
