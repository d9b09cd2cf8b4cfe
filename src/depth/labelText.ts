import type { Temporal } from "temporal-polyfill";
import type { Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { refuse } from "../gas/refusal";
import { gaugeReading, UNIT_NAMES, type Units } from "../gas/units";
import { minDepth } from "./minDepth";
import { mod } from "./mod";
import { roundDepthDown } from "./roundDown";

/** What stands on a cylinder after the analysis; a plan alone makes no label. */
export interface Label {
  readonly pressureBar: number;
  /** As analysed, not as ordered. */
  readonly analysedMix: Mixture;
  readonly analysedBy: string;
  readonly fillDate: Temporal.PlainDate;
  readonly serial: string;
  readonly units: Units;
  readonly maxPpO2: number;
}

/**
 * The text for a cylinder's label: mix, parts, MOD rounded down, the depth above which a hypoxic mix must not be
 * breathed (rounded up), pressure, serial, who analysed and when.
 * @throws Refusal without the name of whoever analysed, and for a mix above the limit even at the surface.
 */
export function labelText(label: Label): string {
  const { analysedMix, units, maxPpO2 } = label;
  if (!/\p{L}/u.test(label.analysedBy)) {
    refuse("A label needs the name or initials of whoever analysed: a plan is not a label.");
  }
  const unit = UNIT_NAMES[units];
  const shallowest = -roundDepthDown(-minDepth(analysedMix, units));
  return [
    nameMix(analysedMix),
    partsOf(analysedMix),
    `MOD ${roundDepthDown(mod(analysedMix, units, maxPpO2))} ${unit.depth} at ppO2 ${maxPpO2}`,
    ...(shallowest > 0 ? [`not to be breathed above ${shallowest} ${unit.depth}`] : []),
    `${Math.round(gaugeReading(label.pressureBar, units))} ${unit.pressure}`,
    `serial ${label.serial}`,
    `analysed by ${label.analysedBy}`,
    label.fillDate.toString(),
  ].join(" · ");
}

function partsOf({ oxygen, helium }: Mixture): string {
  const percent = (fraction: number) => `${Number((fraction * 100).toFixed(1))} %`;
  return helium > 0 ? `O2 ${percent(oxygen)}, He ${percent(helium)}` : `O2 ${percent(oxygen)}`;
}
