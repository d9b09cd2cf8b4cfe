import type { Temporal } from "temporal-polyfill";
import type { Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { checkedPressure } from "../gas/limits";
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

/** The limit of the training agencies, for gas breathed at rest (common practice, no source). */
const MOST_PPO2 = 1.6;
/** A gauge reading carries this much float noise from its conversion. */
const NOISE = 1e-6;

/**
 * The text for a cylinder's label: mix, parts, MOD rounded down, the depth above which a hypoxic mix must not be
 * breathed (rounded up), pressure rounded down, serial, who analysed and when.
 * @throws Refusal without the name of whoever analysed, for a ppO2 above 1.6, for more pressure than any cylinder holds,
 * and for a mix above the limit even at the surface.
 */
export function labelText(label: Label): string {
  const { analysedMix, units, maxPpO2 } = label;
  if (!/\p{L}/u.test(label.analysedBy)) {
    refuse("A label needs the name or initials of whoever analysed: a plan is not a label.");
  }
  if (maxPpO2 > MOST_PPO2) {
    refuse(
      `A ppO2 of ${maxPpO2} is above ${MOST_PPO2}, the most any agency teaches: write 1.4, or 1.6 for deco.`,
    );
  }
  const unit = UNIT_NAMES[units];
  const shallowest = -roundDepthDown(-minDepth(analysedMix, units));
  return [
    nameMix(analysedMix),
    partsOf(analysedMix),
    `MOD ${roundDepthDown(mod(analysedMix, units, maxPpO2))} ${unit.depth} at ppO2 ${maxPpO2}`,
    ...(shallowest > 0 ? [`not to be breathed above ${shallowest} ${unit.depth}`] : []),
    `${Math.floor(gaugeReading(checkedPressure(label.pressureBar), units) + NOISE)} ${unit.pressure}`,
    `serial ${label.serial}`,
    `analysed by ${label.analysedBy}`,
    label.fillDate.toString(),
  ].join(" · ");
}

function partsOf({ oxygen, helium }: Mixture): string {
  const percent = (fraction: number) => `${Number((fraction * 100).toFixed(1))} %`;
  return helium > 0 ? `O2 ${percent(oxygen)}, He ${percent(helium)}` : `O2 ${percent(oxygen)}`;
}
