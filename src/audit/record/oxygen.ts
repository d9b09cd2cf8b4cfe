import type { OxygenService } from "../../cylinders/oxygenService";
import { nameMix } from "../../gas/nameMix";
import type { Mixture } from "../../gas/mixture";
import type { Fill } from "../../log/log";
import { lacking } from "../judge/lacks";
import { oncePerCylinder } from "./readField";
import type { FilledCylinder, NotJudged, Place } from "../judge/rule";
import type { Shop } from "../shop/shop";

/** Sums and percentages carry noise of floats; it is no gas. */
const NOISE = 1e-9;

/** Which mix is in the cylinder: as analysed, else as ordered. */
export interface FilledMix {
  readonly mix: Mixture;
  readonly isAnalysed: boolean;
  readonly at: Place;
}

const ANALYSED: Place = { field: "analysedMix" };
const ORDERED: Place = { field: "orderedMix" };

export function filledMix({ fields }: Pick<Fill, "fields">): FilledMix | NotJudged {
  const { analysedMix, orderedMix } = fields;
  if (analysedMix.kind === "value") return { mix: analysedMix.value, isAnalysed: true, at: ANALYSED };
  if (analysedMix.kind !== "blank") return lacking(analysedMix, { field: "analysedMix" });
  if (orderedMix.kind === "value") return { mix: orderedMix.value, isAnalysed: false, at: ORDERED };
  return lacking(orderedMix, { field: "orderedMix" });
}

/** Every rating that the cylinder may have by what is written; empty where nothing can be said. */
export function possibleServices({ cylinder }: FilledCylinder): readonly OxygenService[] {
  return servicesOf(cylinder);
}

const servicesOf = oncePerCylinder(({ oxygenService: { reading } }): readonly OxygenService[] => {
  if (reading.kind === "value") return [reading.value];
  return reading.kind === "ambiguous" ? reading.choices : [];
});

/** The richest mix that a rating allows, as a mole fraction. */
export function richestFor(service: OxygenService, { rules }: Shop): number {
  return service.maxOxygen ?? rules.oxygen.airOnlyMaxPercent / 100;
}

/** How gas richer than an ordinary cylinder may take has gone into it, in words; undefined where none is known to. */
export interface RichInflow {
  readonly how: string;
  readonly at: Place;
}

const BY_PARTIAL_PRESSURE: RichInflow = { how: "Partial pressure puts pure oxygen", at: { field: "method" } };
const BY_OXYGEN_ADDED: RichInflow = { how: "Pure oxygen was put", at: { field: "oxygenAdded" } };

/**
 * What flows in decides over oxygen service, not the final mix: pure oxygen in partial-pressure blending, or any gas
 * above the country's limit, 40 % as a rule (NOAA Diving Manual ch. 15; Code du sport art. A322-92; Tukes).
 */
export function richInflow({ fill }: FilledCylinder, { rules, figures }: Shop): RichInflow | undefined {
  const { method, oxygenAdded } = fill.fields;
  if (method.kind === "value" && method.value === "partial pressure") {
    return BY_PARTIAL_PRESSURE;
  }
  if (oxygenAdded.kind === "value" && oxygenAdded.value.written.value > 0) {
    return BY_OXYGEN_ADDED;
  }
  const filled = filledMix(fill);
  if (
    "mix" in filled &&
    filled.mix.oxygen > (rules.oxygen.cleanAbovePercent + figures.analyserMarginPoints) / 100 + NOISE
  ) {
    return {
      how: `${nameMix(filled.mix)} puts gas above ${rules.oxygen.cleanAbovePercent} % oxygen`,
      at: filled.at,
    };
  }
  return undefined;
}

export function exceeds(oxygen: number, limit: number): boolean {
  return oxygen > limit + NOISE;
}
