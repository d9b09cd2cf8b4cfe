import { nameMix } from "../../../gas/nameMix";
import { twoCylinders } from "../../judge/lacks";
import { exceeds, filledMix } from "../../record/oxygen";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";

/** Where no rating is on record a cylinder is taken for one of air: EN 144-3; CGA G-4.1. Where there is one, O02 decides. */
export const nitroxUnrated: Rule = {
  id: "O08",
  rank: 17,
  title: "Enriched mix in a cylinder without a rating",
  needs: [["oxygenService"], ["analysedMix", "orderedMix"]],
  judge(filled, { rules, figures }) {
    const { reading, at } = filled.cylinder.oxygenService;
    if (reading.kind !== "blank" || filled.register === "not found") return DOES_NOT_APPLY;
    const doubt = twoCylinders(filled);
    if (doubt) return doubt;
    const mix = filledMix(filled.fill);
    if (!("mix" in mix)) return mix;
    const { airOnlyMaxPercent, airOnlySource } = rules.oxygen;
    const margin = mix.isAnalysed ? figures.analyserMarginPoints : 0;
    if (!exceeds(mix.mix.oxygen, (airOnlyMaxPercent + margin) / 100)) return PASS;
    return {
      kind: "fault",
      blank: at,
      severity: airOnlySource.includes("EN 144-3") ? "warn" : "breach",
      basis: "practice",
      source: airOnlySource,
      message: `${nameMix(mix.mix)} in a cylinder without an oxygen rating, which may have ${airOnlyMaxPercent} %.`,
      todo: "Find out whether it may have nitrox, and write its rating down; until then fill it with air.",
      at: mix.at,
    };
  },
};
