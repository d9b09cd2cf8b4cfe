import { nameMix } from "../../../gas/nameMix";
import { OXYGEN, type Mixture } from "../../../gas/mixture";
import { lacking } from "../../judge/lacks";
import { isAir, isEnriched } from "../../record/enriched";
import { mixAfterFill } from "../../physics/massBalance";
import { residueOf, type Residue } from "../../physics/residue";
import { workingsOf } from "../../physics/workings";
import {
  DOES_NOT_APPLY,
  PASS,
  type FilledCylinder,
  type NotJudged,
  type Rule,
  type Verdict,
} from "../../judge/rule";
import type { Shop } from "../../shop/shop";
import { percentText } from "../../../words/inSentences";

/**
 * "Air" put on a residue of nitrox or trimix: neither air nor what the old label says. What comes of it is worked out
 * from the gas that was there (real gas); a residue too small to matter is none.
 */
export const airOnResidue: Rule = {
  id: "O10",
  rank: 16,
  title: "Air on top of another mix",
  needs: [["orderedMix", "method"], ["startPressure"]],
  judge(filled, shop) {
    const { orderedMix, method, analysedMix } = filled.fill.fields;
    if (orderedMix.kind === "value" && !isAir(orderedMix.value)) return DOES_NOT_APPLY;
    if (method.kind === "value" && method.value !== "air") return DOES_NOT_APPLY;
    if (orderedMix.kind !== "value" && method.kind !== "value")
      return lacking(orderedMix, { field: "orderedMix" });
    const residue = residueOf(filled, shop);
    if (!("kind" in residue) && !isEnriched(residue.mix)) return PASS;
    if (analysedMix.kind === "value") {
      if (isStillAir(analysedMix.value, shop)) return PASS;
      // Without a residue on record it is air that is not air.
      return "kind" in residue ? residue : fault(residue, `analysed ${nameMix(analysedMix.value)}`);
    }
    if (analysedMix.kind !== "blank") return lacking(analysedMix, { field: "analysedMix" });
    return byReadings(filled, shop, residue);
  },
};

function byReadings(filled: FilledCylinder, shop: Shop, residue: Residue | NotJudged): Verdict {
  const isKnown = !("kind" in residue);
  // An unknown residue can be no worse than pure oxygen: where even that leaves air, nothing needs to be known.
  const ways = workingsOf(filled, shop, isKnown ? residue : { mix: OXYGEN, by: "assumed" });
  if ("kind" in ways) return ways;
  const [workings] = ways;
  if (workings === undefined) return residue as NotJudged;
  const mix = mixAfterFill(workings, workings.top.leanest);
  if (isStillAir(mix, shop)) return PASS;
  if (!isKnown) return residue;
  return fault(residue, `it came to about ${percentText(mix.oxygen)} oxygen`);
}

/** A trace of helium is as little as an analyser shows. */
const TRACE = 0.01;

function isStillAir({ oxygen, helium }: Mixture, { figures }: Shop): boolean {
  return helium <= TRACE && oxygen * 100 <= figures.airMostPercent && oxygen * 100 >= figures.airLeastPercent;
}

function fault({ mix, by }: Residue, result: string): Verdict {
  const known = by === "fill before" ? ", left by its last fill," : "";
  return {
    kind: "fault",
    severity: "breach",
    basis: "practice",
    source: "mass balance (GERG-2008); EN 12021",
    message: `Air went on top of ${nameMix(mix)}${known} without emptying: ${result}, and is not air.`,
    todo: "Analyse it and label it as analysed, or empty it and fill it again.",
    at: { field: "startMix" },
  };
}
