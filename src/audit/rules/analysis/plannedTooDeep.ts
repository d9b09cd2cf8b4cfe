import { nameMix } from "../../../gas/nameMix";
import { isDecoGas } from "../../record/enriched";
import { filledMix } from "../../record/oxygen";
import { basisHere } from "../../shop/citation";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";
import { lacking } from "../../judge/lacks";

/** Ten metres of sea water to the bar. */
const METRES_PER_BAR = 10;
/** Depths and analyses are rounded: 1.40 of them is 1.4. */
const ROUNDING = 0.005;

const MOST = "Code du sport art. A322-92";

/** Oxygen pressure at the depth planned: at most 1.6 (Code du sport art. A322-92), 1.4 by Appendix C para. 3. */
export const plannedTooDeep: Rule = {
  id: "G13",
  rank: 42,
  title: "Planned depth too deep for the mix",
  needs: [["plannedDepthM"], ["analysedMix", "orderedMix"]],
  judge({ fill }, shop) {
    const { rules, figures } = shop;
    const { plannedDepthM } = fill.fields;
    const at = { field: "plannedDepthM" } as const;
    if (plannedDepthM.kind === "blank") return DOES_NOT_APPLY;
    if (plannedDepthM.kind !== "value") return lacking(plannedDepthM, at);
    const filled = filledMix(fill);
    if (!("mix" in filled)) return filled;
    const ppO2 = filled.mix.oxygen * (plannedDepthM.value / METRES_PER_BAR + 1);
    if (ppO2 <= figures.maxPpO2 + ROUNDING) return PASS;
    const stop = ppO2 > figures.mostPpO2 + ROUNDING;
    const source = stop ? MOST : "29 CFR 1910 Subpart T Appendix C para. 3";
    return {
      kind: "fault",
      severity: stop ? "stop" : isDecoGas(filled.mix, shop) ? "note" : "breach",
      basis: stop ? basisHere(rules, source) : "practice",
      source,
      message: `At the depth planned ${nameMix(filled.mix)} has a ppO2 of ${ppO2.toFixed(2)}, above ${stop ? figures.mostPpO2 : figures.maxPpO2}.`,
      todo:
        !stop && isDecoGas(filled.mix, shop)
          ? "Right for a deco stop only: make sure that the depth planned is one."
          : "Call the diver before the dive: a leaner mix, or a shallower plan.",
      at,
    };
  },
};
