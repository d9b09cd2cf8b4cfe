import { lackingOnRecord, twoCylinders } from "../../judge/lacks";
import { exceeds, filledMix, possibleServices, richestFor, type FilledMix } from "../../record/oxygen";
import { PASS, type Rule, type Verdict } from "../../judge/rule";
import type { Shop } from "../../shop/shop";
import { percentText, ratingText } from "../../../words/inSentences";
import { nameMix } from "../../../gas/nameMix";
import type { OxygenService } from "../../../cylinders/oxygenService";

/** Filled richer than the cylinder is rated for. 29 CFR 1910.430(i); 46 CFR 197.452; NOAA Diving Manual ch. 15. */
export const aboveRating: Rule = {
  id: "O02",
  rank: 5,
  title: "Mix above the cylinder's oxygen rating",
  needs: [["oxygenService"], ["analysedMix", "orderedMix"]],
  judge(filled, shop) {
    const doubt = twoCylinders(filled);
    if (doubt) return doubt;
    const { reading, at } = filled.cylinder.oxygenService;
    const services = possibleServices(filled);
    const [mostAllowing] = services.toSorted((one, other) => richestFor(other, shop) - richestFor(one, shop));
    if (mostAllowing === undefined)
      return lackingOnRecord(filled, reading as Exclude<typeof reading, { kind: "value" }>, at);
    const mix = filledMix(filled.fill);
    if (!("mix" in mix)) return mix;
    if (exceeds(mix.mix.oxygen, richestFor(mostAllowing, shop))) return fault(mix, mostAllowing, shop);
    return reading.kind === "value" ? PASS : lackingOnRecord(filled, reading, at);
  },
};

function fault({ mix, isAnalysed, at }: FilledMix, service: OxygenService, shop: Shop): Verdict {
  const { oxygen } = shop.rules;
  const richest = richestFor(service, shop);
  const byMuch = exceeds(mix.oxygen, richest + shop.figures.analyserMarginPoints / 100);
  const rated =
    service.maxOxygen === undefined
      ? `${percentText(richest)} that "air only" allows`
      : `rating of ${ratingText(service)}`;
  const what = `${isAnalysed ? "Analysed " : ""}${nameMix(mix)} is above the ${rated}`;
  return {
    kind: "fault",
    severity: byMuch ? "stop" : "warn",
    basis: "practice",
    source: service.maxOxygen === undefined ? oxygen.airOnlySource : oxygen.cleanSource,
    message: byMuch
      ? `${what}.`
      : `${what}, within the ${shop.figures.analyserMarginPoints} points an analyser may be off.`,
    todo: byMuch
      ? "Call the cylinder back and empty it; fill it only to its rating."
      : "Analyse it again; if it is still above, empty it and fill it leaner.",
    at,
  };
}
