import { nameMix } from "../../../gas/nameMix";
import { lacking } from "../../judge/lacks";
import { filledEnriched } from "../../record/enriched";
import { exceeds, filledMix } from "../../record/oxygen";
import { DOES_NOT_APPLY, PASS, type FilledCylinder, type Rule, type Verdict } from "../../judge/rule";
import type { Shop } from "../../shop/shop";
import type { Mixture } from "../../../gas/mixture";

/** Hypoxic mixes, and mixes beyond basic nitrox, for a diver whose certification is not on file: Appendix C para. 3. */
export const beyondCertification: Rule = {
  id: "G05",
  rank: 38,
  title: "Hypoxic or rich mix without a certification on file",
  needs: [["certification"], ["analysedMix", "orderedMix"]],
  judge: (filled, shop) => judge(filled, (mix) => beyondBasic(mix, shop) !== undefined, shop),
};

/** Nitrox or trimix for a diver whose certification is not on file: agency practice. */
export const noCertification: Rule = {
  id: "G10",
  rank: 39,
  title: "Nitrox or trimix without a certification on file",
  needs: beyondCertification.needs,
  judge(filled, shop) {
    const enriched = filledEnriched(filled.fill);
    if (enriched === false) return DOES_NOT_APPLY;
    return judge(filled, (mix) => beyondBasic(mix, shop) === undefined, shop);
  },
};

function beyondBasic({ oxygen }: Mixture, { figures }: Shop): "hypoxic" | "rich" | undefined {
  if (exceeds(figures.hypoxicBelowPercent / 100, oxygen)) return "hypoxic";
  return exceeds(oxygen, (figures.basicNitroxMaxPercent + figures.analyserMarginPoints) / 100)
    ? "rich"
    : undefined;
}

function judge({ fill }: FilledCylinder, concerns: (mix: Mixture) => boolean, shop: Shop): Verdict {
  const { certification } = fill.fields;
  const at = { field: "certification" } as const;
  if (certification.kind === "value") return PASS;
  const filled = filledMix(fill);
  if (!("mix" in filled)) return filled;
  if (!concerns(filled.mix)) return DOES_NOT_APPLY;
  if (certification.kind !== "blank") return lacking(certification, at);
  const hypoxic = beyondBasic(filled.mix, shop) === "hypoxic";
  return {
    kind: "fault",
    blank: at,
    severity: hypoxic ? "stop" : "breach",
    basis: "practice",
    source: "29 CFR 1910 Subpart T Appendix C para. 3; agency practice",
    message: `${nameMix(filled.mix)}${hypoxic ? ", which nobody can breathe at the surface," : ""} was handed over with no certification on file.`,
    todo: "Ask the diver for the card before the next such fill, and write its number down.",
    at,
  };
}
