import { isEnriched } from "../../audit/record/enriched";
import type { Mixture } from "../../gas/mixture";
import { writtenIn, type FillForm } from "../form";
import { percentIn } from "../plan/analyser";
import type { FillModel } from "../plan/model";

/** The mix that is handed to none but a diver certified for it; undefined for air, and while nothing is planned. */
export function needsCertification({ analysis, wanted }: FillModel): Mixture | undefined {
  const mix = analysis?.mix ?? wanted?.endMix;
  return mix && isEnriched(mix) ? mix : undefined;
}

export function lacksCertification(form: FillForm, model: FillModel): boolean {
  return needsCertification(model) !== undefined && writtenIn(form, "certification").text.trim() === "";
}

/** Two analysers, or two people, should come to the same. */
const READINGS_DIFFER_POINTS = 1;

/** How far the customer's own reading of the oxygen is from the shop's; undefined while one of them is missing. */
export function secondReading(
  form: FillForm,
  { analysis }: FillModel,
): { readonly apartPoints: number; readonly differs: boolean } | undefined {
  const theirs = percentIn(form, "customerOxygen");
  if (!analysis || !(theirs > 0)) return undefined;
  const apartPoints = Math.abs(theirs - analysis.mix.oxygen * 100);
  return { apartPoints, differs: apartPoints > READINGS_DIFFER_POINTS };
}
