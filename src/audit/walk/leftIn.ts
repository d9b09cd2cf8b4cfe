import type { Mixture } from "../../gas/mixture";
import type { Fill } from "../../log/log";
import { isAir } from "../record/enriched";
import { mixAfterFill } from "../physics/massBalance";
import { workingsOf } from "../physics/workings";
import type { FilledCylinder } from "../judge/rule";
import type { Shop } from "../shop/shop";
import { PastFill } from "./past";

/** What a fill left in its cylinder. */
export function leftBy(filled: FilledCylinder, shop: Shop): PastFill {
  const { mix, mixBy } = mixLeft(filled, shop);
  return new PastFill(filled.fill, filled.day, mix, mixBy, pressureLeft(filled.fill));
}

/** Bar absolute, as settled where that was read; undefined where neither reading is known. */
export function pressureLeft({ fields: { settledPressure, endPressure } }: Fill): number | undefined {
  const pressure = settledPressure.kind === "value" ? settledPressure : endPressure;
  return pressure.kind === "value" ? pressure.value.bar : undefined;
}

/**
 * The mix that a fill left, and who says so: as analysed; where it was not, what the readings make it; else what was
 * ordered. An analysis that cannot be read leaves it unknown.
 */
export function mixLeft(filled: FilledCylinder, shop: Shop): Pick<PastFill, "mix" | "mixBy"> {
  const { analysedMix, orderedMix, startMix, method } = filled.fill.fields;
  if (analysedMix.kind === "value") return { mix: analysedMix.value, mixBy: "analysis" };
  if (analysedMix.kind !== "blank") return UNKNOWN;
  const ordered = orderedMix.kind === "value" ? orderedMix.value : undefined;
  const residue = startMix.kind === "value" ? startMix.value : filled.past.last?.mix;
  const isAirFill = ordered ? isAir(ordered) : method.kind === "value" && method.value === "air";
  if (isAirFill && residue && isAir(residue)) return { mix: residue, mixBy: "order" };
  const worked = mixByReadings(filled, shop);
  if (worked) return { mix: worked, mixBy: "mass balance" };
  return ordered ? { mix: ordered, mixBy: "order" } : UNKNOWN;
}

const UNKNOWN = { mix: undefined, mixBy: undefined } as const;

/** Only where the row can be read in one way, and the gas on top is known. */
function mixByReadings(filled: FilledCylinder, shop: Shop): Mixture | undefined {
  const ways = workingsOf(filled, shop);
  if ("kind" in ways || ways.length > 1) return undefined;
  const [workings] = ways;
  if (!workings || workings.top.leanest !== workings.top.richest) return undefined;
  return mixAfterFill(workings, workings.top.leanest);
}
