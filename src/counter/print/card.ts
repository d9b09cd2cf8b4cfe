import type { Receipt } from "../receive/receipt";
import { nameMix } from "../../gas/nameMix";
import { gaugeReading, UNIT_NAMES, type Units } from "../../gas/units";
import type { Paper } from "../../sheet/draft/draft";
import type { FillModel } from "../plan/model";
import { CAUTIONS, degreesText, depthText, depthWarnings, partsText, pressureErrorText, pressureText, reading, stepText } from "../words"; // prettier-ignore

/** What stands on the card that goes with the cylinder to the panel, printed or as a sheet. */
export interface Card {
  readonly serial: string;
  readonly units: Units;
  readonly paper: Paper;
  readonly way: string;
  readonly facts: readonly (readonly [what: string, fact: string])[];
  /** Why it may not be filled so, or is not known to; absent where it may. */
  readonly against: string | undefined;
  readonly steps: readonly CardStep[];
  readonly stopsHold: string;
  /** What is written in by hand, by its heading. */
  readonly blanks: readonly { readonly heading: string; readonly labels: readonly string[] }[];
  readonly cautions: readonly string[];
}

export interface CardStep {
  /** `1. Oxygen`. */
  readonly what: string;
  /** `add 210 psi`. */
  readonly change: string;
  /** The settled reading to stop at, without its unit. */
  readonly stop: string;
  /** The reading while warm, where a temperature is given. */
  readonly warm: string | undefined;
}

/** The card of the way that was chosen; none without a plan. */
export function cardOf(
  model: FillModel,
  receipt: Receipt | undefined,
  units: Units,
  today: string,
): Card | undefined {
  const { chosen, wanted, depths, station, exactness } = model;
  if (!chosen?.plan || !chosen.order || !wanted) return undefined;
  const serial = receipt?.serial ?? "";
  return {
    serial,
    units,
    paper: model.paper,
    way: chosen.title,
    facts: [
      ["Cylinder", serial],
      ["Size", receipt?.size?.name ?? (model.volumeL === undefined ? "" : `${model.volumeL} L`)],
      ["Date", today],
      ["In it", `${pressureText(wanted.startBar, units)} ${nameMix(wanted.startMix)}`],
      ["Wanted", `${pressureText(wanted.endBar, units)} ${nameMix(wanted.endMix)}`],
      ["Expected", partsText(chosen.plan.result.mix)],
      ["Settled at", degreesText(chosen.order.temperatureK, units)],
      [
        "MOD, as planned",
        depths?.mod === undefined ? "" : `${depthText(depths.mod, units)} at ${station.maxPpO2}`,
      ],
      ["Limit", receipt?.limit ? pressureText(receipt.limit.limitBar, units) : "not known"],
    ],
    against:
      chosen.may === "yes"
        ? undefined
        : `${chosen.may === "no" ? "Not this way" : "Not known"}: ${chosen.why.join(" ")}`,
    steps: stepsOf(model, units),
    stopsHold: `Stops hold for gas settled at ${degreesText(chosen.order.temperatureK, units)}; a gauge may be off by ±${pressureErrorText(exactness?.errors.gaugeBar ?? 0, units)}. Close each bank before the next is opened.`,
    blanks: [
      {
        heading: "Cool, top, analyse",
        labels: ["Reading once cool", "Topped to", "Analyser on air / on oxygen", "Oxygen / helium", "Post 2: oxygen / helium", "Analysed by"],
      },
      {
        heading: "Hand over",
        labels: ["Customer's own analysis", "MOD read and understood", "Name", "Certification", "Customer's signature", "Filled by"],
      },
    ],
    cautions: [...(depths ? depthWarnings(depths, units) : []), ...CAUTIONS],
  }; // prettier-ignore
}

function stepsOf({ chosen, heat }: FillModel, units: Units): readonly CardStep[] {
  const unit = UNIT_NAMES[units].pressure;
  let before = chosen!.order!.startPressureBar;
  return chosen!.plan!.steps.map((step, index) => {
    const change = gaugeReading(step.stopBar, units) - gaugeReading(before, units);
    before = step.stopBar;
    return {
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
