import { isEnriched } from "../../audit/record/enriched";
import type { Mixture } from "../../gas/mixture";
import { writtenIn, type FillForm } from "../form";
import type { FillModel } from "../plan/model";

/** The mix that is handed to none but a diver certified for it; undefined for air, and while nothing is planned. */
export function needsCertification({ analysis, wanted }: FillModel): Mixture | undefined {
  const mix = analysis?.mix ?? wanted?.endMix;
  return mix && isEnriched(mix) ? mix : undefined;
}

export function lacksCertification(form: FillForm, model: FillModel): boolean {
  return needsCertification(model) !== undefined && writtenIn(form, "certification").text.trim() === "";
}
