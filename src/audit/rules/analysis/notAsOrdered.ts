import { nameMix } from "../../../gas/nameMix";
import { lacking } from "../../judge/lacks";
import { isAir } from "../../record/enriched";
import { exceeds } from "../../record/oxygen";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";

/** Analysed is not what was ordered. The tolerance is trade practice, no source; the analyser's own is 1 % by Appendix C. */
export const notAsOrdered: Rule = {
  id: "G03",
  rank: 12,
  title: "Analysis far from the order",
  needs: [["analysedMix"], ["orderedMix"]],
  judge({ fill }, { figures }) {
    const { orderedMix, analysedMix, analysedHelium } = fill.fields;
    // Air that is none is G04.
    if (orderedMix.kind === "value" && isAir(orderedMix.value)) return DOES_NOT_APPLY;
    if (orderedMix.kind !== "value") return lacking(orderedMix, { field: "orderedMix" });
    if (analysedMix.kind !== "value") return lacking(analysedMix, { field: "analysedMix" });
    const [ordered, analysed] = [orderedMix.value, analysedMix.value];
    const oxygenOff = Math.abs(analysed.oxygen - ordered.oxygen);
    const heliumKnown = analysed.helium > 0 || analysedHelium.kind === "value";
    const heliumOff = heliumKnown ? Math.abs(analysed.helium - ordered.helium) : 0;
    const off = Math.max(oxygenOff, heliumOff);
    if (!exceeds(off, figures.mixTolerancePoints / 100)) return PASS;
    const byMuch = exceeds(off, figures.mixToleranceStopPoints / 100);
    const gas = oxygenOff >= heliumOff ? "oxygen" : "helium";
    return {
      kind: "fault",
      severity: byMuch ? "stop" : "breach",
      basis: "practice",
      source: "common practice, no source",
      message: `Ordered ${nameMix(ordered)}, analysed ${nameMix(analysed)}: ${Number((off * 100).toFixed(1))} points of ${gas} off.`,
      todo: byMuch
        ? "Do not hand it over; empty it and blend again. If it is out, call the diver."
        : "Label it as analysed, or blend again, and ask the diver which.",
      at: { field: "analysedMix" },
    };
  },
};
