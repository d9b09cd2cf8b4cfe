import type { Receipt } from "../receive/receipt";
import { nameMix } from "../../gas/nameMix";
import type { Units } from "../../gas/units";
import type { Paper } from "../../sheet/draft/draft";
import type { FillModel } from "../plan/model";
import { depthWarnings } from "../plan/depths";
import { stepsSaid, stopsHold, type StepSaid } from "../plan/planSaid";
import { CAUTIONS, degreesText, depthText, partsText, pressureText } from "../words"; // prettier-ignore

/** What stands on the card that goes with the cylinder to the panel, printed or as a sheet. */
export interface Card {
  readonly serial: string;
  readonly units: Units;
  readonly paper: Paper;
  readonly way: string;
  readonly facts: readonly (readonly [what: string, fact: string])[];
  /** Why it may not be filled so, or is not known to; absent where it may. */
  readonly against: string | undefined;
  readonly steps: readonly StepSaid[];
  readonly stopsHold: string;
  /** What is written in by hand, by its heading. */
  readonly blanks: readonly { readonly heading: string; readonly labels: readonly string[] }[];
  readonly cautions: readonly string[];
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
    steps: stepsSaid(chosen.plan, chosen.order, units, model.heat),
    stopsHold: `${stopsHold(chosen.order, exactness?.errors.gaugeBar ?? 0, units)} Close each bank before the next is opened.`,
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
