import { nameMix } from "../../../gas/nameMix";
import { lacking } from "../../judge/lacks";
import { likeliestCause } from "../../physics/causes";
import { outsideBy, oxygenAfter, oxygenRoughly, ROUGHLY, uncertaintyOf } from "../../physics/massBalance";
import { workingsOf, type Workings } from "../../physics/workings";
import { DOES_NOT_APPLY, PASS, type FilledCylinder, type Rule, type Verdict } from "../../judge/rule";
import type { Shop } from "../../shop/shop";
import { percentText } from "../../../words/inSentences";

/** Twice the combined error is out: where readings err as they should, one row in twenty at most is called wrongly. */
const TWICE = 2;

/**
 * An analysis that the readings do not allow: from start, additions and end pressure the mix is worked out (real gas),
 * and how far the errors of gauge, temperature and analyser can take it. The shop's figures say how large those are.
 */
export const outsideBalance: Rule = {
  id: "G12",
  rank: 23,
  title: "Analysis that the readings do not allow",
  needs: [["analysedMix"], ["startPressure"], ["endPressure", "settledPressure"]],
  judge(filled, shop) {
    const { analysedMix } = filled.fill.fields;
    // G01 speaks of what was not analysed.
    if (analysedMix.kind === "blank") return DOES_NOT_APPLY;
    if (analysedMix.kind !== "value") return lacking(analysedMix, { field: "analysedMix" });
    const ways = workingsOf(filled, shop);
    if ("kind" in ways) return ways;
    const { oxygen } = analysedMix.value;
    // No reading is better than the analyser itself: within twice its error nothing has to be reckoned.
    const least = (TWICE * shop.figures.balanceAnalyserPoints) / 100;
    for (const workings of ways)
      if (outsideBy(oxygenRoughly(workings), oxygen) <= least - ROUGHLY) return PASS;
    const judged = ways.map((workings) => ({
      workings,
      by: outsideBy(oxygenAfter(workings), oxygen),
      error: uncertaintyOf(workings, shop.figures),
    }));
    if (judged.some(({ by, error }) => by <= TWICE * error)) return PASS;
    const nearest = judged.reduce((one, other) => (other.by < one.by ? other : one));
    return fault(filled, nearest.workings, nearest.error, shop);
  },
};

function fault(filled: FilledCylinder, workings: Workings, error: number, shop: Shop): Verdict {
  const { analysedMix } = filled.fill.fields;
  if (analysedMix.kind !== "value") return PASS;
  const analysed = analysedMix.value;
  const { least, most } = oxygenAfter(workings);
  const expected = least === most ? percentText(least) : `${percentText(least)} to ${percentText(most)}`;
  const slack = `${(TWICE * error * 100).toFixed(1)} points`;
  const cause = likeliestCause({ filled, workings, analysed, tolerance: error });
  return {
    kind: "fault",
    severity: "warn",
    basis: "practice",
    source: `mass balance (GERG-2008); gauge ±${shop.figures.gaugeErrorPercent} %, ${shop.figures.temperatureErrorC} °C, analyser ±${shop.figures.balanceAnalyserPoints} point`,
    message: `Analysed ${percentText(analysed.oxygen)}, but by the readings ${nameMix(workings.start.mix)} and what went in make ${expected}, give or take ${slack}${cause ? `; likeliest: ${cause}` : "; no single slip explains it"}.`,
    todo: "Analyse it again before it is breathed, and correct the row.",
    at: { field: "analysedMix" },
  };
}
